"""Places that the chosen parts make needless.

A coil's kick is taken once, by its own clamp or by ours; a timer needs no lead to the bus, a meter fed by the pack none
to the 12 V side.
"""

from collections.abc import Mapping
from dataclasses import replace

from bom.choose.filled import Filled
from bom.loom.low_volt import METER_FEED
from bom.loom.model import Loom
from bom.loom.taps import BUS_SENSE


def without_needless(loom: Loom, filled: Mapping[str, Filled]) -> tuple[Loom, dict[str, Filled]]:
    """Drop the clamp of every coil whose chosen part has its own, and leads the chosen closer or meter does not use."""
    needless = {
        link.first
        for link in loom.links
        if link.kind == "clamps" and link.second in filled and filled[link.second].part.word("suppressed")[0] == "yes"
    }
    needless |= {place.name for place in loom.places if place.circuit in _idle_circuits(filled)}
    wires = tuple(wire for wire in loom.wires if wire.name not in needless)
    places = tuple(place for place in loom.places if place.name not in needless)
    links = tuple(link for link in loom.links if not {link.first, link.second} & needless)
    kept = {name: entry for name, entry in filled.items() if name not in needless}
    return replace(loom, places=places, wires=wires, links=links), kept


def _idle_circuits(filled: Mapping[str, Filled]) -> set[str]:
    """Name the circuits that the chosen closer and meter have no use for."""
    idle = set()
    closer, meter = filled.get("contactor closer"), filled.get("meter")
    if closer and closer.part.word("senses_bus")[0] == "no":
        idle.add(BUS_SENSE)
    if meter and meter.part.word("supply_from")[0] == "measured volts":
        idle.add(METER_FEED)
    return idle
