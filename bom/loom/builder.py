"""Collects places, wires and links while a loom is laid out."""

from dataclasses import dataclass, field

from bom.loom.model import LINKS, Link, Loom, Place, Wire
from bom.margins import Margins
from bom.read.job import Item, JobFile

# A lug takes about 60 mm of heat-shrink, which is sold in sticks of 1.2 m (common practice).
SLEEVE_STICKS = 0.05


@dataclass
class Builder:
    """A loom in the making."""

    job: JobFile
    margins: Margins
    key_at: str
    places: list[Place] = field(default_factory=list)
    wires: list[Wire] = field(default_factory=list)
    links: list[Link] = field(default_factory=list)

    def place(
        self,
        name: str,
        family: str,
        title: str,
        circuit: str,
        zone: str,
        quantity: float = 1,
        terminals: tuple[str, ...] = (),
        load: str = "",
    ) -> str:
        """Add a place for a part to be bought and return its name."""
        self.places.append(Place(name, family, title, circuit, zone, quantity, terminals, load=load))
        return name

    def donor_place(
        self,
        item: Item,
        name: str,
        family: str,
        title: str,
        circuit: str,
        zone: str,
        quantity: float = 1,
        terminals: tuple[str, ...] = (),
        load: str = "",
    ) -> str:
        """Add a place where a part of the donor may stay and return its name."""
        self.places.append(Place(name, family, title, circuit, zone, quantity, terminals, item.name, item.keep, load))
        return name

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
        together: int,
        count: int = 1,
        item: Item | None = None,
        load: str = "",
    ) -> str:
        """Add a wire, the cable place of the same name, and the fuse that guards it."""
        self.wires.append(Wire(name, *ends, length_m, together, guard, part_of_m))
        if item:
            self.donor_place(item, name, "cable", title, circuit, zone, length_m * count, ends, load)
        else:
            self.place(name, "cable", title, circuit, zone, length_m * count, ends, load)
        if guard:
            self.link("guards", guard, name)
        return name

    def tap_fuse(self, name: str, circuit: str) -> str:
        """Place a DC tap fuse and its holder at the tap point; only the main fuse guards its short stub."""
        zone = "frame"
        fuse = self.place(
            f"{name} fuse", "tap_fuse", f"tap fuse of the {name}", circuit, zone, 1, (self.tap_point(), f"{name} tap")
        )
        holder = self.place(f"{name} fuse holder", "fuse_holder", f"holder of the {name} fuse", circuit, zone)
        self.link("takes fuse", holder, fuse)
        return fuse

    def crimps(self, wire: str, zone: str, quantity: float = 2) -> None:
        """Put crimp terminals on the ends of a thin wire."""
        cable = next(place for place in self.places if place.name == wire)
        name = self.place(f"{wire} terminals", "terminal", f"terminals on {cable.title}", cable.circuit, zone, quantity)
        self.link("crimped on", name, wire)

    def lug(self, wire: str, end: str, zone: str, *, on: str = "", quantity: float = 1) -> None:
        """Put a lug on one end of a heavy wire, on a chosen part's stud or one the job names."""
        cable = next(place for place in self.places if place.name == wire)
        name = self.place(
            f"{wire} lug at {end}", "lug", f"lug on {cable.title}, {end} end", cable.circuit, zone, quantity
        )
        self.link("crimped on", name, wire)
        if on:
            self.link("on stud", name, on)
        shrink = self.place(
            f"{name} sleeve", "sleeve", f"heat-shrink over {name}", cable.circuit, zone, quantity * SLEEVE_STICKS
        )
        self.link("shrinks over", shrink, wire)

    def item(self, kind: str) -> Item | None:
        """Find the donor's item of a kind."""
        return next((item for item in self.job.donor.items if item.kind == kind), None)

    def tap_point(self) -> str:
        """Name the point where taps leave: behind the last break by hand, so that it kills them too."""
        wishes = self.job.wishes
        if wishes.isolator != "none":
            return "isolator out"
        return "pack plug out" if wishes.pack_plug else "main fuse out"

    def minus_point(self) -> str:
        """Name the point where taps return: on the bike's side of the pack plug."""
        return "plug minus" if self.job.wishes.pack_plug else "pack minus"

    def done(self) -> Loom:
        """Close the loom."""
        return Loom(self.key_at, tuple(self.places), tuple(self.wires), tuple(self.links))
