"""What is not known: grouped by the figure that would settle it."""

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass

from bom.build import Build
from bom.judge.rule import rules
from bom.judge.verdict import Verdict
from bom.papers.standing import OPEN
from bom.read.questions import Way, quick_way


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
            groups[hole.datum, ""].append(
                Waiting("", f"{OPEN} @ {hole.place.name}", "no part can be chosen without it")
            )
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
