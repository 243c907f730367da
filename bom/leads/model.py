"""What pairing gives: ends that join, ends that stay unused, and what has to be bought for them."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from bom.read.lead_kinds import PACK

LEADS, PACK_LEADS = "control leads", "control leads at pack volts"  # circuits of their fittings


@dataclass(frozen=True)
class End:
    """One lead of a device, or what of the bike a lead is joined to.

    role     "gives", "takes", "ground", "contact"; "" where its signal is not known
    level    which volts live on it, as bom.read.lead_kinds counts them; None where its signal is not known
    low_v, high_v, supply_a, draws_a  as the job gives them; None: not known
    colour   in words, "" where it is not said
    plug     kind of plug it ends in alone, in the builder's words
    shell    that plug, or else the one all leads of its device end in
    outside  a donor item, a load or a wire of the loom: it brings its own wire
    """

    device: str
    kind: str
    label: str
    function: str
    signal: str
    role: str
    level: int | None
    low_v: float | None = None
    high_v: float | None = None
    supply_a: float | None = None
    draws_a: float | None = None
    colour: str = ""
    plug: str = ""
    shell: str = ""
    pin: str = ""
    momentary: bool = False
    to: str = ""
    outside: bool = False

    @property
    def name(self) -> str:
        """Name the end as a job does."""
        return f"{self.device}: {self.label}"


@dataclass(frozen=True)
class Join:
    """Two ends that meet.

    first    the controller's end, or the one that stands first in the job
    plug     place of the bought plug it goes through, "" where it is joined to a wire
    way      way of that plug, counted from 1
    because  why these two
    """

    number: int
    first: End
    second: End
    plug: str
    way: int
    because: str

    @property
    def name(self) -> str:
        """Name the joint by both its ends."""
        return f"{self.first.name} to {self.second.name}"

    @property
    def ends(self) -> tuple[End, End]:
        """Give both ends."""
        return self.first, self.second

    @property
    def at_pack_volts(self) -> bool:
        """Tell whether pack volts live on either end."""
        return PACK in (self.first.level, self.second.level)

    def with_role(self, role: str) -> End | None:
        """Give the one end of a role; None where neither or both have it."""
        found = [end for end in self.ends if end.role == role]
        return found[0] if len(found) == 1 else None


@dataclass(frozen=True)
class Fitting:
    """A part to be bought for leads: a plug, a splice, or caps.

    leads    leads it takes
    count    pieces
    devices  whose leads they are
    """

    name: str
    family: str
    title: str
    circuit: str
    zone: str
    leads: int
    count: int
    devices: tuple[str, ...]


@dataclass(frozen=True)
class Pairing:
    """All control leads of a bike."""

    joins: tuple[Join, ...] = ()
    unused: tuple[End, ...] = ()
    fittings: tuple[Fitting, ...] = ()

    @cached_property
    def fitting_of(self) -> Mapping[str, Fitting]:
        """Give fittings by the name of their place."""
        return {fitting.name: fitting for fitting in self.fittings}

    def joins_of(self, end: End) -> list[Join]:
        """List the joints of one end."""
        return [join for join in self.joins if end in join.ends]

    def joins_with(self, device: str) -> list[Join]:
        """List the joints of one device."""
        return [join for join in self.joins if device in (join.first.device, join.second.device)]

    def other_contacts(self, end: End) -> list[Join]:
        """List the joints of the other leads of the switch whose contact an end is."""
        return [
            join
            for join in self.joins_with(end.device)
            for other in join.ends
            if other.device == end.device and other != end and other.role == "contact"
        ]

    def look_alikes(self, end: End) -> list[End]:
        """List the leads of the same device that are in use and have the same colour, or a plug of the same kind."""
        used = {other: None for join in self.joins_with(end.device) for other in join.ends if not other.outside}
        return [
            other
            for other in used
            if other.device == end.device
            and ((end.colour and other.colour == end.colour) or (end.plug and other.plug == end.plug))
        ]


NO_LEADS = Pairing()
