"""What has to be bought to join leads: a plug for each device, splices where several meet, caps for the rest.

Pack volts have a plug of their own: a wet or crossed plug would put them on every lead beside them.
"""

from collections import Counter
from collections.abc import Iterator, Sequence

from bom.leads.model import LEADS, PACK_LEADS, End, Fitting, Join
from bom.read.lead_faults import LOOM
from bom.read.lead_kinds import PACK

AT_BAR = ("throttle", "brake switch", "button", "meter", "display")


def plug_of(first: End, second: End) -> str:
    """Name the plug two ends go through, "" where one is joined to a wire of the bike."""
    if second.outside:
        return ""
    at_pack = PACK in (first.level, second.level)
    return f"{second.device} lead plug at pack volts" if at_pack else f"{second.device} lead plug"


def fittings_of(joins: Sequence[Join], unused: Sequence[End]) -> Iterator[Fitting]:
    """List what to buy, in the order of the joints."""
    yield from _plugs(joins)
    yield from _splices(joins)
    yield from _taps(joins)
    yield from _caps(unused)


def _zone(end: End) -> str:
    return "bar" if end.kind in AT_BAR else "frame"


def _circuit(joins: Sequence[Join]) -> str:
    return PACK_LEADS if any(join.at_pack_volts for join in joins) else LEADS


def _plugs(joins: Sequence[Join]) -> Iterator[Fitting]:
    for name in dict.fromkeys(join.plug for join in joins if join.plug):
        through = [join for join in joins if join.plug == name]
        ends = [end for join in through for end in join.ends]
        devices = tuple(dict.fromkeys(end.device for end in ends))
        last = through[0].second
        yield Fitting(
            name,
            "signal_connector",
            f"plug of the {last.device}'s leads",
            _circuit(through),
            _zone(last),
            len(through),
            1,
            devices,
        )


def _splices(joins: Sequence[Join]) -> Iterator[Fitting]:
    """Where one lead serves several others, they meet in a splice."""
    count = Counter(end for join in joins for end in join.ends if not end.outside)
    for end, meeting in count.items():
        if meeting > 1:
            there = [join for join in joins if end in join.ends]
            devices = tuple(dict.fromkeys(other.device for join in there for other in join.ends if not other.outside))
            title = f"splice of what meets at the {end.device}'s {end.label}"
            yield Fitting(
                f"{end.name} splice",
                "splice",
                title,
                _circuit(there),
                "frame",
                meeting + 1,
                1,
                devices,
            )


def _taps(joins: Sequence[Join]) -> Iterator[Fitting]:
    """A lead that joins a wire of the bike is spliced into it; the loom's own key wire ends at the controller."""
    for join in joins:
        first, second = join.ends
        if second.outside and second.device != LOOM:
            title = f"splice of the {first.device}'s {first.label} into the wire of the {second.device}"
            name = f"{first.name} tap at {second.device}"
            yield Fitting(name, "splice", title, _circuit([join]), "frame", 3, 1, (first.device,))


def _caps(unused: Sequence[End]) -> Iterator[Fitting]:
    for device in dict.fromkeys(end.device for end in unused):
        spare = [end for end in unused if end.device == device]
        circuit = PACK_LEADS if any(end.level in (PACK, None) for end in spare) else LEADS
        title = f"end caps on unused leads of the {device}"
        yield Fitting(f"{device} lead caps", "end_cap", title, circuit, _zone(spare[0]), 1, len(spare), (device,))
