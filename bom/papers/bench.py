"""Figures a bench wants beside a build: isolation floor, filling, draining, waiting, label texts."""

from dataclasses import dataclass
from math import isfinite, isnan, nan

from bom.build import Build
from bom.judge.loom_view import LoomView
from bom.judge.parked_drain import parked_drain_a
from bom.physics.discharge import time_to_volts_s
from bom.physics.isolation import LOW_VOLTAGE_LIMIT_V, floor_ohm
from bom.physics.precharge import time_to_fraction_s
from bom.read.margins import Margins
from bom.session import Session
from bom.span import Span

BLEED_OHM = 10_000.0  # an example to scale by: seconds grow with the ohms
KNOWN_OHM_PER_V = 1000.0  # a test resistor of 500 to 1500 ohm a volt moves the readings enough to be read


@dataclass(frozen=True)
class Bench:
    """Figures for the tests; NaN where something they need is not known.

    working_v      the volts they are judged by: highest bus, or full charge where that has no limit
    floor_ohm      least isolation between pack and frame
    known_ohm      test resistor of the four readings
    fill_s         precharge to its fraction
    bleed_s        fall to 60 V through 10 kohm
    drain_limit_a  key-off amps at which the pack loses its allowed part in the allowed days
    drain_a        key-off amps as far as they are known
    drain_days     days to lose that part at those amps
    drain_unknown  the first figure that the drain lacks, "" for none
    """

    working_v: float
    above_60_v: bool
    floor_ohm: float
    known_ohm: float
    capacitance: Span
    precharge_ohm: float
    fill_s: float
    bleed_s: float
    drain_limit_a: float
    drain_a: float
    drain_days: float
    drain_unknown: str


def bench(session: Session) -> Bench:
    """Work out the bench figures of a build."""
    build = session.build
    highest, full = build.facts.pack.highest_bus_v.high, build.facts.pack.full_charge_v.high
    working = highest if isfinite(highest) else full
    farads = bus_capacitance(build)
    ohm = _precharge_ohm(build)
    fill = (
        nan
        if isnan(ohm)
        else float(
            time_to_fraction_s(
                resistance_ohm=ohm, capacitance_f=farads.high, fraction=session.margins.precharge_fraction
            )
        )
    )
    bleed = float(time_to_volts_s(resistance_ohm=BLEED_OHM, capacitance_f=farads.high, start_v=working))
    view = LoomView(build.loom, build.facts, {name: entry.part for name, entry in build.filled.items()})
    drain, unknown = parked_drain_a(view)
    limit, days = _drain(build, session.margins, nan if unknown else drain)
    return Bench(
        working,
        working > LOW_VOLTAGE_LIMIT_V,
        float(floor_ohm(working_voltage_v=working)),
        round(KNOWN_OHM_PER_V * working, -4),
        farads,
        ohm,
        fill,
        bleed,
        limit,
        drain,
        days,
        unknown,
    )


def bus_capacitance(build: Build) -> Span:
    """Give the controller's capacitors as given, or as assumed from its peak phase amps."""
    control, margins = build.facts.job.controller, build.facts.margins
    if control.input_capacitance is not None:
        return Span.of(control.input_capacitance, "capacitance", "bus capacitors as given")
    low, high = margins.capacitance_low_uf_per_a, margins.capacitance_high_uf_per_a
    return Span(
        low * control.phase_peak * 1e-6,
        high * control.phase_peak * 1e-6,
        "capacitance",
        "assumed from the peak phase amps",
        "the controller's input capacitance",
    )


def _precharge_ohm(build: Build) -> float:
    entry = build.filled.get("precharge resistor")
    return float(entry.part.number("resistance_ohm")[0]) if entry else nan


def _drain(build: Build, margins: Margins, amps: float) -> tuple[float, float]:
    capacity = build.facts.job.pack.capacity
    if capacity is None:
        return nan, nan
    lost_ah = margins.drain_fraction * capacity
    days = lost_ah / amps / 24 if amps > 0 else nan  # NaN amps give NaN days
    return lost_ah / (margins.drain_days * 24), days
