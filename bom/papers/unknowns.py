"""What is not known: grouped by the figure that would settle it, and as questions to suppliers."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from bom.build import Build
from bom.judge.rule import rules
from bom.judge.verdict import Verdict
from bom.money.bill import Line
from bom.papers.standing import OPEN
from bom.parts import Parts
from bom.read.families import EVIDENCE
from bom.read.questions import Question, Way


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


def unknowns(build: Build, ways: Sequence[Way]) -> list[Unknown]:
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
    found = [_unknown(datum, group, ways) for (datum, _), group in groups.items()]
    return sorted(found, key=lambda entry: (-len(entry.waiting), entry.datum, entry.parts))


def _unknown(datum: str, group: list[Waiting], ways: Sequence[Way]) -> Unknown:
    quick = quick_way(datum, ways)
    return Unknown(
        datum=datum,
        parts=tuple(dict.fromkeys(entry.part for entry in group if entry.part)),
        why=group[0].why,
        waiting=tuple(entry.what for entry in group),
        way=quick.way,
        minutes=quick.minutes,
    )


def quick_way(datum: str, ways: Sequence[Way]) -> Way:
    """Give the quickest way to a figure: the first whose keyword the datum holds; the last one's is blank."""
    text = datum.lower()
    return next(way for way in ways if way.keyword in text)


def supplier_questions(build: Build, line: Line, questions: Sequence[Question]) -> list[str]:
    """List what to ask the supplier of a line: figures that are blank or only the seller's word."""
    entry = next((entry for entry in build.filled.values() if entry.part_id == line.part_id), None)
    if entry is None:
        return []
    asked = [
        question.question
        for question in questions
        if question.family == entry.place.family and _blank(entry.part, question.column)
    ]
    if entry.part.word("evidence")[0] in EVIDENCE[-2:]:
        asked.append("please send the data sheet; its ratings are known here by word alone")
    return asked


def _blank(part: Parts, column: str) -> bool:
    if column in part.numbers:
        return bool(np.isnan(part.number(column)[0]))
    return part.word(column)[0] == ""
