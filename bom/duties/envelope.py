"""The duty of every place of a loom, from the job alone; it names no part."""

from collections import Counter
from collections.abc import Mapping
from functools import partial
from math import isfinite

from bom.duties.after_trip import after_trip_ah
from bom.duties.budget import side_watts
from bom.duties.circuit_traces import idle
from bom.duties.circuits import (
    Facts,
    Needs,
    amps,
    bus_capacitance,
    carry,
    circuit_needs,
    given_amps,
    rail_ends,
    rush_a,
    supply_amps,
)
from bom.duties.load_traces import each_watts, load_figure, loads_together, one_shell
from bom.duties.model import Duty
from bom.duties.rail_clamp import rail_clamp
from bom.duties.strings import string_needs
from bom.loom.builder import BUS_SENSE, PILOT
from bom.loom.lengths import length_figure
from bom.loom.low_volt import RAIL_METER, circuit_of
from bom.loom.model import Loom, Place, Wire
from bom.loom.relay_names import RELAY_COIL, opening_relays, opens_its_relay
from bom.loom.returns import is_wired
from bom.loom.strings import STRINGS
from bom.loom.tails import shells_on_the_frame
from bom.loom.taps import RAIL_CLAMP
from bom.loom.traction import FIRST_CLOSING
from bom.physics.isolation import is_above_low_voltage
from bom.read.families import BY_NAME
from bom.read.job import Load
from bom.span import Span
from bom.trace import Origin, step

DROP = {
    "precharge": "drop_tap_fraction",
    "traction": "drop_pack_fraction",
    STRINGS: "drop_pack_fraction",
    "converter input": "drop_tap_fraction",
    "key input": "drop_tap_fraction",
    "meter": "drop_tap_fraction",
    "charging": "drop_tap_fraction",
    BUS_SENSE: "drop_tap_fraction",
    PILOT: "drop_tap_fraction",
}

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


def envelope(loom: Loom, facts: Facts, known: Mapping[str, Duty] | None = None) -> Mapping[str, Duty]:
    """Give the duty of each place by its name; that of places of which it is known already stands."""
    stands = known or {}
    circuits = _circuits(facts)
    wires = {wire.name: wire for wire in loom.wires}
    return {
        place.name: stands[place.name]
        if place.name in stands
        else Duty.of(_needs(place, wires.get(place.name), circuits, loom, facts), _asked(place, facts))
        for place in loom.places
    }


def own_duty(loom: Loom, facts: Facts, name: str) -> Duty:
    """Give the duty of one place, shared with no other: places that ask the same may have it from elsewhere."""
    place = loom.place(name)
    wire = next((wire for wire in loom.wires if wire.name == name), None)
    return Duty(_needs(place, wire, _circuits(facts), loom, facts), _asked(place, facts), _told(place))


def _circuits(facts: Facts) -> Mapping[str, Needs]:
    """Give the duties of each circuit, strings in parallel among them."""
    circuits = circuit_needs(facts)
    return {**circuits, STRINGS: string_needs(facts, circuits["traction"])}


def _told(place: Place) -> dict[str, Origin]:
    """Tell which job key each word of a place comes from; others are the loom's own."""
    told = {name: Origin("job", key) for name, key in WORD_KEYS.items()}
    told |= {name: Origin("job", f"loads.{key}", place.load) for name, key in LOAD_KEYS.items() if place.load}
    if place.name == RAIL_METER:
        told["meter"] = Origin("job", "wishes.rail_meter")
    if place.family == "bar_switch":
        # By its place: a switch that does not stay has no item there, and its kind is asked of the bought one.
        told["switch"] = Origin("job", "donor.items.kind", place.name.removeprefix("switch "))
    return told


def _needs(place: Place, wire: Wire | None, circuits: Mapping[str, Needs], loom: Loom, facts: Facts) -> Needs:
    needs = dict(circuits[place.circuit])
    needs["ambient_c"] = _ambient(place.zone, facts)
    if place.loads:
        because = f"{', '.join(place.loads)} at {facts.budget.rail_v:g} V"
        traced = partial(loads_together, facts, place.loads)
        needs |= carry(amps(facts.budget.amps(place.loads), because, traced))
    if place.name in facts.counted.solved_a:
        solved_a, state = facts.counted.solved_a[place.name]
        needs["carry_a"] = amps(solved_a, f"solved: {state}", Origin("solved state", state))
    if wire is not None:
        needs.update(_wire(place, wire, needs, facts))
    needs.update(_stud(place, facts))
    needs.update(_weather(place, facts))
    special = SPECIAL.get(place.family)
    if special:
        needs.update(special(place, loom, facts))
    return needs


