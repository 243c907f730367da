"""What a duty says of its place in words, and which job key each word comes from."""

from bom.duties.circuits import Facts
from bom.duties.needs_of_wires import DROP
from bom.loom.low_volt import RAIL_METER
from bom.loom.model import Place
from bom.loom.relay_names import RELAY_COIL, opening_relays, opens_its_relay
from bom.loom.returns import is_wired
from bom.loom.strings import STRINGS
from bom.loom.tails import shells_on_the_frame
from bom.physics.isolation import is_above_low_voltage
from bom.trace import Origin

# Words of a place that the job says: word -> key; those of the place's own load -> key of the load.
WORD_KEYS = {
    "stop by": "donor.items.relay",
    "earth": "donor.earth",
    "key at": "wishes.key",
    "buffer": "wishes.buffer_battery",
    "isolator": "wishes.isolator",
    "contactor": "wishes.contactor",
    "meter": "wishes.meter",
    "chemistry": "pack.chemistry",
    "bus load known": "controller.standby",
    "precharge switched": "wishes.precharge_switched",
}
# Families whose rules ask a word that the whole bike shares; other words are a place's own.
ASKED_OF = {
    "stop by": ("stop_switch", "cap_switch", "key_switch"),
    "contact": ("relay",),
    "shells": ("converter",),
    "lamp return": ("converter",),
    "earth": ("converter", "flasher", "lamp"),
    "key at": ("converter",),
    "buffer": ("converter", "closer"),
    "isolator": ("isolator",),
    "contactor": ("isolator",),
    "meter": ("meter",),
    "chemistry": ("charger",),
    "bus load known": ("closer",),
    "precharge switched": ("precharge_resistor",),
}
LOAD_KEYS = {"purpose": "purpose", "base": "base", "technology": "kind"}


def told(place: Place) -> dict[str, Origin]:
    """Tell which job key each word of a place comes from; others are the loom's own."""
    origins = {name: Origin("job", key) for name, key in WORD_KEYS.items()}
    origins |= {name: Origin("job", f"loads.{key}", place.load) for name, key in LOAD_KEYS.items() if place.load}
    if place.name == RAIL_METER:
        origins["meter"] = Origin("job", "wishes.rail_meter")
    if place.family == "bar_switch":
        # By its place: a switch that does not stay has no item there, and its kind is asked of the bought one.
        origins["switch"] = Origin("job", "donor.items.kind", place.name.removeprefix("switch "))
    return origins


def asked(place: Place, facts: Facts) -> dict[str, str]:
    """Give the words that the rules of a place's family ask, so that no other word sets like places apart."""
    words = words_of(place, facts)
    return {word: words[word] for word in words if place.family in ASKED_OF.get(word, (place.family,))}


def words_of(place: Place, facts: Facts) -> dict[str, str]:
    """Give all that is said of a place in words."""
    job = facts.job
    words = {
        "stop by": "relay" if place.circuit == RELAY_COIL else "chain",
        "contact": "opens" if place.name in opening_relays(job.donor.items) else "makes",
        "lamp return": "wire" if is_wired(job) else "frame",
        "shells": "frame" if shells_on_the_frame(job, job.loads) else "holders",
        "earth": job.donor.earth,
        "key at": facts.key_at,
        "connector": "joint" if place.circuit == "phase" else "plug",
        "pole": _pole(place, facts),
        "buffer": "yes" if job.wishes.buffer_battery else "no",
        "isolator": job.wishes.isolator,
        "contactor": "yes" if job.wishes.contactor else "no",
        "meter": "volts" if place.name == RAIL_METER else job.wishes.meter,
        "chemistry": job.pack.chemistry,
        "precharge switched": "yes" if job.wishes.precharge_switched else "no",
        "bus load known": "yes" if "standby" in job.controller.model_fields_set else "no",
    }
    load = next((load for load in job.loads if load.name == place.load), None)
    if load is not None:
        words |= {"purpose": load.purpose, "base": load.base, "technology": load.kind}
    if place.family == "bar_switch":
        item = next(item for item in job.donor.items if place.name == f"switch {item.name}")  # kept or not
        words |= {"switch": item.kind, "brakes by": "opening" if opens_its_relay(item) else "closing"}
    if place.family == "label":
        words["label"] = place.name.removesuffix(" label")
    return words


def _pole(place: Place, facts: Facts) -> str:
    """Tell the pole of a wire, or of the sleeve over its lug, by the points it joins; motor leads have none.

    Above 60 V DC both heavy leads are orange, so that their sleeves alone tell them apart.
    """
    if place.family not in ("cable", "sleeve") or place.circuit == "phase" or not place.terminals:
        return ""
    if place.circuit not in DROP:
        low = "12 V minus" if {"12 V rail minus", "frame"} & set(place.terminals) else "12 V plus"
        return low if place.family == "cable" else "12 V sleeve"
    # The shunt lies in the return, so that both its sense wires are at the pack's minus.
    returns = place.name.startswith(("return to", "sense ")) or "minus post" in place.terminals
    pole = "minus" if returns else "plus"
    if place.family == "sleeve":
        return f"{pole} sleeve"
    if place.circuit not in ("traction", STRINGS):
        return pole
    return "heavy" if is_above_low_voltage(voltage_v=facts.pack.highest_bus_v.high) else f"heavy {pole}"
