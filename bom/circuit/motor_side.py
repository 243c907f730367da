"""The motor's side: amps over the ride, volts between leads, what a turning motor and the capacitors still feed."""

from collections.abc import Iterator
from dataclasses import dataclass
from math import isfinite, nan

from bom import units
from bom.circuit.bike import Bike
from bom.duties.circuits import bus_capacitance
from bom.physics.discharge import harmless_capacitance_f, safe_speed_fraction, time_to_volts_s
from bom.physics.isolation import LOW_VOLTAGE_LIMIT_V
from bom.physics.motor import ride_rms_a, shorted_bus_a
from bom.physics.phase import greatest_line_rms_v, line_rms_v
from bom.physics.precharge import stored_energy_j

EMF = "the motor's highest volts by itself (motor.back_emf)"
BLEED_OHM = 10_000.0  # a bleed resistor as builders fit it; nobody knows a controller's own


@dataclass(frozen=True)
class Figure:
    """One figure of the motor's side: its value in a dimension of bom.units, NaN where not known, and why."""

    what: str
    value: float
    dimension: str
    because: str
    datum: str = ""


def motor_side(bike: Bike) -> tuple[Figure, ...]:
    """List the figures of the motor's side."""
    return (*_amps(bike), *_volts(bike), *_past_the_contactor(bike))


def _amps(bike: Bike) -> Iterator[Figure]:
    """Heat the leads as the ride does: a burst, then the rest of its turn at the continuous amps."""
    control, margins = bike.view.facts.job.controller, bike.view.facts.margins
    rest_s = max(control.peak_every - control.peak_time, 0.0)
    known = control.phase_continuous is not None
    steady = control.phase_continuous or margins.phase_continuous_fraction * control.phase_peak
    told = "" if known else f" ({margins.phase_continuous_fraction:.0%} of the peak, taken)"
    for what, peak, rest in (
        ("phase amps rms over the ride", control.phase_peak, steady),
        ("battery amps rms over the ride", control.battery_peak, control.battery_continuous),
    ):
        value = ride_rms_a(segments=((peak, control.peak_time), (rest, rest_s)))
        note = told if what.startswith("phase") else ""
        because = f"{peak:g} A for {control.peak_time:g} s, then {rest:g} A{note} for {rest_s:g} s"
        yield Figure(what, value, "current", because)


def _volts(bike: Bike) -> Iterator[Figure]:
    bus = bike.view.facts.pack.highest_bus_v.high
    if not isfinite(bus):
        return
    because = f"highest bus {bus:.1f} V"
    yield Figure("between motor leads, all harmonics", float(greatest_line_rms_v(bus_v=bus)), "voltage", because)
    yield Figure("between motor leads, sine alone", float(line_rms_v(bus_v=bus)), "voltage", because)


def _past_the_contactor(bike: Bike) -> Iterator[Figure]:
    """Say what feeds the bus when the contactor opens at speed: the capacitors once, the motor as long as it turns."""
    facts = bike.view.facts
    bus, farads, emf = facts.pack.highest_bus_v.high, bus_capacitance(facts), facts.job.motor.back_emf
    if isfinite(bus):
        joules = float(stored_energy_j(capacitance_f=farads.high, voltage_v=bus))
        harmless = float(harmless_capacitance_f(voltage_v=bus))
        least = units.show(harmless, "capacitance")
        because = f"{farads} at {bus:.1f} V; less than 0.2 J, harmless by ISO 6469-4:2015, only below {least}"
        yield Figure("joules in the bus capacitors", joules, "energy", because, farads.datum)
    datum = "" if emf else EMF
    yield Figure(
        "bus volts, contactor open at top speed", emf or nan, "voltage", "the motor's own, by the diodes", datum
    )
    if emf and emf > LOW_VOLTAGE_LIMIT_V:
        share = float(safe_speed_fraction(full_speed_line_peak_v=emf))
        yield Figure("share of top speed that holds 60 V", share, "", f"{emf:.0f} V at top speed, in proportion")
    yield _shorted(bike, emf)
    if bus > LOW_VOLTAGE_LIMIT_V and isfinite(bus):
        wait = float(time_to_volts_s(resistance_ohm=BLEED_OHM, capacitance_f=farads.high, start_v=bus))
        bleed = units.show(BLEED_OHM, "resistance")
        because = (
            f"{units.show(farads.high, 'capacitance')} from {bus:.1f} V through {bleed}; without a bleed measure it"
        )
        yield Figure("wait until 60 V, wheel at rest", wait, "time", because, farads.datum)


def _shorted(bike: Bike, emf: float | None) -> Figure:
    what, winding = "amps the motor feeds into a shorted bus", bike.view.facts.job.motor.winding_resistance
    if not emf or not winding:
        datum = EMF if not emf else "ohms between two motor leads (motor.winding_resistance)"
        return Figure(what, nan, "current", "through the diodes, past an open contactor", datum)
    amps = float(shorted_bus_a(line_peak_v=emf, between_leads_ohm=winding))
    because = f"{emf:.0f} V between leads over {winding:g} ohm; the inductance, which lowers it, left out"
    return Figure(what, amps, "current", because)