def _weather(place: Place, facts: Facts) -> Needs:
    """Ask the water digit of a zone of what has an IP code; a holder used at the first closing alone rides nowhere."""
    margin = f"ip_water_{place.zone.replace(' ', '_')}"
    asked = facts.margins.of(margin, "", f"splash reaches it, {place.zone}")
    coded = any(column.name == "ip_code" for column in BY_NAME[place.family].columns)
    return {"water_x": asked} if coded and asked.low and place.name != FIRST_CLOSING else {}


def _ambient(zone: str, facts: Facts) -> Span:
    key = zone.replace(" ", "_")
    value: float = getattr(facts.job.ambient, key)
    return Span.given(value, "temperature", f"hottest air, {zone}", f"ambient.{key}")


def _wire(place: Place, wire: Wire, needs: Needs, facts: Facts) -> Needs:
    margins = facts.margins
    out = {
        "length_m": length_figure(wire.length_m, "run as given, one way", wire.name),
        "together": _counted(float(wire.together), "", "loaded wires lying together", wire.name),
    }
    if not wire.guard and wire.name.endswith(" stub"):
        out["least_area_mm2"] = margins.of("stub_mm2", "area", "least copper of a wire that no fuse guards")
    if place.circuit == "phase" or "carry_a" not in needs:
        return out
    allowed = margins.of(DROP.get(place.circuit, "drop_lamp_fraction"))
    fraction = allowed.low
    pack_side = place.circuit in DROP
    supply = facts.pack.lowest_rest_v.low if pack_side else margins.rail_volts
    share = wire.length_m / wire.part_of_m
    out["drop_v"] = Span.of(
        fraction * supply * share,
        "voltage",
        f"{fraction:.0%} of {supply:g} V over {wire.part_of_m:g} m, this wire's share",
        lambda: step(
            "p * U * L / L_all",
            p=allowed,
            U=facts.pack.lowest_rest_v if pack_side else margins.of("rail_volts", "voltage"),
            L=out["length_m"],
            L_all=length_figure(wire.part_of_m, "there and back", wire.name),
        ),
    )
    return out


def _counted(value: float, dimension: str, because: str, name: str) -> Span:
    """Give a figure that the loom was laid out with, or that was counted in it."""
    return Span.of(value, dimension, because, Origin("loom", name))


def _buffer(place: Place, loom: Loom, facts: Facts) -> Needs:
    return {"light_ah": after_trip_ah(facts)}


def _stud(place: Place, facts: Facts) -> Needs:
    studs = {"pack": facts.job.pack.stud, "controller": facts.job.controller.stud, "motor": facts.job.motor.stud}
    studs["frame"] = int(facts.margins.frame_bolt_m)
    if place.end not in studs:
        return {}
    because = f"{place.end} terminal, M{studs[place.end]}"
    if place.end == "frame":
        return {"stud_m": Span.of(float(studs["frame"]), "", because, Origin("margin", "frame_bolt_m", unit="mm"))}
    return {"stud_m": Span.given(float(studs[place.end]), "", because, f"{place.end}.stud")}


def _asked(place: Place, facts: Facts) -> dict[str, str]:
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


def _converter(place: Place, loom: Loom, facts: Facts) -> Needs:
    low, high = rail_ends(facts.margins)
    return {
        "output_a": supply_amps(facts),
        "output_peak_a": rush_a(facts),
        "rail_low_v": low,
        "rail_high_v": high,
    }


def _precharge(place: Place, loom: Loom, facts: Facts) -> Needs:
    return {
        "capacitance_f": bus_capacitance(facts),
        "precharge_s": Span.given(
            facts.job.wishes.precharge_time, "time", "time the timer allows", "wishes.precharge_time"
        ),
        "bus_load_w": idle(facts),
    }


