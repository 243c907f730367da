"""Where what arrived stands: at its place whatever was chosen there, and which places are wanted then."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.build import Build
from bom.choose.filled import Aside, Filled
from bom.choose.needless import Idle, may_be_needless, without
from bom.loom.model import Loom
from bom.read.catalogue import Catalogue

RECEIVED = "received"


@dataclass(frozen=True)
class Stands:
    """What stands where, after the parcel is unpacked.

    loom    with the places that are wanted now
    aside   parts that came, or were ordered, for a place that is not wanted
    wanted  places that are wanted now and were not when ordered, and nothing stands there: what decides each
    """

    loom: Loom
    filled: Mapping[str, Filled]
    aside: tuple[Aside, ...]
    wanted: Mapping[str, Idle]


def with_received(ordered: Build, whole: Loom, catalogue: Catalogue) -> Stands:
    """Put each received part at its place, and decide anew which places are wanted where a received part decides."""
    places = {place.name: place for place in whole.places}
    filled, aside = dict(ordered.filled), []
    for entry in ordered.facts.job.received:
        place = places.get(entry.place)
        if place is None:
            why = f"this bike has no such place with the key at {ordered.facts.key_at}"
            aside.append(Aside(entry.place, entry.part, RECEIVED, why))
        else:
            table = catalogue.families[place.family]
            filled[place.name] = Filled(place, table.take([table.index(entry.part)]), RECEIVED)
    idle = _idle(ordered, whole, filled)
    aside += [
        Aside(name, filled[name].part_id, filled[name].origin, why) for name, why in idle.items() if name in filled
    ]
    stand = {name: entry for name, entry in filled.items() if name not in idle}
    known = {place.name for place in ordered.loom.places}
    wanted = {
        name: decides
        for name, decides in may_be_needless(whole).items()
        if name not in idle and name not in stand and name not in known
    }
    return Stands(without(whole, idle), stand, tuple(aside), wanted)


def _idle(ordered: Build, whole: Loom, filled: Mapping[str, Filled]) -> dict[str, str]:
    """Name the places that are not wanted, and why: as ordered, unless the part that decides has arrived."""
    pins, ordered_places = ordered.facts.job.pins, {place.name for place in ordered.loom.places}
    out = {}
    for name, idle in may_be_needless(whole).items():
        if name in pins or whole.place(name).keep == "yes":
            continue
        decider = filled.get(idle.decider)
        decides_anew = decider is not None and decider.origin == RECEIVED
        if decider is not None and idle.of(decider.part)[0] and (decides_anew or name not in ordered_places):
            out[name] = f"not wanted: the {idle.decider} that stands {idle.told}"
        elif not decides_anew and name not in ordered_places:
            out[name] = f"not wanted: nothing stands as {idle.decider}"
    return out
