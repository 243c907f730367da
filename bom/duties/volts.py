"""The pack's volts, resistance and fault amps, each defined once."""

from dataclasses import dataclass, replace
from functools import partial

from bom.duties.pack_traces import cells, pack_ohm
from bom.physics.pack import (
    CHEMISTRIES,
    FIRST_PEAK_RESISTANCE_SHARE,
    cell_resistance_span_mohm,
    highest_fault_a,
    lowest_fault_a,
    pack_resistance_ohm,
)
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step


@dataclass(frozen=True)
class PackFacts:
    """Figures of the pack that every pack-side duty is made of.

    full_charge_v   at the end of charge, at rest
    highest_bus_v   highest of full charge, the charger's end, the motor's own volts and regeneration's limit
    nominal_v       as marked
    lowest_rest_v   at the low cut, no current
    lowest_sag_v    at the low cut and the controller's peak amps
    resistance_ohm  direct-current resistance at the terminals, warm and new
    fault_high_a    dead short at the terminals of a full, warm, new pack
    fault_low_a     short through the whole allowed drop on an empty, cold, aged pack
    """

    full_charge_v: Span
    highest_bus_v: Span
    nominal_v: Span
    lowest_rest_v: Span
    lowest_sag_v: Span
    resistance_ohm: Span
    fault_high_a: Span
    fault_low_a: Span


def pack_facts(job: JobFile, margins: Margins, charge_end_v: float) -> PackFacts:
    """Work out the pack's figures from the job and the charger's end volts."""
    full, nominal, rest = _cell_volts(job)
    highest = _highest_bus(job, margins, full, charge_end_v)
    resistance = _resistance(job, margins)
    peak = job.controller.battery_peak
    sag = Span(
        max(rest.low - peak * resistance.high, 0.0),
        max(rest.low - peak * resistance.low, 0.0),
        "voltage",
        f"{rest} less {peak:g} A through {resistance}",
        resistance.datum,
        lambda: step(
            "max(U_rest - I_peak * R, 0)",
            U_rest=rest,
            I_peak=Span.given(peak, "current", "peak battery amps", "controller.battery_peak"),
            R=resistance,
        ),
    )
    allowed_ohm = margins.drop_pack_fraction * rest.low / job.controller.battery_continuous
    factor = margins.cold_aged_factor
    high = Span(
        float(highest_fault_a(full_charge_v=full.high, pack_resistance_ohm=resistance.high)),
        float(highest_fault_a(full_charge_v=full.high, pack_resistance_ohm=resistance.low)),
        "current",
        f"{full} over 0.9 x {resistance}",
        resistance.datum,
        lambda: step(
            "U_full / (k * R)",
            U_full=full,
            k=Span.fixed(FIRST_PEAK_RESISTANCE_SHARE, "", "share of R at the first peak", "IEC 61660-1:1997, adapted"),
            R=resistance,
        ),
    )
    weakest, strongest = (
        float(
            lowest_fault_a(
                lowest_rest_v=rest.low,
                pack_resistance_ohm=ohm,
                wire_resistance_ohm=allowed_ohm,
                cold_aged_factor=factor,
            )
        )
        for ohm in (resistance.high, resistance.low)
    )
    low = Span(
        weakest,
        strongest,
        "current",
        f"{rest} over {factor:g} x {resistance} and the allowed wire drop",
        resistance.datum,
        lambda: step(
            "U_rest / (k_cold * R + R_wire)",
            U_rest=rest,
            k_cold=margins.of("cold_aged_factor"),
            R=resistance,
            R_wire=_allowed_wire(job, margins, rest, allowed_ohm),
        ),
    )
    return PackFacts(full, highest, nominal, rest, sag, resistance, high, low)


def _allowed_wire(job: JobFile, margins: Margins, rest: Span, allowed_ohm: float) -> Span:
    """Give the resistance that loses the allowed drop at the continuous amps."""
    amps = job.controller.battery_continuous
    return Span.of(
        allowed_ohm,
        "resistance",
        "wire that loses the allowed drop",
        lambda: step(
            "p * U_rest / I",
            p=margins.of("drop_pack_fraction"),
            U_rest=rest,
            I=Span.given(amps, "current", "continuous battery amps", "controller.battery_continuous"),
        ),
    )


