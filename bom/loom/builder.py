"""Collects places, wires and links while a loom is laid out."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from bom.leads.model import NO_LEADS, Pairing
from bom.loom.bridges import part_bridges
from bom.loom.lengths import Length, TracedRuns, margin_m
from bom.loom.model import LINKS, Bridge, Link, Loom, Place, Wire
from bom.read.job import Item, JobFile
from bom.read.margins import Margins

BUS_SENSE = "bus sense"  # circuit that only a closer which senses the bus needs
PILOT = "pilot lamp"  # place and circuit of the lamp that tells that the traction side is live
# Thin wires at pack volts.
TAP_CIRCUITS = ("precharge", "converter input", "key input", "meter", "charging", BUS_SENSE, PILOT)

# A lug takes about 60 mm of heat-shrink, which is sold in sticks of 1.2 m (common practice).
SLEEVE_STICKS = 0.05


@dataclass
class Builder:
    """A loom in the making.

    A part with two ends joins the points "<name> in" and "<name> out"; a post is one point of its own name.
    """

    job: JobFile
    margins: Margins
    key_at: str
    places: dict[str, Place] = field(default_factory=dict)
    wires: list[Wire] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)
    unfinished: list[str] = field(default_factory=list)
    bridges: list[Bridge] = field(default_factory=list)
    paired: Pairing = NO_LEADS

    @property
    def runs(self) -> TracedRuns:
        """Give the job's runs as lengths that know their keys."""
        return TracedRuns(self.job.runs)

    def margin_m(self, name: str) -> Length:
        """Give a margin that is a length, as one that knows its name."""
        return margin_m(self.margins, name)

    def place(
        self,
        name: str,
        family: str,
        title: str,
        circuit: str,
        zone: str,
        quantity: float = 1,
        *,
        ends: tuple[str, ...] = (),
        load: str = "",
        item: Item | None = None,
        end: str = "",
        loads: tuple[str, ...] = (),
        leads: int = 0,
    ) -> str:
        """Add a place, for a part to be bought or for a donor item that may stay, and return its name."""
        if name in self.places:
            raise ValueError(f"two places are named {name}")
        kept = item if item and item.may_stay else None
        self.places[name] = Place(
            name,
            family,
            title,
            circuit,
            zone,
            quantity,
            terminals=ends,
            item=kept.name if kept else "",
            keep=kept.keep if kept else "no",
            load=load,
            end=end,
            loads=loads,
            leads=leads,
        )
        return name

    def in_line(self, name: str, family: str, title: str, circuit: str, zone: str, item: Item | None = None) -> str:
        """Add a part that current runs through, in at one end and out at the other."""
        return self.place(name, family, title, circuit, zone, ends=(f"{name} in", f"{name} out"), item=item)

    def relay(self, name: str, title: str, circuit: str, zone: str) -> str:
        """Add a relay and the clamp across its coil."""
        self.in_line(name, "relay", title, circuit, zone)
        self.clamp(name, zone)
        return name

    def clamp(self, coil: str, zone: str) -> None:
        """Put a clamp across a coil; it is dropped where the chosen part has its own."""
        clamp = self.place(f"{coil} clamp", "clamp", f"clamp across the coil of the {coil}", "key control", zone)
        self.link("clamps", clamp, coil)

    def link(self, kind: str, first: str, second: str) -> None:
        """Say that one place bears on another."""
        if kind not in LINKS:
            raise KeyError(kind)
        self.links.append(Link(kind, first, second))

    def wire(
        self,
        name: str,
        title: str,
        circuit: str,
        zone: str,
        ends: tuple[str, str],
        length_m: float,
        *,
        guard: str = "",
        part_of_m: float,
        together: float,
        count: int = 1,
        item: Item | None = None,
        loads: tuple[str, ...] = (),
    ) -> str:
        """Add a wire, the cable place of the same name, and the fuse that guards it."""
        self.wires.append(Wire(name, *ends, length_m, int(together), guard, part_of_m, count))
        self.place(name, "cable", title, circuit, zone, float(length_m * count), ends=ends, loads=loads, item=item)
        if guard:
            self.link("guards", guard, name)
        return name

    def splice(self, name: str, point: str, circuit: str, zone: str, *, leads: int = 0) -> None:
        """Put a splice on a point where wires meet; their stripped ends go into it, and so do leads of parts."""
        self.place(name, "splice", f"splice of the wires at {point}", circuit, zone, ends=(point,), leads=leads)

    def crimps(self, wire: str, quantity: float) -> str:
        """Put crimp terminals on the ends of a thin wire that plug onto something."""
        cable = self.cable(wire)
        name = self.place(
            f"{wire} terminals", "terminal", f"terminals on {cable.title}", cable.circuit, cable.zone, quantity
        )
        self.link("crimped on", name, wire)
        if cable.circuit in TAP_CIRCUITS:
            self._shrink(name, wire, quantity)  # a bare tab at pack volts is to be touched by nobody
        return name

    def finish(self, wire: str) -> None:
        """Have both ends of a thin wire finished once all wires are laid."""
        self.unfinished.append(wire)

    def _finish(self, wire: str, joints: Mapping[str, Place], holders: Mapping[str, str]) -> None:
        """Put a lug on each end that is bolted, a crimp terminal on each that is plugged.

        A post and the frame are bolted to; a splice and an in-line fuse holder take the stripped end.
        """
        plugged = 0
        for end in self.cable(wire).terminals:
            joint = joints.get(end)
            taker = joint.name if joint and joint.family == "splice" else holders.get(end)
            if taker:
                self.link("takes wire", taker, wire)
            elif joint or end == "frame":
                self.lug(wire, end, on=joint.name if joint else "")
            else:
                plugged += 1
        if plugged:
            terminals = self.crimps(wire, plugged)
            for feed in [link for link in self.links if link.kind == "feeds" and link.second == wire]:
                self.link("feeds", feed.first, terminals)

    def _plug_on(self) -> None:
        """Say which wires plug onto the contacts of a fuse box or relay; a relay's coil takes any thin wire."""
        for wire in self.wires:
            for point in (wire.start, wire.end):
                owner = self.places.get(point.removesuffix(" in").removesuffix(" out"))
                if owner and owner.name != point and owner.family in ("fuse_box", "relay"):
                    self.link("plugs on", owner.name, wire.name)

    def _holder_points(self) -> dict[str, str]:
        """Find the holder of its own at each end of a fuse; one that only stands in comes later in the list."""
        family = {place.name: place.family for place in self.places.values()}
        terminals = {place.name: place.terminals for place in self.places.values()}
        held = [link for link in self.links if link.kind == "takes fuse" and family[link.first] == "fuse_holder"]
        return {point: link.first for link in reversed(held) for point in terminals[link.second]}

    def _joints(self) -> dict[str, Place]:
        """Give the posts and splices by their points; those of control leads lie on no wire of the loom."""
        joints = [place for place in self.places.values() if place.family in ("post", "splice")]
        return {place.terminals[0]: place for place in joints if place.terminals}

    def _splice_shared(self) -> None:
        """Where a terminal has room for one wire and several want it, lead a tail from it to a splice."""
        joints = set(self._joints())
        wires = [wire for wire in self.wires if wire.name in self.unfinished]
        wanted = Counter(point for wire in wires for point in (wire.start, wire.end))
        for point in [point for point, count in wanted.items() if count > 1 and point not in joints | {"frame"}]:
            meeting = [wire for wire in wires if point in (wire.start, wire.end)]
            first, cable = meeting[0], self.cable(meeting[0].name)
            splice = f"{point} splice"
            self.splice(splice, splice, cable.circuit, cable.zone)
            for wire in meeting:
                self._move(wire.name, point, splice)
            self.wire(
                f"{point} tail",
                f"{point} to its splice",
                cable.circuit,
                cable.zone,
                (point, splice),
                self.margin_m("tail_m"),
                guard=first.guard,
                part_of_m=first.part_of_m,
                together=first.together,
                loads=tuple(dict.fromkeys(load for wire in meeting for load in self.cable(wire.name).loads)),
            )
            self.finish(f"{point} tail")
            wires = [wire for wire in self.wires if wire.name in self.unfinished]

    def _move(self, wire: str, old: str, new: str) -> None:
        """Let an end of a wire lead to another point."""
        for index, laid in enumerate(self.wires):
            if laid.name == wire:
                ends = tuple(new if end == old else end for end in (laid.start, laid.end))
                self.wires[index] = replace(laid, start=ends[0], end=ends[1])
                self.places[wire] = replace(self.cable(wire), terminals=ends)

    def lug(self, wire: str, end: str, *, on: str = "", quantity: float = 1) -> None:
        """Put a lug on one end of a wire, on a chosen part's stud or one the job names."""
        cable = self.cable(wire)
        name = self.place(
            f"{wire} lug at {end}",
            "lug",
            f"lug on {cable.title}, {end} end",
            cable.circuit,
            cable.zone,
            quantity,
            end=end,
        )
        self.link("crimped on", name, wire)
        if on:
            self.link("on stud", name, on)
        self._shrink(name, wire, quantity)

    def _shrink(self, over: str, wire: str, quantity: float) -> None:
        """Cover the crimps of a wire."""
        cable, pieces = self.cable(wire), quantity * SLEEVE_STICKS
        title = f"heat-shrink over {over}"
        self.place(f"{over} sleeve", "sleeve", title, cable.circuit, cable.zone, pieces, ends=cable.terminals)
        self.link("shrinks over", f"{over} sleeve", wire)

    def tail_lugs(self, name: str, title: str, circuit: str, quantity: float, *, end: str) -> str:
        """Place lugs that go on tails which are no wire of the loom."""
        return self.place(name, "lug", title, circuit, "frame", quantity, end=end)

    def tap_fuse(self, name: str, circuit: str, *, at: str = "plus post") -> str:
        """Place a DC tap fuse, its holder, and the short stub to it, which no fuse guards.

        at  point the stub starts from, on a stud: the post of the taps, "controller plus" or "shunt in"
        """
        fuse = self.in_line(f"{name} fuse", "tap_fuse", f"tap fuse of the {name}", circuit, "frame")
        holder = self.place(f"{name} fuse holder", "fuse_holder", f"holder of the {name} fuse", circuit, "frame")
        self.link("takes fuse", holder, fuse)
        stub = self.wire(
            f"{name} stub",
            f"{at} to the {name} fuse",
            circuit,
            "frame",
            (at, f"{fuse} in"),
            self.runs.tap_stub,
            part_of_m=self.runs.tap_stub,
            together=self.margins.pair_wires,
        )
        self.link("relieves", fuse, stub)
        stud = at.removesuffix(" plus").removesuffix(" in")
        self.lug(stub, stud, on=stud if stud in self.places else "")
        self.link("takes wire", holder, stub)
        return fuse

    def cable(self, wire: str) -> Place:
        """Find the cable place of a wire."""
        return self.places[wire]

    def item(self, kind: str) -> Item | None:
        """Find the donor's item of a kind."""
        return next((item for item in self.job.donor.items if item.kind == kind), None)

    def done(self) -> Loom:
        """Close the loom: splice what meets at one terminal, and finish the thin wires."""
        self._splice_shared()
        joints = self._joints()
        holders = self._holder_points()
        for wire in self.unfinished:
            self._finish(wire, joints, holders)
        self._plug_on()
        bridges = (*part_bridges(self.job, self.places, self.wires), *self.bridges)
        places, wires, links = tuple(self.places.values()), tuple(self.wires), tuple(self.links)
        return Loom(self.key_at, places, wires, links, bridges, self.paired)
