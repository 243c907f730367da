"""Every rule about parts and pairs against its table of cases in tests/rules/cases.

A table names the duty and one part (or a pair) that passes; each case changes what it names.
Kinds every table must hold: for numbers ample, exact (equality meets), short and blank; for words
right word, wrong word and blank word; for a size exact, over, short and blank.
"""

import tomllib
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from bom.duties.model import GLOSSARY, Duty
from bom.judge.compare import worst
from bom.judge.rule import LoomRule, PairRule, PartRule, read_words, rules
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.families import BY_NAME, COMMON, CURVES
from bom.read.margins import Margins
from bom.span import Span

CASES = Path(__file__).parent / "cases"
NEEDED = {
    "numbers": {"ample", "exact", "short", "blank"},
    "words": {"right word", "wrong word", "blank word"},
    "a size": {"exact", "over", "short", "blank"},
}
TABLES = ("part", "first", "second", "duty", "first_duty", "second_duty", "words", "margins")
BY_RULE = {rule.name: rule for rule in rules()}
OF_PARTS = sorted(rule.name for rule in rules() if not isinstance(rule.shape, LoomRule))


@cache
def table(name: str) -> dict[str, Any]:
    path = CASES / f"{name}.toml"
    return tomllib.loads(path.read_text(encoding="utf-8")) if path.exists() else {"asks": "", "cases": []}


def all_cases() -> list[object]:
    return [
        pytest.param(name, case, id=f"{name}: {case['name']}") for name in OF_PARTS for case in table(name)["cases"]
    ]


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
            key = {"fuse_time_bands": "band", "fuse_rerating": "curve"}.get(name, "part")
            curves[name] = {key: tuple(curve_row(name, row) for row in value)}
        elif name in numbers:
            numbers[name] = np.array([np.nan if value == "" else float(value)])
        elif name in words:
            words[name] = (value,)
    return Parts(family, ("part",), numbers, words, curves, (donor,))


def curve_row(curve: str, row: Mapping[str, Any]) -> dict[str, Any]:
    blank = {column.name: np.nan if column.kind == "number" else "data sheet" for column in CURVES[curve]}
    return {**blank, **row}


def duty_of(values: Mapping[str, Any], words: Mapping[str, str]) -> Duty:
    needs = {}
    for name, value in values.items():
        low, high = value if isinstance(value, list) else (value, value)
        needs[name] = Span(float(low), float(high), GLOSSARY[name][0], "the case", "a fact of the case")
    return Duty(needs, words)


def answer(name: str, case: Mapping[str, Any], margins: Margins) -> Verdict:
    whole = table(name)
    at = {key: {**whole.get(key, {}), **case.get(key, {})} for key in TABLES}
    entries = {key: replace(margins.entries[key], value=value) for key, value in at["margins"].items()}
    shop, donor = Margins({**margins.entries, **entries}), case.get("donor", False)
    shape = BY_RULE[name].shape
    if isinstance(shape, PairRule):
        pair = one_part(at["first"], donor), one_part(at["second"], donor)
        duties = duty_of(at["first_duty"], at["words"]), duty_of(at["second_duty"], at["words"])
        answers = list(shape.judge(*pair, *duties, shop)) if duties[1].has(*shape.only_with) else []
    else:
        assert isinstance(shape, PartRule)
        part, duty = one_part(at["part"], donor), duty_of(at["duty"], at["words"])
        answers = list(shape.judge(part, duty, shop)) if duty.has(*shape.only_with) else []
    return Verdict(int(worst(answers).ravel()[0])) if answers else Verdict.NOT_ASKED


@pytest.mark.parametrize(("name", "case"), all_cases())
def test_case(name: str, case: Mapping[str, Any], margins: Margins) -> None:
    assert answer(name, case, margins).word == case["verdict"]


@pytest.mark.parametrize("name", OF_PARTS)
def test_every_kind_of_case_is_there(name: str) -> None:
    asks = table(name)["asks"].split(" and ")
    needed = set().union(*(NEEDED[kind] for kind in asks if kind))
    assert needed, f"{name} has no table of cases"
    assert needed <= {case["kind"] for case in table(name)["cases"]}


def test_every_table_belongs_to_a_rule() -> None:
    assert {path.stem for path in CASES.glob("*.toml")} <= set(OF_PARTS)


@pytest.mark.parametrize("name", sorted(BY_RULE))
def test_rule_says_what_it_does(name: str) -> None:
    rule = BY_RULE[name]
    assert rule.title[0].isupper()
    assert rule.title.endswith(".")
    for text in (rule.asks, rule.why, rule.cure, rule.ignores, rule.source):
        assert text.strip().endswith("."), f"{name}: {text}"


def test_words_are_read_from_a_docstring() -> None:
    title, sections = read_words("A title.\n\nAsks:     one: two\n          and three.\nWhy:      because.\n")
    assert title == "A title."
    assert sections["Asks"] == "one: two and three."
    assert sections["Cure"] == ""


@pytest.mark.parametrize("name", OF_PARTS)
def test_declared_answers_are_those_of_the_cases(name: str) -> None:
    told = {case["verdict"] for case in table(name)["cases"]} - {"pass", "not asked"}
    assert told == {verdict.word for verdict in BY_RULE[name].says}
