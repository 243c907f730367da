"""The duty of every place of a loom, from the job alone; it names no part."""

from collections.abc import Mapping
from functools import partial

from bom.duties.circuits import Facts, Needs, amps, carry, circuit_needs
from bom.duties.load_traces import loads_together
from bom.duties.model import Duty
from bom.duties.needs_of_joints import JOINTS
from bom.duties.needs_of_lights import LIGHTS
from bom.duties.needs_of_supply import SUPPLY
from bom.duties.needs_of_wires import ambient, stud, weather, wire_needs
from bom.duties.place_words import asked, told
from bom.duties.strings import string_needs
from bom.loom.model import Loom, Place, Wire
from bom.loom.strings import STRINGS
from bom.trace import Origin

OF_FAMILY = {**JOINTS, **LIGHTS, **SUPPLY}


def envelope(loom: Loom, facts: Facts, known: Mapping[str, Duty] | None = None) -> Mapping[str, Duty]:
    """Give the duty of each place by its name; that of places of which it is known already stands."""
    stands = known or {}
    circuits = _circuits(facts)
    wires = {wire.name: wire for wire in loom.wires}
    return {
        place.name: stands[place.name]
        if place.name in stands
        else Duty.of(_needs(place, wires.get(place.name), circuits, loom, facts), asked(place, facts))
        for place in loom.places
    }


def own_duty(loom: Loom, facts: Facts, name: str) -> Duty:
    """Give the duty of one place, shared with no other: places that ask the same may have it from elsewhere."""
    place = loom.place(name)
    wire = next((wire for wire in loom.wires if wire.name == name), None)
    return Duty(_needs(place, wire, _circuits(facts), loom, facts), asked(place, facts), told(place))


def _circuits(facts: Facts) -> Mapping[str, Needs]:
    """Give the duties of each circuit, strings in parallel among them."""
    circuits = circuit_needs(facts)
    return {**circuits, STRINGS: string_needs(facts, circuits["traction"])}


def _needs(place: Place, wire: Wire | None, circuits: Mapping[str, Needs], loom: Loom, facts: Facts) -> Needs:
    needs = dict(circuits[place.circuit])
    needs["ambient_c"] = ambient(place.zone, facts)
    if place.loads:
        because = f"{', '.join(place.loads)} at {facts.budget.rail_v:g} V"
        traced = partial(loads_together, facts, place.loads)
        needs |= carry(amps(facts.budget.amps(place.loads), because, traced))
    if place.name in facts.counted.solved_a:
        solved_a, state = facts.counted.solved_a[place.name]
        needs["carry_a"] = amps(solved_a, f"solved: {state}", Origin("solved state", state))
    if wire is not None:
        needs.update(wire_needs(place, wire, needs, facts))
    needs.update(stud(place, facts))
    needs.update(weather(place, facts))
    special = OF_FAMILY.get(place.family)
    if special:
        needs.update(special(place, loom, facts))
    return needs