def _meter(place: Place, loom: Loom, facts: Facts) -> Needs:
    low, high = rail_ends(facts.margins)
    if place.name == RAIL_METER:
        times = facts.margins.of("rail_meter_scale")
        scale = high.scaled(times.low, f"{times.low:g} x {high}", "X * k", k=times)
        return {"meter_v": high, "meter_low_v": low, "rail_low_v": low, "rail_high_v": high, "scale_v": scale}
    peak = facts.job.controller.battery_peak
    return {
        "meter_v": facts.pack.highest_bus_v,
        "meter_low_v": facts.pack.lowest_sag_v,
        "rail_low_v": low,
        "rail_high_v": high,
        "peak_a": given_amps(peak, "controller's peak battery amps", "controller.battery_peak"),
    }


def _charger(place: Place, loom: Loom, facts: Facts) -> Needs:
    limit, key = facts.job.pack.bms.charge, "pack.bms.charge"
    wish = given_amps(facts.job.wishes.charge_current, "charging amps wanted", "wishes.charge_current")
    if limit is not None:
        allowed = given_amps(limit, "charge limit of the battery management", key) if isfinite(limit) else wish
    else:
        because, datum = "charge limit not given", "the pack's charge limit"
        allowed = Span(0.0, wish.high, "current", because, datum, lambda: step("0 to I_wish", I_wish=wish))
    return {
        "charge_end_v": facts.pack.full_charge_v,
        "charge_limit_a": allowed,
        "charge_wish_a": wish,
    }


def _flasher(place: Place, loom: Loom, facts: Facts) -> Needs:
    return {"flasher_w": side_watts(facts.job)}


