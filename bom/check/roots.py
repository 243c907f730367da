"""What binds the troubles of a build together: one figure that lacks, one part, one place left open, one reason.

Each finding and open place is tied to one or more roots; what shares a root, straight or by way of others, has one
cause. Of a pair the part that the builder set (pinned, or the donor's) is at fault where the other was chosen; of two
alike the one that more speaks against.
"""

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, field

from bom.build import Build
from bom.choose.filled import OF_A_PART, Hole
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.read.registration import PAPERS

# The first word of a root, the one that names a cause best first; then what tells it from others of its kind.
DATUM, PART, OPEN, REASON, WHOLE = "datum", "part", "open", "no part", "whole"
KINDS = (DATUM, PART, OPEN, REASON, WHOLE)
CHOSEN = "chosen"
Root = tuple[str, ...]


@dataclass
class Group:
    """Troubles of one cause, each in the order of the build, with the root that names it best."""

    root: Root
    findings: list[Finding] = field(default_factory=list)
    holes: list[Hole] = field(default_factory=list)


class _Sets:
    """Roots that belong together, each set under one of them."""

    def __init__(self) -> None:
        self._up: dict[Root, Root] = {}

    def top(self, root: Root) -> Root:
        above = self._up.setdefault(root, root)
        while above != self._up[above]:
            above = self._up[root] = self._up[above]
        return above

    def join(self, roots: Iterable[Root]) -> None:
        first, *others = map(self.top, roots)
        for other in others:
            better, worse = sorted((first, other), key=lambda root: KINDS.index(root[0]))
            self._up[worse] = better
            first = better


def groups(build: Build) -> list[Group]:
    """Put what does not pass into groups of one cause each."""
    tied, sets = _Tied(build), _Sets()
    troubles = [finding for finding in build.findings if finding.verdict > Verdict.PASS]
    found = [(finding, tied.of_finding(finding)) for finding in troubles]
    left = [(hole, tied.of_hole(hole)) for hole in build.holes]
    for _, roots in (*left, *found):
        sets.join(roots)
    out: dict[Root, Group] = {}
    for hole, roots in left:
        top = sets.top(roots[0])
        out.setdefault(top, Group(top)).holes.append(hole)
    for finding, roots in found:
        top = sets.top(roots[0])
        out.setdefault(top, Group(top)).findings.append(finding)
    return list(out.values())


def part_root(build: Build, place: str) -> Root | None:
    """Give the root of the part that stands at a place; None where none stands."""
    entry = build.filled.get(place)
    return (PART, entry.part_id, entry.origin) if entry else None


class _Tied:
    """Finds the roots of a finding or an open place, knowing what speaks against each part."""

    def __init__(self, build: Build) -> None:
        self._build = build
        self._open = {hole.place.name for hole in build.holes}
        of_parts = [f for f in build.findings if f.verdict > Verdict.PASS and f.part and not _of_the_bike(f.datum)]
        asked = Counter(finding.subject for finding in of_parts)
        suspects = {subject: self._suspects(subject) for subject in asked}
        against: Counter[Root] = Counter()
        for subject, times in asked.items():
            against.update(dict.fromkeys(suspects[subject], times))
        self._blamed = {subject: max(roots, key=against.__getitem__) for subject, roots in suspects.items()}
        self._worst: dict[Root, Verdict] = {}
        for finding in of_parts:
            root = self._blamed[finding.subject]
            self._worst[root] = max(finding.verdict, self._worst.get(root, Verdict.PASS))

    def of_finding(self, finding: Finding) -> list[Root]:
        """Tie a finding to the part at fault or the figure that lacks; of the whole build, to its reason."""
        blamed = self._joined(finding)
        if blamed:
            return [blamed]
        if finding.subject == PAPERS:
            return [(WHOLE, PAPERS)]  # one letter asks all of it
        if _of_the_bike(finding.datum):
            return [(DATUM, finding.datum)]
        if finding.part:
            return [self._blamed[finding.subject]]
        settled = "holds" if finding.verdict <= Verdict.TIGHT else "to settle"
        told = (("because", finding.because), ("needed", finding.needed))
        return [(WHOLE, finding.rule, settled, *words) for words in told if words[1]] or [(WHOLE, finding.key)]

    def of_hole(self, hole: Hole) -> list[Root]:
        """Tie an open place to itself, and to the figure, the part, the other open place or the reason it waits for."""
        own: Root = (OPEN, hole.place.name)
        datum = next(filter(_of_the_bike, hole.datum.split("; ")), "")
        if datum:
            return [own, (DATUM, datum)]
        arrived = part_root(self._build, hole.wanted_by)
        if arrived:
            return [own, arrived]
        if hole.blocked in self._open:
            return [own, (OPEN, hole.blocked)]
        blocking = part_root(self._build, hole.blocked)
        if blocking and blocking[-1] != CHOSEN:
            return [own, blocking]
        return [own, (REASON, hole.place.family, hole.blocked, *(hole.rules or (hole.sentence,)))]

    def _joined(self, finding: Finding) -> Root | None:
        """Find the part or the open place that an answer about the whole build comes from, if one is as bad itself."""
        waits = [place for place in self._open if re.search(rf"\bthe {re.escape(place)}\b", finding.datum)]
        if waits:
            return (OPEN, max(waits, key=len))
        for place in finding.at_fault:
            if place in self._open:
                return (OPEN, place)
            root = part_root(self._build, place)
            if root and self._worst.get(root, Verdict.PASS) >= finding.verdict:
                return root
        return None

    def _suspects(self, subject: str) -> list[Root]:
        """List the parts of a place or a pair that may be at fault: what the builder set, else all."""
        found = [root for root in (part_root(self._build, place) for place in subject.split(" / ")) if root]
        return [root for root in found if root[-1] != CHOSEN] or found


def _of_the_bike(datum: str) -> bool:
    """Tell whether a figure that lacks is one of the bike, which settles every answer that waits for it."""
    return bool(datum) and not datum.startswith(OF_A_PART)
