"""Control leads as the papers print them: one row a lead, both sides in words; unused ones last."""

from collections.abc import Sequence
from dataclasses import dataclass

from bom import units
from bom.build import Build
from bom.choose.filled import NONE
from bom.leads.model import End, Join
from bom.leads.pairing import SERVES
from bom.read.lead_kinds import LEVELS

DASH, NOT_KNOWN, CAP = "–", "not known", "cap and stow"


@dataclass(frozen=True)
class Side:
    """One side of a joint: whose lead, what for, what stands on it, its colour and its own plug, all in words."""

    device: str
    lead: str
    signal: str
    volts: str
    colour: str
    plug: str


@dataclass(frozen=True)
class LeadRow:
    """One row of the table.

    number   as marked on the lead: "L1", or "S1" for a spare one
    through  what joins the two: the place of a plug, of a splice, or the wire of the loom
    part     what stands at that place, by part id
    way      way of that plug
    do       what is to be done besides
    """

    number: str
    first: Side
    second: Side | None
    through: str
    part: str
    way: str
    do: str


def lead_rows(build: Build) -> Sequence[LeadRow]:
    """List every control lead of a build."""
    leads = build.loom.leads
    joined = [_joined(join, build) for join in leads.joins]
    spare = [_spare(number, end, build) for number, end in enumerate(leads.unused, start=1)]
    return [*joined, *spare]


def _joined(join: Join, build: Build) -> LeadRow:
    through = join.plug or _tap(join, build) or join.second.label
    way = f"{join.way}" if join.plug else DASH
    return LeadRow(
        f"L{join.number}",
        side_of(join.first),
        side_of(join.second),
        through,
        _part(through, build),
        way,
        _do(join, build),
    )


def _tap(join: Join, build: Build) -> str:
    name = f"{join.first.name} tap at {join.second.device}"
    return name if name in build.loom.leads.fitting_of else ""


def _part(place: str, build: Build) -> str:
    if place not in build.loom.leads.fitting_of:
        return DASH
    entry = build.filled.get(place)
    return entry.part_id if entry else NONE.upper()


def _do(join: Join, build: Build) -> str:
    """Say what is to be done at a joint besides joining it."""
    leads, said = build.loom.leads, []
    for end in join.ends:
        splice = f"{end.name} splice"
        if splice in leads.fitting_of:
            said.append(f"through the {splice} ({_part(splice, build)})")
    if join.because == SERVES:
        said.append(f"the {join.first.label} serves as {join.second.label}")
    if join.second.function == "throttle ground":
        said.append("join first")
    return "; ".join(said) or DASH


def _spare(number: int, end: End, build: Build) -> LeadRow:
    alike = ", ".join(other.label for other in build.loom.leads.look_alikes(end))
    caps = f"{end.device} lead caps"
    live = f"live at {LEVELS[end.level or 0]}: cap it before power" if end.role == "gives" else ""
    do = "; ".join(filter(None, (CAP, live, f"looks like the {alike}: mark it" if alike else "")))
    return LeadRow(f"S{number}", side_of(end), None, caps, _part(caps, build), DASH, do)


def side_of(end: End) -> Side:
    """Put an end into words."""
    plug = " ".join(filter(None, (end.shell, f"pin {end.pin}" if end.pin else "")))
    unsaid = "its own wire" if end.outside else "not said"
    return Side(end.device, end.label, end.signal or NOT_KNOWN, _volts(end), end.colour or unsaid, plug or DASH)


def _volts(end: End) -> str:
    """Print both ends of its range, or the one that is known."""
    if end.low_v is None and end.high_v is None:
        return DASH
    low, high = (NOT_KNOWN if volts is None else units.show(volts, "voltage") for volts in (end.low_v, end.high_v))
    return f"{low} to {high}"
