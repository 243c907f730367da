"""What rushes in at closing: bus capacitors with and without precharge, cold filaments, coils."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import inf, isnan, nan

from bom import units
from bom.arrangement import PACK
from bom.circuit.bike import Bike
from bom.circuit.fault import Fault
from bom.duties.circuits import bus_capacitance
from bom.physics.inrush import capacitor_rush, coil_pull, filament_rush
from bom.physics.precharge import greatest_load_w, left_after_precharge_v, stored_energy_j, time_under_load_s

OVER = 5.0  # time constants after the peak: less than a twentieth of it is left, ringing or not


@dataclass(frozen=True)
class Rush:
    """One closing.

    what     what closes, onto what
    peak_a   A at the peak; NaN where not known
    time_s   s until the peak is over, or until the end is reached; inf: never, NaN: not known
    heat_j   J that contact, resistor, filament or coil take; NaN where not known
    because  how it was worked out
    datum    figure that would settle it, "" where known
    """

    what: str
    peak_a: float
    time_s: float
    heat_j: float
    because: str
    datum: str = ""


def rushes(bike: Bike, faults: tuple[Fault, ...]) -> tuple[Rush, ...]:
    """List every closing of a bike, bus first."""
    return (*_bus(bike, faults), *_taps(bike), *_filaments(bike), *_coils(bike))


def _bus(bike: Bike, faults: tuple[Fault, ...]) -> Iterator[Rush]:
    """Fill the bus: through the resistor, then the contactor onto what is left; and at once, for comparison."""
    facts = bike.view.facts
    volts, farads = facts.pack.full_charge_v.high, bus_capacitance(facts)
    short = next((f for f in faults if f.point == "controller plus" and f.to == "its return" and f.high_a > 0), None)
    if short is None:
        return
    ohm, runs = volts / short.high_a, facts.job.runs
    path_m = runs.pack_to_fuse + runs.fuse_to_contactor + runs.contactor_to_controller
    henries = path_m * facts.margins.pair_inductance_uh_per_m * 1e-6
    left = 1.0
    part = bike.view.parts.get("precharge resistor")
    if part is not None:
        yield _precharge(bike, float(part.number("resistance_ohm")[0]), volts)
        left = 1 - facts.margins.precharge_fraction
        yield _closing("contactor, after precharge", volts * left, ohm, farads.high, henries, farads.datum)
    yield _closing("contactor, without precharge", volts, ohm, farads.high, henries, farads.datum)


def _closing(what: str, volts: float, ohm: float, farads: float, henries: float, datum: str) -> Rush:
    rush = capacitor_rush(voltage_v=volts, resistance_ohm=ohm, capacitance_f=farads, inductance_h=henries)
    loop = f"{units.show(ohm, 'resistance')}{f' and {henries * 1e6:.2f} µH' if henries else ''}"
    because = f"{volts:.1f} V across {loop} onto {units.show(farads, 'capacitance')}"
    over_s = float(rush.peak_s) + OVER * float(rush.time_constant_s)
    return Rush(what, float(rush.peak_a), over_s, float(rush.heat_j), because, datum)


def _precharge(bike: Bike, ohm: float, volts: float) -> Rush:
    """Fill through the resistor while the controller idles on the bus."""
    facts = bike.view.facts
    farads, load, share = bus_capacitance(facts), facts.job.controller.standby, facts.margins.precharge_fraction
    what = "precharge relay" if facts.job.wishes.precharge_switched else "pack, through the precharge resistor"
    if isnan(ohm):
        return Rush(what, nan, nan, nan, "resistor not known", "the precharge resistor's ohms")
    at_rest = left_after_precharge_v(resistance_ohm=ohm, voltage_v=volts, load_w=load)
    never = isnan(at_rest) or at_rest < share * volts
    time_s = (
        inf
        if never
        else float(
            time_under_load_s(
                resistance_ohm=ohm, capacitance_f=farads.high, voltage_v=volts, load_w=load, fraction=share
            )
        )
    )
    most = float(greatest_load_w(resistance_ohm=ohm, voltage_v=volts, fraction=share))
    ends = "it stalls" if isnan(at_rest) else f"it ends at {float(at_rest):.1f} V"
    because = (
        f"{volts:.1f} V through {units.show(ohm, 'resistance')} onto {units.show(farads.high, 'capacitance')} "
        f"with {load:g} W on the bus: {ends}; {share:.0%} is reached with less than {most:.3g} W only"
    )
    heat = float(stored_energy_j(capacitance_f=farads.high, voltage_v=volts))
    return Rush(what, volts / ohm, time_s, heat, because, farads.datum)


def _taps(bike: Bike) -> Iterator[Rush]:
    """Close onto the converter's own input capacitors: by the key at pack volts, else when the pack is joined."""
    facts, part = bike.view.facts, bike.view.parts.get("converter")
    if part is None:
        return
    what = "key switch, onto the converter" if facts.key_at == PACK else "pack joined, onto the converter"
    farads = float(part.number("input_capacitance_uf")[0]) * 1e-6
    volts, ohm = facts.pack.full_charge_v.high, facts.margins.key_loop_low_ohm
    if isnan(farads) or farads <= 0:
        yield Rush(
            what,
            volts / ohm,
            nan,
            nan,
            f"{volts:.1f} V across {units.show(ohm, 'resistance')}",
            "the converter's input capacitors",
        )
        return
    yield _closing(what, volts, ohm, farads, 0.0, "")


def _filaments(bike: Bike) -> Iterator[Rush]:
    margins, budget = bike.view.facts.margins, bike.view.facts.budget
    for entry in budget.loads.values():
        if entry.load.kind != "filament" or entry.amps <= 0:
            continue
        rush = filament_rush(
            voltage_v=budget.rail_v,
            running_a=entry.amps,
            cold_multiple=margins.cold_filament,
            time_constant_s=margins.filament_warm_ms / 1000,
        )
        because = (
            f"{entry.amps:.2f} A running, {margins.cold_filament:g} x cold, warm in {margins.filament_warm_ms:g} ms"
        )
        yield Rush(
            f"{entry.load.name}, from cold", float(rush.peak_a), float(rush.settled_s), float(rush.energy_j), because
        )


def _coils(bike: Bike) -> Iterator[Rush]:
    """Pull each coil in from its pull-in amps, or its holding amps where it has no economiser."""
    margins = bike.view.facts.margins
    for coil in sorted(bike.coils):
        part = bike.view.parts.get(coil)
        figures = {
            name: float(part.number(name)[0]) if part else nan for name in ("coil_v", "coil_min_v", "coil_pull_a")
        }
        if any(isnan(value) or value <= 0 for value in figures.values()):
            yield Rush(f"coil of the {coil}", nan, nan, nan, "coil not known", f"coil volts and amps of the {coil}")
            continue
        ohm = figures["coil_v"] / figures["coil_pull_a"]
        henries = ohm * margins.coil_rise_ms / 1000
        pull = coil_pull(
            voltage_v=margins.rail_volts,
            resistance_ohm=ohm,
            inductance_h=henries,
            pull_in_a=figures["coil_min_v"] / ohm,
        )
        because = f"{figures['coil_pull_a']:.2f} A at {figures['coil_v']:g} V, rises in {margins.coil_rise_ms:g} ms"
        yield Rush(f"coil of the {coil}", margins.rail_volts / ohm, float(pull.time_s), float(pull.energy_j), because)
