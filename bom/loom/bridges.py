"""Where current runs through parts, from their places alone; lamps and their switches are added branch by branch."""

from collections.abc import Iterator, Mapping, Sequence

from bom.loom.model import Bridge, Place, Wire
from bom.loom.relay_names import STOP_RELAY, opening_relays
from bom.read.job import JobFile

# Parts that current runs through, in at one point and out at another: what they are to the circuit.
IN_LINE: Mapping[str, str] = {
    "main_fuse": "fuse",
    "tap_fuse": "fuse",
    "blade_fuse": "fuse",
    "isolator": "plug",
    "shunt": "shunt",
    "contactor": "contact",
    "relay": "contact",
    "precharge_resistor": "resistor",
    "key_switch": "contact",
    "stop_switch": "contact",
    "cap_switch": "contact",
}
NOT, NEVER = "not ", "never"  # gates: of a contact that its coil opens, of one that nothing closes
GATES: Mapping[str, str] = {
    "isolator": "isolator",
    "key_switch": "key",
    "stop_switch": "stop",
    "cap_switch": "charge cap",
}
COIL_FAMILIES = ("contactor", "relay")
CLOSER = "contactor closer"
CONVERTER_ENABLE = "converter enable"
# What the closer makes: the precharge relay first, then, with the bus full, the contactor alone.
CLOSER_FILLS, CLOSER_CLOSES = "closer fills", "closer closes"


def part_bridges(job: JobFile, places: Mapping[str, Place], wires: Sequence[Wire]) -> tuple[Bridge, ...]:
    """Give the way of current through every part of the loom that the loom's wires reach."""
    reached = {point for wire in wires for point in (wire.start, wire.end)}
    bridges = [*_in_line(job, places), *_pack_side(job, places), *_control(job, places), *_low_volt(places)]
    bridges += [_enable(wire) for wire in wires if wire.end == CONVERTER_ENABLE]
    return tuple(bridge for bridge in bridges if bridge.start in reached and bridge.end in reached)


def _in_line(job: JobFile, places: Mapping[str, Place]) -> Iterator[Bridge]:
    opening = opening_relays(job.donor.items)
    for place in places.values():
        kind = IN_LINE.get(place.family, "")
        if kind and len(place.terminals) == 2:
            gate = place.name if place.family in COIL_FAMILIES else GATES.get(place.family, "")
            gate = f"{NOT}{gate}" if gate in opening else gate
            if STOP_RELAY in places:
                gate = NEVER if gate == "stop" else gate
            yield Bridge(place.name, kind, *place.terminals, place.name, gate)


def _pack_side(job: JobFile, places: Mapping[str, Place]) -> Iterator[Bridge]:
    yield Bridge("pack", "pack", "pack plus", "pack minus")
    for pole, start, end in (("plus", "pack plug in", "pack plug out"), ("minus", "plug minus in", "plug minus out")):
        yield Bridge(f"pack plug {pole}", "plug", start, end, "pack plug", "pack plug")
    yield Bridge("controller", "controller", "controller plus", "controller minus")
    yield Bridge("meter", "meter", "meter plus", "meter minus", "meter")
    yield Bridge("pilot lamp", "pilot", "pilot lamp plus", "pilot lamp minus", "pilot lamp")
    yield Bridge("meter sense", "sense", "meter sense plus", "meter sense minus", "meter")
    yield Bridge("bus sense", "sense", f"{CLOSER} sense plus", f"{CLOSER} sense minus", CLOSER)
    yield Bridge("pack sense", "sense", f"{CLOSER} pack plus", f"{CLOSER} sense minus", CLOSER)
    yield Bridge("charger", "charger", "charge port plus", "charge port minus", "charger")
    back = "key input minus" if job.controller.key_return == "own terminal" else "controller minus"
    yield Bridge("key input", "key input", "controller key input", back)


def _control(job: JobFile, places: Mapping[str, Place]) -> Iterator[Bridge]:
    for place in places.values():
        if place.family in COIL_FAMILIES:
            ends = (f"{place.name} coil plus", f"{place.name} coil minus")
            yield Bridge(f"{place.name} coil", "coil", *ends, place.name)
    yield Bridge(CLOSER, "closer", f"{CLOSER} in", f"{CLOSER} minus", CLOSER)
    out = f"{CLOSER} out"
    yield Bridge("closer to the contactor", "contact", f"{CLOSER} in", out, CLOSER, CLOSER_CLOSES)
    yield Bridge("closer to the precharge relay", "contact", f"{CLOSER} in", f"{out} precharge", CLOSER, CLOSER_FILLS)


def _enable(wire: Wire) -> Bridge:
    """Lead an enable back to the side of the converter that it counts from: that of what feeds it."""
    back = "12 V minus" if wire.start.startswith("key switch out") else "converter minus"
    return Bridge("converter's enable", "enable", CONVERTER_ENABLE, back, "converter")


def _low_volt(places: Mapping[str, Place]) -> Iterator[Bridge]:
    yield Bridge("buffer battery", "buffer", "buffer plus", "buffer minus", "buffer battery")
    yield Bridge("meter on 12 V", "meter", "meter 12 V plus", "meter 12 V minus", "meter")
    yield Bridge("rail meter", "meter", "rail meter plus", "rail meter minus", "rail meter")
