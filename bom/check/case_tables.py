"""The tables of cases that stand beside the rules: what the tests hold a rule to, and what `rules` shows of it.

A table in bom/rules/examples names a duty and one part (or a pair) that passes; each case changes what it names.
That of a rule about the whole bike names a starter job and what is changed in it (bom/check/example_builds.py).
"""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np

from bom.duties.model import GLOSSARY, Duty
from bom.judge.compare import Judgement, worst
from bom.judge.rule import PairRule, PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.families import BY_NAME, COMMON, CURVES
from bom.read.margins import Margins
from bom.span import Span

FOLDER = Path(__file__).resolve().parent.parent / "rules" / "examples"
TABLES = ("part", "first", "second", "duty", "first_duty", "second_duty", "words", "margins")
CURVE_KEYS = {"fuse_time_bands": "band", "fuse_rerating": "curve"}
Table = Mapping[str, Any]


@dataclass(frozen=True)
class Worked:
    """A case as the rule was asked it.

    said     of each part, what the case says of it, its family first
    parts    the part, or the pair
    needs    the figures asked
    words    the words asked
    answers  what the rule says; none where it has nothing to ask
    """

    said: tuple[Mapping[str, Any], ...]
    parts: tuple[Parts, ...]
    needs: Mapping[str, Span]
    words: Mapping[str, str]
    answers: Sequence[Judgement]

    @property
    def verdict(self) -> Verdict:
        """Give the worst answer."""
        return Verdict(int(worst(self.answers).ravel()[0])) if self.answers else Verdict.NOT_ASKED


@cache
def table(name: str) -> Table:
    """Read the table of a rule; one without cases where there is none."""
    path = FOLDER / f"{name}.toml"
    return tomllib.loads(path.read_text(encoding="utf-8")) if path.exists() else {"asks": "", "cases": []}


def worked(shape: PartRule | PairRule, whole: Table, case: Mapping[str, Any], margins: Margins) -> Worked:
    """Ask the rule one case of its table."""
    at = {key: {**whole.get(key, {}), **case.get(key, {})} for key in TABLES}
    entries = {key: replace(margins.entries[key], value=value) for key, value in at["margins"].items()}
    shop, donor = Margins({**margins.entries, **entries}), case.get("donor", False)
    if isinstance(shape, PairRule):
        first, second = one_part(at["first"], donor), one_part(at["second"], donor)
        duties = duty_of(at["first_duty"], at["words"]), duty_of(at["second_duty"], at["words"])
        answers = shape.judge(first, second, *duties, shop) if duties[1].has(*shape.only_with) else ()
        needs = {**duties[0].needs, **duties[1].needs}
        return Worked((at["first"], at["second"]), (first, second), needs, at["words"], answers)
    part, duty = one_part(at["part"], donor), duty_of(at["duty"], at["words"])
    answers = shape.judge(part, duty, shop) if duty.has(*shape.only_with) else ()
    return Worked((at["part"],), (part,), duty.needs, at["words"], answers)


def one_part(values: Mapping[str, Any], donor: bool) -> Parts:
    """Build one part of a family; what is not named is blank."""
    family = values["family"]
    columns = (*COMMON, *BY_NAME[family].columns)
    numbers = {column.name: np.array([np.nan]) for column in columns if column.kind == "number"}
    words = {column.name: ("",) for column in columns if column.kind != "number"}
    words |= {"part_id": ("part",), "name": ("a part",), "evidence": ("data sheet",)}
    curves: dict[str, dict[str, tuple[dict[str, Any], ...]]] = {}
    for name, value in values.items():
        if name in CURVES:
            curves[name] = {CURVE_KEYS.get(name, "part"): tuple(_curve_row(name, row) for row in value)}
        elif name in numbers:
            numbers[name] = np.array([np.nan if value == "" else float(value)])
        elif name in words:
            words[name] = (value,)
    return Parts(family, ("part",), numbers, words, curves, (donor,))


def _curve_row(curve: str, row: Mapping[str, Any]) -> dict[str, Any]:
    blank = {column.name: np.nan if column.kind == "number" else "data sheet" for column in CURVES[curve]}
    return {**blank, **row}


def duty_of(values: Mapping[str, Any], words: Mapping[str, str]) -> Duty:
    """Make the duty of a case; a figure with two ends is a list."""
    needs = {}
    for name, value in values.items():
        low, high = value if isinstance(value, list) else (value, value)
        dimension, meaning = GLOSSARY[name]
        needs[name] = Span(float(low), float(high), dimension, meaning, "a fact of the case")
    return Duty(needs, words)
