"""Places that the chosen parts make needless.

A coil's kick is taken once, by its own clamp or by ours; a timer needs no lead to the bus.
"""

from collections.abc import Mapping
from dataclasses import replace

from bom.choose.filled import Filled
from bom.loom.model import Loom
from bom.loom.taps import BUS_SENSE


def without_needless(loom: Loom, filled: Mapping[str, Filled]) -> tuple[Loom, dict[str, Filled]]:
    """Drop the clamp of every coil whose chosen part has its own, and the bus leads of a closer that senses none."""
    needless = {
        link.first
        for link in loom.links
        if link.kind == "clamps" and link.second in filled and filled[link.second].part.word("suppressed")[0] == "yes"
    }
    closer = filled.get("contactor closer")
    if closer and closer.part.word("senses_bus")[0] == "no":
        needless |= {place.name for place in loom.places if place.circuit == BUS_SENSE}
    wires = tuple(wire for wire in loom.wires if wire.name not in needless)
    places = tuple(place for place in loom.places if place.name not in needless)
    links = tuple(link for link in loom.links if not {link.first, link.second} & needless)
    kept = {name: entry for name, entry in filled.items() if name not in needless}
    return replace(loom, places=places, wires=wires, links=links), kept
