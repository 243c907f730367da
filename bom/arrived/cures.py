"""What helps where a part that arrived is at fault: it goes back, and what was ordered stands as ordered."""

from collections.abc import Iterable, Mapping
from dataclasses import replace

from bom.arrived.stands import RECEIVED
from bom.build import Build
from bom.choose.filled import Filled, Hole
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict

Key = tuple[str, str, str]


def with_cures(
    findings: Iterable[Finding], ordered: Build, filled: Mapping[str, Filled], holes: Iterable[Hole]
) -> tuple[Finding, ...]:
    """Begin the cure of each finding that is worse than as ordered with what undoes it."""
    was = verdicts_by_key(ordered.findings)
    swapped = swaps(ordered, filled)
    remedies = {hole.place.name: hole.remedy for hole in holes if hole.wanted_by}

    def cured(finding: Finding) -> Finding:
        if finding.verdict <= max(Verdict.PASS, was.get(key_of(finding), Verdict.NOT_ASKED)):
            return finding
        places = finding.subject.split(" / ")
        lacking = next((place for place in (*finding.at_fault, *places) if place in remedies), "")
        if lacking:
            return replace(finding, cure=remedies[lacking])
        return replace(finding, cure=f"{_back(places, swapped)}{finding.cure}")

    return tuple(map(cured, findings))


def key_of(finding: Finding) -> Key:
    """Tell one comparison from another, in the build as ordered and as received."""
    return finding.rule, finding.subject, finding.what


def verdicts_by_key(findings: Iterable[Finding]) -> dict[Key, Verdict]:
    """Give the worst verdict of each comparison."""
    worst: dict[Key, Verdict] = {}
    for finding in findings:
        key = key_of(finding)
        worst[key] = max(finding.verdict, worst.get(key, Verdict.NOT_ASKED))
    return worst


def swaps(ordered: Build, filled: Mapping[str, Filled]) -> dict[str, str]:
    """Give the ordered part of each place where another one arrived."""
    arrived = [(name, entry) for name, entry in filled.items() if entry.origin == RECEIVED and name in ordered.filled]
    return {
        name: ordered.filled[name].part_id for name, entry in arrived if ordered.filled[name].part_id != entry.part_id
    }


def _back(places: list[str], swapped: Mapping[str, str]) -> str:
    """Say what goes back: the part of the finding's own places, else what came anywhere; "" where nothing can."""
    own = {name: part for name, part in swapped.items() if name in places}
    if len(own) == 1:
        return f"send it back, fit {next(iter(own.values()))} as ordered; or: "
    what = own or swapped
    if not what:
        return ""
    return f"send back what came for the {' and the '.join(what)}, fit {' and '.join(what.values())} as ordered; or: "