def _cell_volts(job: JobFile) -> tuple[Span, Span, Span]:
    pack, cell = job.pack, CHEMISTRIES[job.pack.chemistry]
    series = pack.series or round((pack.full_charge or 0.0) / cell.full_v)
    made_of = f"{series} {pack.chemistry} cells x"
    if pack.full_charge is not None:
        full = Span.given(pack.full_charge, "voltage", "full charge as measured", "pack.full_charge")
    else:
        full_v, made_full = round(series * cell.full_v, 3), f"{made_of} {cell.full_v:.2f} V"
        full = Span.of(full_v, "voltage", made_full, partial(cells, job, "full_v"))
    nominal_v, made_nominal = round(series * cell.nominal_v, 3), f"{made_of} {cell.nominal_v:.2f} V"
    nominal = Span.of(nominal_v, "voltage", made_nominal, partial(cells, job, "nominal_v"))
    rest_v, because = round(series * cell.empty_v, 3), f"{made_of} {cell.empty_v:.2f} V"
    if pack.bms.low_cut is not None and pack.bms.low_cut > rest_v:
        rest_v, because = pack.bms.low_cut, "low cut of the battery management"
    return full, nominal, Span.of(rest_v, "voltage", because, partial(cells, job, "empty_v"))


def _highest_bus(job: JobFile, margins: Margins, full: Span, charge_end_v: float) -> Span:
    """Take the highest of full charge, the charger's end, the motor's own volts and regeneration's limit."""
    control, motor = job.controller, job.motor
    highest, asked = full, {"U_full": full}
    if charge_end_v > full.high:
        asked["U_charger"] = Span.fixed(charge_end_v, "voltage", "end volts of the chosen charger", "charger's own row")
        highest = Span.of(charge_end_v, "voltage", "end volts of the charger")
    if motor.back_emf is not None:
        asked["U_motor"] = Span.given(motor.back_emf, "voltage", "volts the motor makes", "motor.back_emf")
        if motor.back_emf > highest.high:
            highest = Span.of(motor.back_emf, "voltage", "volts the motor makes at top speed")
    if control.regen is not None and control.over_voltage is not None:
        key = "controller.over_voltage"
        asked["U_limit"] = Span.given(control.over_voltage, "voltage", "limit with regeneration", key)
        if control.over_voltage > highest.high:
            highest = Span.of(control.over_voltage, "voltage", "controller's over-voltage limit with regeneration")
    if len(asked) > 1:
        highest = replace(highest, trace=lambda: Step(f"max({', '.join(asked)})", asked))
    if control.regen is None or control.over_voltage is not None:
        return highest
    most = highest.high * margins.unlimited_bus_factor
    because = "regeneration without a known over-voltage limit"
    traced = partial(step, "U to U * k", U=highest, k=margins.of("unlimited_bus_factor"))
    return Span(highest.low, most, "voltage", because, "the controller's over-voltage limit", traced)


def _resistance(job: JobFile, margins: Margins) -> Span:
    pack = job.pack
    if pack.pack_resistance is not None:
        return Span.given(pack.pack_resistance, "resistance", "pack resistance as given", "pack.pack_resistance")
    cell = CHEMISTRIES[pack.chemistry]
    series = pack.series or round((pack.full_charge or 0.0) / cell.full_v)
    if pack.cell_resistance is not None:
        ohm = float(
            pack_resistance_ohm(series=series, parallel=pack.parallel, cell_resistance_mohm=pack.cell_resistance * 1000)
        )
        because = f"{series} in series, {pack.parallel} side by side, cell as given"
        return Span.of(ohm, "resistance", because, partial(pack_ohm, job, margins))
    datum = "the pack's resistance (two readings of volts at two currents)"
    if pack.capacity is None:
        low, high = margins.unknown_cell_low_ohm, margins.unknown_cell_high_ohm
        because = f"{series} cells of unknown size, {low * 1000:g} to {high * 1000:g} mohm each"
        return Span(series * low, series * high, "resistance", because, datum, partial(pack_ohm, job, margins))
    span = cell_resistance_span_mohm(capacity_ah=pack.capacity / pack.parallel)
    low, high = (
        float(pack_resistance_ohm(series=series, parallel=pack.parallel, cell_resistance_mohm=value)) for value in span
    )
    because = f"{series} cells of {pack.capacity:g} Ah a group, assumed from capacity alone"
    return Span(low, high, "resistance", because, datum, partial(pack_ohm, job, margins))