def _taken(place: Place, loom: Loom, kind: str) -> int:
    """Count what a holder, plug or splice takes; a load's tails are one place, shared by its sides."""
    takers = Counter(link.second for link in loom.links if link.kind == kind)
    taken = [loom.place(link.second) for link in loom.links if link.kind == kind and link.first == place.name]
    return sum(max(int(each.quantity) // takers[each.name], 1) if each.family == "tail" else 1 for each in taken)


def _fuse_box(place: Place, loom: Loom, facts: Facts) -> Needs:
    count = _taken(place, loom, "takes fuse")
    return {"ways": _counted(float(count), "", "one way for each blade fuse", place.name)}


def _signal_connector(place: Place, loom: Loom, facts: Facts) -> Needs:
    count = _taken(place, loom, "takes wire")
    ways = _counted(float(count + place.leads), "", "one contact for each wire", place.name)
    return {"ways": ways, **_leads(place, loom, facts)}


def _leads(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Give the copper of the control leads that a fitting takes, from the thinnest to the thickest."""
    fitting = loom.leads.fitting_of.get(place.name)
    if fitting is None:
        return {}
    wires = sorted((device.wire, device.name) for device in facts.job.devices if device.name in fitting.devices)
    least, most = (
        Span.given(area, "area", f"leads of the {name}", "devices.wire", name) for area, name in (wires[0], wires[-1])
    )
    return {"lead_least_mm2": least, "lead_most_mm2": most}


def _bar_switch(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask a contact for each circuit, where it feeds loads of several."""
    item = next(item for item in facts.job.donor.items if place.name == f"switch {item.name}")  # kept or not
    behind = list(dict.fromkeys(circuit_of(load) for load in facts.job.loads if load.name in item.feeds))
    if len(behind) < 2:
        return {}
    because = f"it feeds the {', the '.join(behind)}"
    return {"ways": Span.of(float(len(behind)), "", because, Origin("job", "donor.items.feeds", item.name))}


def _lamp(place: Place, loom: Loom, facts: Facts) -> Needs:
    load = next(load for load in facts.job.loads if load.name == place.load)
    entry, margins = facts.budget.loads[load.name], facts.margins
    number = Span.given(float(load.count), "", "lamps of one load that burn together", "loads.count", load.name)
    each = partial(step, "I / n", I=load_figure(entry, margins), n=number)
    return {
        **_lights(load, facts),
        "carry_a": amps(entry.amps / load.count, "amps of the load list", each),
        "burning": number,
    }


def _lights(load: Load, facts: Facts) -> Needs:
    """Give the watts of a lamp, and of the lesser of two lights that share it: a sheet names the greater first."""
    lights = [load, *(light for light in facts.job.loads if light.same_lamp_as == load.name)]
    watts = sorted((_light_w(light, facts) for light in lights), key=lambda light: -light.high)
    return dict(zip(("lamp_w", "second_w"), watts, strict=False))


def _light_w(light: Load, facts: Facts) -> Span:
    if light.power is not None:
        return Span.given(light.power, "power", "watts of the load list", "loads.power", light.name)
    entry = facts.budget.loads[light.name]
    return Span.of(entry.each_w, "power", "watts of the load list", each_watts(entry, facts.margins).trace)


def _tail(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask the amps of one shell, with every light that shares its lamp."""
    names = [load.name for load in facts.job.loads if place.load in (load.name, load.same_lamp_as)]
    each = sum(facts.budget.loads[name].amps / facts.budget.loads[name].load.count for name in names)
    because = f"one shell of the {place.load} at {facts.budget.rail_v:g} V"
    return {
        "carry_a": amps(each, because, partial(one_shell, facts, names)),
        "reach_m": facts.margins.of("tail_m", "length", "from the shell to its splice"),
    }


def _clamp(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask of a clamp that it stays quiet on the rail, of a telltale's diode that it blocks and carries."""
    _, high = rail_ends(facts.margins)
    if place.name == RAIL_CLAMP:
        return rail_clamp(facts)
    if not place.load:
        return {"clamps_v": high}
    entry = facts.budget.loads[place.load]
    traced = partial(loads_together, facts, [place.load])
    return {"blocks_v": high, "carry_a": amps(entry.amps, f"the {place.load} at {facts.budget.rail_v:g} V", traced)}


def _coil(place: Place, loom: Loom, facts: Facts) -> Needs:
    low, high = rail_ends(facts.margins)
    return {"coil_low_v": low, "coil_high_v": high}


def _closer(place: Place, loom: Loom, facts: Facts) -> Needs:
    coil = _coil(place, loom, facts)
    return {**_precharge(place, loom, facts), "rail_low_v": coil["coil_low_v"], "rail_high_v": coil["coil_high_v"]}


def _plug(place: Place, loom: Loom, facts: Facts) -> Needs:
    if place.circuit == "phase":
        return {"poles": _counted(3.0, "", "three motor leads", place.name)}
    return {"poles": _counted(2.0, "", "plus and minus of the pack", place.name)}


def _sleeve(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask a width of sleeving only; heat-shrink is judged with its wire."""
    if place.circuit != "labels":
        return {}
    return {"width_mm": Span.fixed(8.0, "", "a pair of thin leads, common practice", "mm")}


def _splice(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Count the wires, and the leads that parts themselves bring."""
    count = _taken(place, loom, "takes wire")
    ways = _counted(float(count + place.leads), "", "one way for each wire that meets there", place.name)
    return {"ways": ways, **_leads(place, loom, facts)}


def _lug(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask an area of a lug that goes on a tail which is no wire of the loom."""
    tail = facts.job.motor.lead_area
    if place.name == "motor tail lugs" and tail is not None:
        return {"tail_mm2": Span.given(tail, "area", "copper of the motor's tails", "motor.lead_area")}
    return {}


def _post(place: Place, loom: Loom, facts: Facts) -> Needs:
    count = sum(1 for link in loom.links if link.kind == "on stud" and link.second == place.name)
    return {"ways": _counted(float(count), "", "one lug for each wire that meets there", place.name)}


SPECIAL = {
    "closer": _closer,
    "contactor": _coil,
    "relay": _coil,
    "power_connector": _plug,
    "post": _post,
    "splice": _splice,
    "tail": _tail,
    "clamp": _clamp,
    "lug": _lug,
    "sleeve": _sleeve,
    "converter": _converter,
    "precharge_resistor": _precharge,
    "meter": _meter,
    "charger": _charger,
    "flasher": _flasher,
    "bar_switch": _bar_switch,
    "fuse_box": _fuse_box,
    "signal_connector": _signal_connector,
    "end_cap": _leads,
    "buffer_battery": _buffer,
    "lamp": _lamp,
    "horn": _lamp,
}
