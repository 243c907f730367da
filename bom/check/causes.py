"""The causes of all that does not pass, in the order to read them: what must be settled first, the worst harm first."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from bom.build import Build
from bom.check.decides import PAIR, in_order
from bom.check.roots import DATUM, PART, WHOLE, Group, Root, groups, part_root
from bom.choose.filled import NONE, OF_A_PART, Hole
from bom.judge.finding import Finding
from bom.judge.harm import Harm
from bom.judge.rule import rules
from bom.judge.verdict import Verdict
from bom.parts import DONOR
from bom.read.families import BY_NAME


@dataclass(frozen=True)
class Cause:
    """What one cure, one figure or one part settles.

    title     what it is about, in one line: the part by its place and what is wrong, or what to find out
    verdict   the worst of its answers
    harm      the worst of its answers as bad; of open places that of the rules that keep them open
    cure      what helps against the worst; "" where the figure of its title settles it
    data      figures that lack
    findings  all of them, the worst first
    holes     places that stay open
    places    places of the part at fault, or all that its answers name
    decides   the finding that decides; None where an open place does
    part      id of the part at fault, "" where none is
    """

    title: str
    verdict: Verdict
    harm: Harm
    cure: str
    data: tuple[str, ...]
    findings: tuple[Finding, ...]
    holes: tuple[Hole, ...]
    places: tuple[str, ...]
    decides: Finding | None
    part: str

    @property
    def count(self) -> int:
        """Count its answers and open places."""
        return len(self.findings) + len(self.holes)

    @property
    def to_settle(self) -> bool:
        """Tell whether it must be settled before ordering."""
        return self.verdict > Verdict.TIGHT

    @property
    def asks(self) -> bool:
        """Tell whether its title names the figure to find out."""
        return self.title.startswith(FIND_OUT)


FIND_OUT = "find out "
NOTHING = "nothing in the catalogue passes"
MOST_NAMED = 2


def causes(build: Build) -> tuple[Cause, ...]:
    """Put all that does not pass under its causes: to be settled first, then by harm, verdict and number of answers."""
    return tuple(sorted((_cause(build, group) for group in groups(build)), key=_rank))


def harm_of(rule: str) -> Harm:
    """Give the harm of a rule by its name."""
    return _harms()[rule]


def harm_of_hole(hole: Hole) -> Harm:
    """Give the worst harm of the rules that keep a place open; where nothing is offered it is one of the order."""
    return min(map(harm_of, hole.rules), default=Harm.ORDER)


def from_causes(build: Build) -> str:
    """Say of how many causes all is that must be settled; "" where each has its own."""
    settle = [cause for cause in build.causes if cause.to_settle]
    if len(settle) == sum(cause.count for cause in settle):
        return ""
    return "from one cause" if len(settle) == 1 else f"from {len(settle)} causes"


@cache
def _harms() -> dict[str, Harm]:
    return {rule.name: rule.harm for rule in rules()}


def _rank(cause: Cause) -> tuple[object, ...]:
    return (not cause.to_settle, cause.harm, -cause.verdict, -cause.count, cause.title)


def _cause(build: Build, group: Group) -> Cause:
    found = in_order(group.findings)
    verdicts = [finding.verdict for finding in found] + [hole.verdict for hole in group.holes]
    settle = max(verdicts) > Verdict.TIGHT
    weighed = [harm_of(f.rule) for f in found if (f.verdict > Verdict.TIGHT) == settle]
    places = _places(build, group, found)
    decides = found[0] if found and (group.root[0] == PART or not group.holes) else None
    return Cause(
        title=_title(build, group, found, places),
        verdict=max(verdicts),
        harm=min((*weighed, *map(harm_of_hole, group.holes))),
        cure=decides.cure if decides else "" if group.root[0] == DATUM else group.holes[0].remedy,
        data=_data(group, found),
        findings=tuple(found),
        holes=tuple(group.holes),
        places=places,
        decides=decides,
        part=group.root[1] if group.root[0] == PART else "",
    )


def _places(build: Build, group: Group, found: Sequence[Finding]) -> tuple[str, ...]:
    """Name the places of the part at fault; else all that findings and open places name."""
    subjects = dict.fromkeys(finding.subject for finding in found)
    named = [place for subject in subjects for place in _parted(group.root, subject)]
    if group.root[0] == PART:
        own = [place for place in dict.fromkeys(named) if part_root(build, place) == group.root]
        if own:
            return tuple(own)
    return tuple(dict.fromkeys((*(hole.place.name for hole in group.holes), *named)))


def _parted(root: Root, subject: str) -> list[str]:
    """Split a pair into its places; what the whole build is asked about may be a text with a stroke in it."""
    return [subject] if root[0] == WHOLE else subject.split(PAIR)


def _data(group: Group, found: Sequence[Finding]) -> tuple[str, ...]:
    """List the figures that lack, without whose they are: the title says it."""
    data = [finding.datum for finding in found if finding.datum]
    data += [datum for hole in group.holes for datum in hole.datum.split("; ") if datum]
    for start in OF_A_PART:
        data = [datum.removeprefix(start) for datum in data]
    return tuple(dict.fromkeys(data))


def _title(build: Build, group: Group, found: Sequence[Finding], places: Sequence[str]) -> str:
    kind = group.root[0]
    if kind == DATUM:
        return f"{FIND_OUT}{group.root[1]}"
    if kind == PART:
        return _of_part(build, group, found, places)
    if group.holes:
        return _open(group.holes)
    more = len(dict.fromkeys(finding.subject for finding in found)) - 1
    if more:
        return f"{found[0].subject} and {more} alike: {found[0].what}"
    return f"{found[0].subject}: {', '.join(dict.fromkeys(finding.what for finding in found))}"


def _of_part(build: Build, group: Group, found: Sequence[Finding], places: Sequence[str]) -> str:
    if found:
        return f"{_standing(build, places)}: {_some([finding.what for finding in found])}"
    if group.holes[0].wanted_by:
        return f"{group.root[1]} came and wants what was not ordered: {_open(group.holes)}"
    return f"nothing that passes goes with {group.root[1]}: {_open(group.holes)}"


def _standing(build: Build, places: Sequence[str]) -> str:
    """Name a part by its place, or by how many places it stands at."""
    entry, donors = build.filled[places[0]], False
    name = entry.part_id
    if entry.origin == "donor":
        name, donors = f"the donor's {name.removeprefix(DONOR)}", True
    pinned = f", {entry.origin}" if entry.origin in ("pinned", "received") else ""
    if len(places) == 1:
        return f"{places[0]}, {name}" if donors else f"{places[0]} {name}{pinned}"
    kind = "" if donors else f"{BY_NAME[entry.place.family].title} "
    return f"{kind}{name}{pinned}{',' if pinned else ''} at {len(places)} places"


def _some(names: Sequence[str]) -> str:
    """Name what decides, or both of two; each once."""
    each = list(dict.fromkeys(names))
    return ", ".join(each) if len(each) <= MOST_NAMED else f"{each[0]} and {len(each) - 1} more"


def _open(holes: Sequence[Hole]) -> str:
    if len(holes) == 1:
        title = holes[0].title
        return title if title.startswith(NONE) else f"{title}: {NOTHING}"
    return f"{NONE} for: {holes[0].place.name} and {len(holes) - 1} more"
