"""The example of a rule about the whole bike: a starter job with something spoilt, converted, and with it mended.

A table in bom/rules/examples names the starter, and under [bad] and [cured] what is changed in it: a title, `set`
(keys with dots; an entry of a list by its name, a lead by its function), `add` (entries put at the end of a list),
`drop` (keys left out) and, where it matters, the key arrangement `key` and how often the choice is made at most,
`passes`.
"""

import json
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from bom.arrangement import ALL, TWELVE
from bom.check.case_tables import Table, table
from bom.check.examples import Example, Told
from bom.check.made_of import made_of
from bom.convert import convert
from bom.counts import MOST_PASSES
from bom.data import folder
from bom.errors import Fault, InputError
from bom.judge.finding import loom_finding
from bom.judge.loom_view import LoomAnswer
from bom.judge.rule import LoomRule, Rule
from bom.memory import Memory
from bom.read.catalogue import Catalogue
from bom.read.edits import add, at, drop, put
from bom.read.job import JobFile
from bom.read.locate import Lines

SIDES = ("bad", "cured")


def of_the_bike(rule: Rule, shape: LoomRule, catalogue: Catalogue, memory: Memory) -> tuple[Example, Example]:
    """Convert the spoilt job and the mended one, and ask the rule about both; the memory is of this catalogue alone."""
    whole = table(rule.name)
    bad, cured = (_example(rule, shape, whole, whole[side], catalogue, memory) for side in SIDES)
    return bad, cured


def _example(rule: Rule, shape: LoomRule, whole: Table, side: Table, catalogue: Catalogue, memory: Memory) -> Example:
    job = edited(whole["starter"], side.get("set", {}), side.get("add", {}), side.get("drop", ()))
    faults: list[Fault] = []
    margins = catalogue.margins.overridden(job.margins, "the example", Lines({}), faults)
    if faults:
        raise InputError(faults)
    key_at = side.get("key") or (job.wishes.key if job.wishes.key in ALL else TWELVE)
    own = Memory() if job.margins else memory  # other margins, other answers
    build = convert(job, catalogue, margins, key_at, lambda text: None, own, side.get("passes", MOST_PASSES))
    told = [_told(rule, answer) for answer in shape.judge(build.walks.bike.view)]
    told.sort(key=lambda entry: -entry.finding.verdict)
    return Example(side["title"], tuple(_setting(whole, side, build.arrangement)), tuple(told))


def _told(rule: Rule, answer: LoomAnswer) -> Told:
    return Told(loom_finding(rule, answer), tuple(filter(None, map(made_of, (answer.offers, answer.needs)))))


def _setting(whole: Table, side: Table, arrangement: str) -> Iterator[str]:
    """Say which starter, what is changed in it, and what stands there of what the bad one changes."""
    yield f"starter job {whole['starter']}, key at {arrangement}"
    changes, starter = side.get("set", {}), _starter(whole["starter"])
    for key in {**whole[SIDES[0]].get("set", {}), **changes}:
        stands = changes[key] if key in changes else at(starter, key)
        said = "left out" if stands is None else f"= {_shown(stands)}"
        yield f"{key} {said}{'' if key in changes else ', as the starter has it'}"
    for key, entries in side.get("add", {}).items():
        yield from (f"one more of {key}: {', '.join(f'{k} = {_shown(v)}' for k, v in e.items())}" for e in entries)
    yield from (f"{key} left out" for key in side.get("drop", ()))
    if "passes" in side:
        yield f"times that the choice is made, at most: {side['passes']}"


def _shown(value: Any) -> str:
    """Print a value as a job file writes it."""
    return f"{value:g}" if isinstance(value, float) else json.dumps(value, ensure_ascii=False)


def edited(
    starter: str, changes: Mapping[str, Any], added: Mapping[str, list[Any]], dropped: Sequence[str] = ()
) -> JobFile:
    """Give a starter job with some of its keys set otherwise or left out, and with more entries in its lists."""
    data = _starter(starter)
    for path, value in changes.items():
        put(data, path, value)
    add(data, added)
    for path in dropped:
        drop(data, path)
    return JobFile.model_validate(data)


def _starter(name: str) -> dict[str, Any]:
    return tomllib.loads((folder("templates") / "jobs" / f"{name}.toml").read_text(encoding="utf-8"))
