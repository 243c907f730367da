"""What is not known: grouped by the figure that would settle it, and as questions to suppliers."""

from collections import defaultdict
from dataclasses import dataclass
from functools import cache

import numpy as np

from bom.build import Build
from bom.data import folder
from bom.errors import Fault, InputError
from bom.judge.rule import rules
from bom.judge.verdict import Verdict
from bom.money.bill import Line
from bom.papers.standing import OPEN
from bom.parts import Parts
from bom.read.families import EVIDENCE, Column
from bom.read.tables import read_table

WAYS = (
    Column("keyword", "text"),
    Column("way", "text", required=True),
    Column("minutes", required=True),
    Column("source", "text", required=True),
)
QUESTIONS = (
    Column("family", "text", required=True),
    Column("column", "text", required=True),
    Column("question", "text", required=True),
)


@dataclass(frozen=True)
class Waiting:
    """One answer that hangs on a figure: of which part, which answer, and why it is asked."""

    part: str
    what: str
    why: str


@dataclass(frozen=True)
class Unknown:
    """One figure that is missing, and what waits for it.

    waiting  "rule @ places" of each answer that hangs on it
    minutes  a rough estimate of the quick way
    """

    datum: str
    parts: tuple[str, ...]
    why: str
    waiting: tuple[str, ...]
    way: str
    minutes: float


def unknowns(build: Build) -> list[Unknown]:
    """Group what can't be told by the figure that would settle it, the one most waited for first."""
    why = {rule.name: rule.why for rule in rules()}
    groups: dict[tuple[str, str], list[Waiting]] = defaultdict(list)
    for finding in build.findings:
        if finding.verdict == Verdict.CANT_TELL:
            own = finding.part if finding.datum.startswith("the part's") else ""
            groups[finding.datum, own].append(Waiting(finding.part, finding.key, why[finding.rule]))
    for hole in build.holes:
        if hole.datum:
            groups[hole.datum, ""].append(Waiting("", f"{OPEN} @ {hole.place.name}", "a place stays open without it"))
    found = [_unknown(datum, group) for (datum, _), group in groups.items()]
    return sorted(found, key=lambda entry: (-len(entry.waiting), entry.datum, entry.parts))


def _unknown(datum: str, group: list[Waiting]) -> Unknown:
    way, minutes = quick_way(datum)
    return Unknown(
        datum,
        tuple(dict.fromkeys(entry.part for entry in group if entry.part)),
        group[0].why,
        tuple(entry.what for entry in group),
        way,
        minutes,
    )


def quick_way(datum: str) -> tuple[str, float]:
    """Give the quickest way to a figure and its minutes: the first row whose keyword the datum holds."""
    text = datum.lower()
    return next((way, minutes) for keyword, way, minutes in _ways() if keyword in text)


@cache
def _ways() -> tuple[tuple[str, str, float], ...]:
    rows = _rows("find_out", WAYS)
    return tuple((str(row["keyword"]).lower(), str(row["way"]), float(row["minutes"])) for row in rows)


def _rows(name: str, columns: tuple[Column, ...]) -> tuple[dict[str, float | str], ...]:
    faults: list[Fault] = []
    table = read_table(folder("catalog") / "settings" / f"{name}.csv", columns, faults)
    if faults:
        raise InputError(faults)
    return table.rows


def supplier_questions(build: Build, line: Line) -> list[str]:
    """List what to ask the supplier of a line: figures that are blank or only the seller's word."""
    entry = next((entry for entry in build.filled.values() if entry.part_id == line.part_id), None)
    if entry is None:
        return []
    asked = [
        question for family, column, question in _asked() if family == entry.place.family and _blank(entry.part, column)
    ]
    if entry.part.word("evidence")[0] in EVIDENCE[-2:]:
        asked.append("please send the data sheet; its ratings are known here by word alone")
    return asked


@cache
def _asked() -> tuple[tuple[str, str, str], ...]:
    rows = _rows("ask_supplier", QUESTIONS)
    return tuple((str(row["family"]), str(row["column"]), str(row["question"])) for row in rows)


def _blank(part: Parts, column: str) -> bool:
    if column in part.numbers:
        return bool(np.isnan(part.number(column)[0]))
    return part.word(column)[0] == ""
