"""What converter, charger, meter, buffer battery, coils, their clamps and the filling of the bus are asked."""

from functools import partial
from math import isfinite

from bom.duties.after_trip import after_trip_ah
from bom.duties.circuit_traces import idle
from bom.duties.circuits import (
    Facts,
    Needs,
    amps,
    bus_capacitance,
    given_amps,
    rail_ends,
    rush_a,
    supply_amps,
)
from bom.duties.load_traces import loads_together
from bom.duties.rail_clamp import rail_clamp
from bom.loom.low_volt import RAIL_METER
from bom.loom.model import Loom, Place
from bom.loom.taps import RAIL_CLAMP
from bom.span import Span
from bom.trace import step


def _converter(place: Place, loom: Loom, facts: Facts) -> Needs:
    low, high = rail_ends(facts.margins)
    return {
        "output_a": supply_amps(facts),
        "output_peak_a": rush_a(facts),
        "rail_low_v": low,
        "rail_high_v": high,
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


def _buffer(place: Place, loom: Loom, facts: Facts) -> Needs:
    return {"light_ah": after_trip_ah(facts)}


def _precharge(place: Place, loom: Loom, facts: Facts) -> Needs:
    return {
        "capacitance_f": bus_capacitance(facts),
        "precharge_s": Span.given(
            facts.job.wishes.precharge_time, "time", "time the timer allows", "wishes.precharge_time"
        ),
        "bus_load_w": idle(facts),
    }


def _closer(place: Place, loom: Loom, facts: Facts) -> Needs:
    coil = _coil(place, loom, facts)
    return {**_precharge(place, loom, facts), "rail_low_v": coil["coil_low_v"], "rail_high_v": coil["coil_high_v"]}


def _coil(place: Place, loom: Loom, facts: Facts) -> Needs:
    low, high = rail_ends(facts.margins)
    return {"coil_low_v": low, "coil_high_v": high}


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


SUPPLY = {
    "converter": _converter,
    "charger": _charger,
    "meter": _meter,
    "buffer_battery": _buffer,
    "precharge_resistor": _precharge,
    "closer": _closer,
    "contactor": _coil,
    "relay": _coil,
    "clamp": _clamp,
}
