"""The loom: points joined by wires, places where parts sit, and which place bears on which."""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

from bom.leads.model import NO_LEADS, Pairing
from bom.read.job import Keep

LINKS: Mapping[str, str] = {
    "guards": "a fuse guards a wire",
    "continues": "a heavy wire goes on as the next one",
    "relieves": "a fuse further on keeps overload from a wire before it",
    "drives": "a closer feeds a coil",
    "flashes": "a flasher switches bought lamps",
    "takes fuse": "a holder or fuse box takes a fuse",
    "crimped on": "a lug or terminal is crimped on a wire",
    "on stud": "a lug sits on a part's stud",
    "takes wire": "a connector, holder or port takes a wire",
    "plugs on": "a wire's terminal plugs onto a fuse box or a relay",
    "opens": "a converter's limited current must open a fuse",
    "feeds": "a converter feeds a wire that no fuse guards",
    "behind": "a fuse leaves to a contactor only what the contactor can break",
    "pulls": "a switch pulls in a relay",
    "clamps": "a clamp takes the kick of a coil",
    "opens through": "a converter's fuse opens through the clamp behind the converter",
    "fills through": "a relay switches a precharge resistor",
    "rides": "a fuse carries a precharge resistor's current",
    "shrinks over": "a sleeve covers a lug on a wire",
    "charges": "a converter keeps a buffer battery charged",
    "drops in": "a shunt and the meter that reads it",
    "plugs into": "a charger's plug goes into the charge port",
    "beside": "a plug within reach of another at other volts",
}


# Gate of the lamps of the side that does not flash, where a telltale lies across the sides: joined, yet not lit.
FAR_SIDE = "lit far side"
# Place of the orange sleeving over plus and minus of the taps, their stubs with them.
SLEEVING = "tap sleeving"
# Gate of a switch that is closed while none of its loads is lit.
UNLIT = "unlit"


@dataclass(frozen=True)
class Place:
    """Where one part sits (or several alike).

    name       unique, lower case, as a builder would say it ("main fuse", "head feed")
    family     part family that belongs here
    circuit    name of the circuit whose duty it bears
    zone       where on the bike: box, frame, bar, under seat
    quantity   pieces, or metres where the family is sold by length
    terminals  points of the loom it joins
    item       the donor item that may stay here, by name
    keep       whether the builder wants the donor's kept
    load       the 12 V load it is or serves, by name
    end        what a lug goes on: "pack", "controller", "motor", "frame", or a place
    loads      of a wire in a 12 V circuit: the loads whose amps it carries, by name; none: all of the circuit
    leads      of a plug, splice or cap: leads that lamps, a controller or other devices bring to it themselves
    """

    name: str
    family: str
    title: str
    circuit: str
    zone: str
    quantity: float
    terminals: tuple[str, ...] = ()
    item: str = ""
    keep: Keep = "no"
    load: str = ""
    end: str = ""
    loads: tuple[str, ...] = ()
    leads: int = 0


@dataclass(frozen=True)
class Wire:
    """A length of one conductor between two points; its cable is chosen at the place of the same name.

    length_m   along the wire
    together   loaded wires lying with it
    guard      place of the fuse that guards it, "" when none does
    count      conductors alike, side by side
    part_of_m  length of its circuit there and back, over which the allowed drop is shared
    """

    name: str
    start: str
    end: str
    length_m: float
    together: int
    guard: str
    part_of_m: float
    count: int = 1


@dataclass(frozen=True)
class Bridge:
    """A way for current between two points that is no wire: through a part, a load or the pack.

    kind   what it is: "fuse", "contact", "plug", "shunt", "resistor", "coil", "load", "key input", "meter",
           "pilot", "enable", "sense", "closer", "controller", "pack", "charger" or "buffer"
    start  its plus, or where current comes in
    end    its minus, or where current goes out
    place  place of the part it runs through, "" where the job alone describes it
    gate   what closes it: "" always; a switch ("key", "stop", "charge cap", "pack plug", "isolator"), a place
           whose coil closes it ("not <place>" where it opens it), an output of the closer, "lit" where a load
           below is lit, UNLIT, FAR_SIDE, "never"
    loads  loads behind a switch, or the load itself
    """

    name: str
    kind: str
    start: str
    end: str
    place: str = ""
    gate: str = ""
    loads: tuple[str, ...] = ()


@dataclass(frozen=True)
class Link:
    """Two places of which one bears on the other; pair rules judge them together."""

    kind: str
    first: str
    second: str


@dataclass(frozen=True)
class Loom:
    """The whole electrical picture of one arrangement of one bike."""

    arrangement: str
    places: tuple[Place, ...]
    wires: tuple[Wire, ...]
    links: tuple[Link, ...]
    bridges: tuple[Bridge, ...] = ()
    leads: Pairing = NO_LEADS

    def place(self, name: str) -> Place:
        """Find a place by name."""
        return self._places[name]

    def wire(self, name: str) -> Wire:
        """Find a wire by name."""
        return self._wires[name]

    def links_to(self, kind: str, second: str) -> Sequence[Link]:
        """List the links of a kind that bear on a place."""
        return self._links.get((kind, second), ())

    @cached_property
    def _links(self) -> Mapping[tuple[str, str], list[Link]]:
        grouped: dict[tuple[str, str], list[Link]] = defaultdict(list)
        for link in self.links:
            grouped[link.kind, link.second].append(link)
        return dict(grouped)

    @cached_property
    def _places(self) -> Mapping[str, Place]:
        return {place.name: place for place in self.places}

    @cached_property
    def _wires(self) -> Mapping[str, Wire]:
        return {wire.name: wire for wire in self.wires}
