"""Which lead joins which: what the job says stands; else leads of one function join, in the order of the job.

The controller is asked first. A lead that may serve several (a ground, a supply, a brake input) is shared when no
other is free; where a device has a ground or supply of its own kind and the controller has not, a general one serves.
"""

from dataclasses import dataclass, field

from bom.leads.ends import ends_of, key_wire, outside_end
from bom.leads.fittings import fittings_of, plug_of
from bom.leads.model import NO_LEADS, End, Join, Pairing
from bom.read.job import JobFile
from bom.read.lead_faults import NOTHING
from bom.read.lead_kinds import INSTEAD, SHARED

SAID, SAME, SERVES = "as the job says", "same function", "serves in its place"


@dataclass
class _Match:
    """Leads being matched; `met` are pairs found so far, each with why."""

    ends: list[End]
    met: list[tuple[End, End, str]] = field(default_factory=list)

    def meet(self, first: End, second: End, because: str) -> None:
        """Join two ends once, the controller's or the earlier one first."""
        if first.outside or (second.kind == "controller" and first.kind != "controller"):
            first, second = second, first
        if not any({first, second} == {one, other} for one, other, _ in self.met):
            self.met.append((first, second, because))

    def taken(self, end: End) -> bool:
        """Tell whether an end has a partner."""
        return any(end in (first, second) for first, second, _ in self.met)

    def partner(self, end: End, function: str) -> End | None:
        """Find the lead of a function that this one joins: free ones of the controller, then a shared one."""
        able = [
            other
            for other in self.ends
            if other.function == function and other.device != end.device and other.to != NOTHING
        ]
        hub = [other for other in able if other.kind == "controller"]
        free = [other for other in hub if not other.to and not self.taken(other)]
        shared = [other for other in hub if function in SHARED]
        opposite = [other for other in able if {other.role, end.role} == {"gives", "takes"}]
        return next(iter([*free, *shared, *(other for other in opposite if not self.taken(other))]), None)


def pair(job: JobFile) -> Pairing:
    """Pair the leads of a job; one without devices has an empty pairing."""
    if not job.devices:
        return NO_LEADS
    match = _Match(ends_of(job))
    _as_said(match, job)
    _key_input(match, job)
    _by_function(match)
    joins = _numbered(match)
    unused = tuple(end for end in match.ends if not match.taken(end))
    return Pairing(joins, unused, tuple(fittings_of(joins, unused)))


def _as_said(match: _Match, job: JobFile) -> None:
    named = {end.name: end for end in match.ends}
    for end in match.ends:
        other = named.get(end.to) or outside_end(end, job)
        if end.to and end.to != NOTHING and other:
            match.meet(end, other, SAID)


def _key_input(match: _Match, job: JobFile) -> None:
    """The loom has a wire that wakes the controller already."""
    wire = key_wire(job)
    inputs = [end for end in match.ends if end.kind == "controller" and end.function == "key input" and not end.to]
    if wire and inputs:
        match.meet(inputs[0], wire, SAME)


def _by_function(match: _Match) -> None:
    waiting = [end for end in match.ends if end.kind != "controller" and not end.to]
    for end in waiting:
        if match.taken(end):
            continue
        other, because = match.partner(end, end.function), SAME
        if other is None and end.function in INSTEAD:
            other, because = match.partner(end, INSTEAD[end.function]), SERVES
        if other is not None:
            match.meet(end, other, because)


def _numbered(match: _Match) -> tuple[Join, ...]:
    """Put the joints in the order of the job, and each in its plug."""
    order = {end: at for at, end in enumerate(match.ends)}
    met = sorted(match.met, key=lambda entry: (order[entry[0]], order.get(entry[1], -1), entry[1].name))
    ways: dict[str, int] = {}
    return tuple(_join(number, *entry, ways) for number, entry in enumerate(met, start=1))


def _join(number: int, first: End, second: End, because: str, ways: dict[str, int]) -> Join:
    plug = plug_of(first, second)
    if plug:
        ways[plug] = ways.get(plug, 0) + 1
    return Join(number, first, second, plug, ways.get(plug, 0), because)
