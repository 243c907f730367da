"""What sits on the two ends of each wire: lug, crimp terminal, or the part that takes the bare wire."""

from collections.abc import Sequence
from dataclasses import dataclass

from bom.build import Build
from bom.choose.filled import NONE
from bom.loom.model import Link, Place, Wire

LUG_AT = " lug at "


def wire_ends(wire: Wire, build: Build) -> tuple[str, str]:
    """Say what sits on the end named `start` and on the end named `end`.

    A lug names its end, and a splice is a point of the loom. Plugs and holders are told by the words they share
    with an end; one that shares none, or as many with both, lies along the way. A single terminal goes on the
    end that is left.
    """
    lugs = _on(wire, build, lug=True)
    first = [name for name in lugs if wire.start.startswith(name.rsplit(LUG_AT, 1)[-1])]
    ends = {"first": first, "second": [name for name in lugs if name not in first]}
    takers: dict[str, list[str]] = {"first": [], "second": [], "along": []}
    for link in _links(wire, build, "takes wire"):
        points = build.loom.place(link.first).terminals
        exact = "first" if wire.start in points else "second" if wire.end in points else ""
        takers[exact or _side(link.first, wire, ends)].append(link.first)
    texts = {
        side: [*(_part(name, build) for name in ends[side]), *(f"into {name}" for name in takers[side])]
        for side in ends
    }
    for name in _on(wire, build, lug=False):
        single = build.loom.place(name).quantity == 1
        bare = [side for side in ends if not texts[side]]
        for side in bare[:1] if single and bare else [side for side in ends if not ends[side]]:
            texts[side].insert(0, _part(name, build))
    texts["second"] += [f"through {name}" for name in takers["along"]]
    return " ".join(texts["first"]) or "bare", " ".join(texts["second"]) or "bare"


@dataclass(frozen=True)
class CrimpRow:
    """A lug or terminal as the papers print it.

    number  of the wire; "–" for a tail that is no wire of the loom
    where   which end, or both
    sleeve  part id of what is shrunk over it, "–" for none
    """

    number: str
    where: str
    part: str
    name: str
    sleeve: str
    count: str


def crimp_rows(build: Build) -> list[CrimpRow]:
    """List lugs and terminals by wire; those on no wire of the loom last."""
    rows = []
    for number, wire in enumerate(build.loom.wires, start=1):
        for link in _links(wire, build, "crimped on"):
            place = build.loom.place(link.first)
            plain = "one end" if place.quantity == 1 else "both ends"
            where = place.name.rsplit(LUG_AT, 1)[-1] if LUG_AT in place.name else plain
            rows.append(_crimp(f"W{number:02d}", where, place, build))
    crimped = {link.first for link in build.loom.links if link.kind == "crimped on"}
    loose = [place for place in build.loom.places if place.family == "lug" and place.name not in crimped]
    return rows + [_crimp("–", place.title, place, build) for place in loose]


def _crimp(number: str, where: str, place: Place, build: Build) -> CrimpRow:
    entry, sleeve = build.filled.get(place.name), build.filled.get(f"{place.name} sleeve")
    part, name = (entry.part_id, entry.part.word("name")[0]) if entry else (NONE, "")
    return CrimpRow(number, where, part, name, sleeve.part_id if sleeve else "–", f"{place.quantity:g}")


def _links(wire: Wire, build: Build, kind: str) -> Sequence[Link]:
    return build.loom.links_to(kind, wire.name)


def _on(wire: Wire, build: Build, *, lug: bool) -> list[str]:
    return [link.first for link in _links(wire, build, "crimped on") if (LUG_AT in link.first) == lug]


def _side(taker: str, wire: Wire, ends: dict[str, list[str]]) -> str:
    """Tell which end goes into a part; never the one that has a lug when the other has none."""
    if bool(ends["first"]) != bool(ends["second"]):
        return "second" if ends["first"] else "first"
    words = set(taker.split())
    first, second = len(words & set(wire.start.split())), len(words & set(wire.end.split()))
    return "first" if first > second else "second" if second > first else "along"


def _part(place: str, build: Build) -> str:
    entry = build.filled.get(place)
    return entry.part_id if entry else f"{place}: {NONE}"
