"""Figures a bench wants beside a build: isolation floor, filling, draining, waiting, label texts."""

from dataclasses import dataclass
from math import isfinite, isnan, nan

from bom.build import Build
from bom.duties.circuits import bus_capacitance
from bom.judge.parked_drain import drain_limit_a, parked_days, parked_drain_a
from bom.physics.discharge import time_to_volts_s
from bom.physics.isolation import LOW_VOLTAGE_LIMIT_V, floor_ohm
from bom.physics.precharge import time_to_fraction_s
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
    facts = build.facts
    highest, full = facts.pack.highest_bus_v.high, facts.pack.full_charge_v.high
    working = highest if isfinite(highest) else full
    farads, ohm = bus_capacitance(facts), _precharge_ohm(build)
    drain, unknown = parked_drain_a(build.walks.bike.view)
    return Bench(
        working_v=working,
        above_60_v=working > LOW_VOLTAGE_LIMIT_V,
        floor_ohm=float(floor_ohm(working_voltage_v=working)),
        known_ohm=round(KNOWN_OHM_PER_V * working, -4),
        capacitance=farads,
        precharge_ohm=ohm,
        fill_s=_fill_s(ohm, farads.high, session.margins.precharge_fraction),
        bleed_s=float(time_to_volts_s(resistance_ohm=BLEED_OHM, capacitance_f=farads.high, start_v=working)),
        drain_limit_a=drain_limit_a(facts),
        drain_a=drain,
        drain_days=nan if unknown else parked_days(facts, drain),
        drain_unknown=unknown,
    )


def _precharge_ohm(build: Build) -> float:
    entry = build.filled.get("precharge resistor")
    return float(entry.part.number("resistance_ohm")[0]) if entry else nan


def _fill_s(ohm: float, farads: float, fraction: float) -> float:
    if isnan(ohm):
        return nan
    return float(time_to_fraction_s(resistance_ohm=ohm, capacitance_f=farads, fraction=fraction))
