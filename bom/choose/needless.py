"""Places that stand only where a certain other part wants them.

A coil's kick is taken once, by its own clamp or by ours; behind an isolated converter no clamp is wanted; a timer
needs no lead to the bus, a meter fed by the pack none to the 12 V side. The choice weighs such places with the part
that wants them. A clamp is spared only by what is known of that part: a seller's word drops none.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from bom.judge.compare import HEARSAY
from bom.loom.builder import BUS_SENSE
from bom.loom.low_volt import METER_FEED
from bom.loom.model import Loom
from bom.loom.taps import RAIL_CLAMP
from bom.parts import Parts


@dataclass(frozen=True)
class Idle:
    """When a place is not wanted: the part at `decider` has this word in this column.

    told     what the part then does or is
    if_not   what one does or is that wants the place
    known    the word must be more than hearsay
    """

    decider: str
    column: str
    word: str
    told: str
    if_not: str
    known: bool = False

    def of(self, parts: Parts) -> list[bool]:
        """Tell for each part that may decide whether it has no use for the place."""
        told = parts.words_of(self.column)
        return [
            word == self.word and not (self.known and evidence in HEARSAY)
            for word, evidence in zip(told.values, told.evidence, strict=True)
        ]


CIRCUITS = {
    BUS_SENSE: Idle("contactor closer", "senses_bus", "no", "does not sense the bus", "senses the bus"),
    METER_FEED: Idle("meter", "supply_from", "measured volts", "feeds on what it measures", "wants 12 V of its own"),
}


def may_be_needless(loom: Loom) -> Mapping[str, Idle]:
    """Name the places that may turn out not to be wanted, and what decides it."""
    clamps = {
        link.first: Idle(link.second, "suppressed", "yes", "has a suppressed coil", "has a bare coil", known=True)
        for link in loom.links
        if link.kind == "clamps"
    }
    if any(place.name == RAIL_CLAMP for place in loom.places):
        clamps[RAIL_CLAMP] = Idle("converter", "isolated", "yes", "is isolated", "is not isolated", known=True)
    return clamps | {place.name: CIRCUITS[place.circuit] for place in loom.places if place.circuit in CIRCUITS}


def without(loom: Loom, needless: Collection[str]) -> Loom:
    """Drop places with their wires and links."""
    return replace(
        loom,
        places=tuple(place for place in loom.places if place.name not in needless),
        wires=tuple(wire for wire in loom.wires if wire.name not in needless),
        links=tuple(link for link in loom.links if link.first not in needless and link.second not in needless),
    )
