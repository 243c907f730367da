"""Each part that came, in a few lines: what was ordered, whether it may be used, what differs, what is worse."""

from collections.abc import Sequence
from dataclasses import dataclass

from bom.arrived.cures import key_of, swaps, verdicts_by_key
from bom.arrived.differs import Differs, differing
from bom.arrived.stands import RECEIVED
from bom.build import Build
from bom.choose.filled import Filled, Hole
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict

MAY_BE_USED = "may be used"
# What to do, by the worst answer that is worse with it.
TO_DO = {
    Verdict.FAIL: "send it back",
    Verdict.CANT_TELL: "send it back, or find out what can't be told",
    Verdict.TIGHT: f"{MAY_BE_USED}, without its margin",
}
MOST_NAMED = 3


@dataclass(frozen=True)
class Arrival:
    """One part that came.

    title    its place in words
    ordered  id of what was ordered, "" where nothing was
    to_do    in words
    verdict  the worst answer that is worse with it; pass where none is
    differs  ratings that differ
    count    answers that are worse with it
    worst    the worst of them, in words
    several  other parts came too, so that what is worse elsewhere may be theirs
    """

    place: str
    title: str
    came: str
    ordered: str
    to_do: str
    verdict: Verdict
    differs: tuple[Differs, ...]
    count: int
    worst: tuple[str, ...]
    several: bool

    @property
    def heading(self) -> str:
        """Say what came, what was ordered, and what to do."""
        was = f"{self.ordered} was ordered" if self.ordered else "nothing was ordered"
        told = "came as ordered" if self.ordered == self.came else f"came, {was}: {self.to_do}"
        return f"{self.title}: {self.came} {told}"

    @property
    def counted(self) -> str:
        """Say how many answers are worse; "" where none is."""
        if not self.count:
            return ""
        answers = "1 answer is" if self.count == 1 else f"{self.count} answers are"
        more = f", the worst {len(self.worst)}" if self.count > len(self.worst) else ""
        return f"{answers} worse with {'what came' if self.several else 'it'}{more}:"


def arrivals(build: Build) -> list[Arrival]:
    """List each part that came and stands at its place."""
    if build.ordered is None:
        return []
    entries = [(name, entry) for name, entry in build.filled.items() if entry.origin == RECEIVED]
    return [_arrival(name, entry, build, build.ordered) for name, entry in entries]


def _arrival(name: str, entry: Filled, build: Build, ordered: Build) -> Arrival:
    old, swapped = ordered.filled.get(name), swaps(ordered, build.filled)
    same = old is not None and old.part_id == entry.part_id
    worse = [] if same else _worse(name, build, ordered, list(swapped))
    verdict = max((each.verdict for each in worse), default=Verdict.PASS)
    return Arrival(
        place=name,
        title=entry.place.title,
        came=entry.part_id,
        ordered=old.part_id if old else "",
        to_do=TO_DO.get(verdict) or _as_good(name, build),
        verdict=verdict,
        differs=tuple(differing(name, old.part, entry.part, build)) if old else (),
        count=len(worse),
        worst=tuple(_words(each, ordered) for each in worse[:MOST_NAMED]),
        several=len(swapped) > 1,
    )


def _worse(name: str, build: Build, ordered: Build, swapped: Sequence[str]) -> list[Finding | Hole]:
    """List what is worse than as ordered, the worst first; what names another part that came alone is that one's."""
    was = verdicts_by_key(ordered.findings)
    others = set(swapped) - {name}
    found: list[Finding | Hole] = [hole for hole in build.holes if hole.wanted_by == name]
    for finding in build.findings:
        places = set(finding.subject.split(" / "))
        if finding.verdict > max(Verdict.PASS, was.get(key_of(finding), Verdict.NOT_ASKED)) and (
            name in places or not places & others
        ):
            found.append(finding)
    return sorted(found, key=lambda each: (-each.verdict, isinstance(each, Hole), not _is_at(name, each)))


def _is_at(name: str, told: Finding | Hole) -> bool:
    return isinstance(told, Finding) and name in told.subject.split(" / ")


def _as_good(name: str, build: Build) -> str:
    """Say that it may be used, where nothing at its place must be settled first."""
    bad = any(finding.verdict > Verdict.TIGHT and _is_at(name, finding) for finding in build.findings)
    return "no worse than what was ordered, which does not pass here either" if bad else MAY_BE_USED


def _words(told: Finding | Hole, ordered: Build) -> str:
    """Say one answer that is worse, beside what was offered as ordered."""
    if isinstance(told, Hole):
        return f"{told.verdict.word}: {told.place.name} stays open"
    old = next((finding for finding in ordered.findings if key_of(finding) == key_of(told)), None)
    was = f", as ordered {old.offered}" if old and old.offered != told.offered else ""
    return f"{told.verdict.word}: {told.subject}: {told.what} {told.offered}, needs {told.needed}{was}"


def aside_lines(build: Build) -> list[str]:
    """Say of each part that stands nowhere why."""
    return [
        f"{each.place}: {each.part_id} {'came' if each.origin == RECEIVED else 'was ordered'}: {each.why}"
        for each in build.aside
    ]
