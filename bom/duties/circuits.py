"""Duties shared by everything in one circuit: volts, amps, bursts, making, breaking, faults."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import partial
from math import sqrt

from bom.arrangement import ASLEEP, AT_PACK, PACK, PACK_SLEEPING
from bom.duties import circuit_traces as traces
from bom.duties.budget import Budget, horns_on, largest_filament_a
from bom.duties.load_traces import loads_together, state_figure
from bom.duties.volts import PackFacts
from bom.leads.model import LEADS, PACK_LEADS
from bom.loom.builder import BUS_SENSE, PILOT
from bom.loom.low_volt import METER_FEED, RAIL_METER
from bom.loom.low_volt import circuits as load_circuits
from bom.loom.relay_names import RELAY_COIL
from bom.physics.phase import greatest_line_rms_v
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Trace, step

Needs = dict[str, Span]

RESISTIVE = Span.fixed(1.0, "", "resistive or nearly so", "milliseconds, common practice")


@dataclass(frozen=True)
class Counted:
    """Figures of chosen parts that duties depend on: counted beforehand, then raised to what was chosen.

    hold_a, pull_a  amps of all coils the key holds and pulls in
    charge_end_v    end volts of the charger
    solved_a        amps by place that a solved state showed to be more than was counted, and the state
    """

    hold_a: float
    pull_a: float
    because: str
    charge_end_v: float
    hold_trace: Trace | None = field(default=None, compare=False, repr=False)
    pull_trace: Trace | None = field(default=None, compare=False, repr=False)
    solved_a: Mapping[str, tuple[float, str]] = field(default_factory=dict)

    @property
    def hold(self) -> Span:
        """Give the amps all coils hold."""
        return amps(self.hold_a, self.because, self.hold_trace)

    @property
    def pull(self) -> Span:
        """Give the amps all coils pull in with."""
        return amps(self.pull_a, self.because, self.pull_trace)


@dataclass(frozen=True)
class Facts:
    """Everything a duty is made of."""

    job: JobFile
    margins: Margins
    pack: PackFacts
    budget: Budget
    counted: Counted
    key_at: str

    @property
    def sleeps(self) -> bool:
        """Tell whether the converter sleeps while the key is off."""
        return self.key_at in ASLEEP

    @property
    def key_at_pack(self) -> bool:
        """Tell whether pack volts stand at the key."""
        return self.key_at in AT_PACK


def amps(value: float, because: str, trace: Trace | None = None) -> Span:
    """Give a current that is known exactly."""
    return Span.of(value, "current", because, trace)


def given_amps(value: float, because: str, key: str) -> Span:
    """Give a current that stands in the job."""
    return Span.given(value, "current", because, key)


def circuit_needs(facts: Facts) -> Mapping[str, Needs]:
    """Give the duties of each circuit by its name."""
    meter = facts.margins.of("meter_a", "current", "meters take 10 to 25 mA, common practice")
    sense = facts.margins.of("meter_a", "current", "a closer senses with milliamps")
    pilot = facts.margins.of("pilot_lamp_a", "current", "indicator lamps take 2 to 20 mA, common practice")
    wish = given_amps(facts.job.wishes.charge_current, "charging amps wanted", "wishes.charge_current")
    needs = {
        "traction": _traction(facts),
        "phase": _phase(facts),
        "precharge": _precharge(facts),
        "converter input": _converter_input(facts),
        "key input": _key_input(facts),
        "meter": {**_pack_side(facts), **_small(facts, meter)},
        BUS_SENSE: {**_pack_side(facts), **_small(facts, sense)},
        PILOT: {**_pack_side(facts), "lowest_v": facts.pack.lowest_rest_v, **_small(facts, pilot)},
        METER_FEED: {**_rail(facts), **carry(meter)},
        RAIL_METER: {**_rail(facts), **carry(meter)},
        "charging": {**_pack_side(facts), **_small(facts, wish)},
        "12 V supply": {**_rail(facts), **carry(supply_amps(facts)), "make_a": rush_a(facts)},
        "key control": _coils(facts),
        RELAY_COIL: _one_coil(facts),
        "flasher": _rail(facts),
        "labels": {},
        LEADS: _rail(facts),
        PACK_LEADS: {"voltage_v": facts.pack.highest_bus_v},
    }
    for name, loads in load_circuits(facts.job.loads).items():
        names = [load.name for load in loads]
        because = f"loads of the {name} at {facts.budget.rail_v:g} V"
        total = amps(facts.budget.amps(names), because, partial(loads_together, facts, names))
        needs[name] = {**_rail(facts), **carry(total)}
    for item in facts.job.donor.items:
        if item.feeds:
            needs[f"switch {item.name}"] = _switched(facts, item.feeds)
    return needs


def _pack_side(facts: Facts) -> Needs:
    return {
        "voltage_v": facts.pack.highest_bus_v,
        "lowest_v": facts.pack.lowest_sag_v,
        "fault_high_a": facts.pack.fault_high_a,
        "fault_low_a": facts.pack.fault_low_a,
    }


def _key_input(facts: Facts) -> Needs:
    """Give the key input's few milliamps; its capacitors count where the job names them."""
    control = facts.job.controller
    key_amps = given_amps(control.key_current, "amps into the controller's key input", "controller.key_current")
    if control.key_input != "pack volts":
        key_amps = Span.fixed(0.0, "current", "no key input at pack volts")
    elif facts.job.wishes.meter != "none":
        key_amps = _with_meter(facts, key_amps)
    if facts.key_at == PACK_SLEEPING:
        key_amps = _with_enable(facts, key_amps)
    needs = {**_pack_side(facts), **_small(facts, key_amps)}
    if control.key_capacitance is not None:
        needs["make_a"] = _capacitor_rush(facts)
    return needs


def _with_meter(facts: Facts, key_amps: Span) -> Span:
    """Add the meter, which hangs on the switched pack volts too."""
    meter = facts.margins.of("meter_a", "current")
    total = key_amps.high + meter.high
    return amps(
        total, f"{key_amps.because} and the meter", lambda: step("I_key + I_meter", I_key=key_amps, I_meter=meter)
    )


def _with_enable(facts: Facts, key_amps: Span) -> Span:
    """Add the converter's enable, which the key feeds beside the key input."""
    enable = facts.margins.of("enable_a", "current")
    because = f"{key_amps.because}, and the converter's enable"
    return amps(key_amps.high + enable.high, because, lambda: step("I_key + I_enable", I_key=key_amps, I_enable=enable))


def _capacitor_rush(facts: Facts) -> Span:
    """Give the amps into empty capacitors at the highest volts, through what little resistance there is."""
    low, high = facts.margins.key_loop_high_ohm, facts.margins.key_loop_low_ohm
    volts = facts.pack.highest_bus_v
    return Span(
        volts.low / low,
        volts.high / high,
        "current",
        f"empty capacitors behind it at {volts}, through {high:g} to {low:g} ohm",
        "the resistance and capacitors behind it",
        lambda: step("U_bus / R", U_bus=volts, R=traces.key_loop(facts.margins)),
    )


def _small(facts: Facts, running: Span) -> Needs:
    return {
        "carry_a": running,
        "break_a": running,
        "break_v": facts.pack.highest_bus_v,
        "time_constant_ms": RESISTIVE,
    }


def _traction(facts: Facts) -> Needs:
    control, pack = facts.job.controller, facts.pack
    wishes = facts.job.wishes
    left = 1 - facts.margins.precharge_fraction if wishes.precharge and wishes.contactor else 1.0
    rush = pack.fault_high_a.scaled(
        left,
        f"{left:.0%} of the pack volts left at closing, over the pack's resistance alone",
        "X * (1 - q)",
        q=traces.filled(facts, left),
    )
    peak = given_amps(control.battery_peak, "controller's peak battery amps", "controller.battery_peak")
    needs = {
        **_pack_side(facts),
        "carry_a": _pack_lead_amps(facts),
        "peak_a": peak,
        "peak_s": Span.given(control.peak_time, "time", "length of the burst", "controller.peak_time"),
        "make_a": rush,
        "break_a": peak,
        "break_v": pack.highest_bus_v,
        "time_constant_ms": RESISTIVE,
    }
    back = max(control.regen or 0.0, facts.job.wishes.charge_current if facts.job.wishes.charger else 0.0)
    if back:
        needs["reverse_a"] = amps(back, "regeneration or charging amps", partial(traces.back, facts))
    return needs


def _pack_lead_amps(facts: Facts) -> Span:
    """Give what the heavy leads carry: the controller's continuous amps, and the converter that hangs on them too.

    A controller's continuous figure is what it may average over a ride; its bursts are within it.
    """
    because = "controller's continuous battery amps"
    drive = given_amps(facts.job.controller.battery_continuous, because, "controller.battery_continuous")
    taps = converter_amps(facts)
    return Span(
        drive.low + taps.low,
        drive.high + taps.high,
        "current",
        f"{because}, and {taps} of the converter",
        taps.datum,
        lambda: step("I_drive + I_converter", I_drive=drive, I_converter=taps),
    )


def bus_capacitance(facts: Facts) -> Span:
    """Give the controller's bus capacitors, or the span they are assumed to lie in."""
    control, margins = facts.job.controller, facts.margins
    if control.input_capacitance is not None:
        because, key = "bus capacitors as given", "controller.input_capacitance"
        return Span.given(control.input_capacitance, "capacitance", because, key)
    return Span(
        margins.capacitance_low_uf_per_a * control.phase_peak * 1e-6,
        margins.capacitance_high_uf_per_a * control.phase_peak * 1e-6,
        "capacitance",
        "assumed from the peak phase amps",
        "the controller's input capacitance",
        partial(traces.assumed_capacitance, facts),
    )


def _precharge(facts: Facts) -> Needs:
    """Give the mean amps of a filling: charge over time, and what the bus draws meanwhile."""
    farads, time_s = bus_capacitance(facts), facts.job.wishes.precharge_time
    volts, rest = facts.pack.highest_bus_v, facts.pack.lowest_rest_v
    idle = facts.job.controller.standby / rest.low
    filling = Span(
        farads.low * volts.low / time_s + idle,
        farads.high * volts.high / time_s + idle,
        "current",
        f"{farads} filled in {time_s:g} s, and the controller's idle watts",
        farads.datum,
        lambda: step(
            "C * U_bus / t + P_idle / U_rest",
            C=farads,
            U_bus=volts,
            t=Span.given(time_s, "time", "time the timer allows", "wishes.precharge_time"),
            P_idle=traces.idle(facts),
            U_rest=rest,
        ),
    )
    return {**_pack_side(facts), "lowest_v": rest, "carry_a": filling, "time_constant_ms": RESISTIVE}


def _phase(facts: Facts) -> Needs:
    control = facts.job.controller
    bus = facts.pack.highest_bus_v
    line = Span(
        float(greatest_line_rms_v(bus_v=bus.low)),
        float(greatest_line_rms_v(bus_v=bus.high)),
        "voltage",
        f"0.82 x {bus} between motor leads",
        bus.datum,
        lambda: step("line_volts(U_bus)", U_bus=bus),
    )
    if control.phase_continuous is not None:
        because, key = "controller's continuous phase amps", "controller.phase_continuous"
        carry = given_amps(control.phase_continuous, because, key)
    else:
        fraction = facts.margins.phase_continuous_fraction
        burst = sqrt(control.peak_time / max(control.peak_every, control.peak_time))
        carry = amps(
            max(fraction, burst) * control.phase_peak,
            f"{max(fraction, burst):.0%} of the peak phase amps, continuous figure not given",
            partial(traces.assumed_phase, facts),
        )
    return {
        "voltage_v": bus,
        "ac_voltage_v": line,
        "carry_a": carry,
        "peak_a": given_amps(control.phase_peak, "controller's peak phase amps", "controller.phase_peak"),
    }


def _converter_input(facts: Facts) -> Needs:
    """Give the duties of the converter's own draw."""
    running = converter_amps(facts)
    needs = {
        **_pack_side(facts),
        "carry_a": running,
        "break_a": running,
        "break_v": facts.pack.highest_bus_v,
        "time_constant_ms": RESISTIVE,
    }
    if facts.key_at == PACK:
        needs["make_a"] = _capacitor_rush(facts)
    return needs


def converter_amps(facts: Facts) -> Span:
    """Give the converter's own draw: constant watts, so the amps are greatest on a sagged pack."""
    state, twelve = facts.budget.worst
    watts = twelve * facts.budget.rail_v / facts.margins.converter_efficiency
    sag = facts.pack.lowest_sag_v
    because = f"{watts:.0f} W from {sag}; {state}"
    floor = max(sag.low, facts.pack.lowest_rest_v.low * facts.margins.least_run_fraction)
    traced = partial(traces.converter_input, facts, watts)
    return Span(watts / max(sag.high, floor), watts / floor, "current", because, sag.datum, traced)


def _rail(facts: Facts) -> Needs:
    margins = facts.margins
    low, high = rail_ends(margins)
    if facts.job.wishes.buffer_battery:
        fault = Span(
            margins.buffer_short_low_a,
            margins.buffer_short_high_a,
            "current",
            "short circuit of a small 12 V battery",
            "the buffer battery's resistance",
            partial(traces.buffer_short, margins),
        )
    else:
        fault = margins.of("converter_fault_a", "current", "a converter's limit and its output capacitors")
    return {
        "voltage_v": high,
        "break_v": high,
        "rail_high_v": high,
        "rail_low_v": low,
        "coil_low_v": low,
        "coil_high_v": high,
        "fault_high_a": fault,
    }


def rail_ends(margins: Margins) -> tuple[Span, Span]:
    """Give the lowest and the highest volts of the 12 V side."""
    low = margins.of("rail_low_v", "voltage", "lowest volts of the 12 V side")
    return low, margins.of("rail_high_v", "voltage", "highest volts of the 12 V side")


def carry(running: Span) -> Needs:
    """Give the duties of a current that is carried, closed on and opened."""
    return {"carry_a": running, "break_a": running, "make_a": running, "time_constant_ms": RESISTIVE}


def supply_amps(facts: Facts) -> Span:
    """Give the 12 V amps of the worst state."""
    state, current = facts.budget.worst
    return amps(current, f"12 V loads together; {state}", state_figure(facts, state).trace)


def _coils(facts: Facts) -> Needs:
    counted = facts.counted
    return {
        **_rail(facts),
        **carry(counted.hold),
        "make_a": counted.pull,
        "time_constant_ms": facts.margins.of("coil_time_constant_ms", "", "coils behind fast clamps"),
    }


def _one_coil(facts: Facts) -> Needs:
    """Give the duties of a switch that pulls in one relay."""
    coil = facts.margins.of("relay_coil_a", "current", "one relay coil, as counted beforehand")
    time_constant = facts.margins.of("coil_time_constant_ms", "", "a coil behind a fast clamp")
    return {**_rail(facts), **carry(coil), "time_constant_ms": time_constant}


def _switched(facts: Facts, feeds: list[str]) -> Needs:
    """Give the duty of a switch: its loads together, cold filaments at closing, coils at opening."""
    fed = [facts.budget.loads[name] for name in feeds]
    total = sum(entry.amps for entry in fed)
    because = f"{', '.join(feeds)} at {facts.budget.rail_v:g} V"
    running = amps(total, because, partial(loads_together, facts, feeds))
    needs = {**_rail(facts), **carry(running)}
    filament = sum(entry.amps for entry in fed if entry.load.kind == "filament")
    if filament:
        # In this order a switch that closes on the very lamps it served is not short by a rounding.
        rush = (total - filament) + filament * facts.margins.cold_filament
        traced = partial(traces.switched_rush, facts, running, fed)
        needs["make_a"] = amps(rush, f"cold filaments at {facts.margins.cold_filament:g} x", traced)
    if any(entry.load.kind in ("motor", "coil") for entry in fed):
        needs["time_constant_ms"] = facts.margins.of("horn_time_constant_ms", "", "a horn without a clamp")
    return needs


def rush_a(facts: Facts) -> Span:
    """Give the 12 V amps when the largest filament lights cold and a horn's contact closes, with all else on."""
    state, current = facts.budget.worst
    extra = largest_filament_a(facts.budget) * (facts.margins.cold_filament - 1)
    because = f"{state}, the largest filament cold at {facts.margins.cold_filament:g} x"
    horn = sum(entry.amps for entry in horns_on(facts.budget, state))
    if horn:
        extra += horn * (facts.margins.horn_pulse - 1)
        because += f", the horn's contact closed at {facts.margins.horn_pulse:g} x"
    return amps(current + extra, because, partial(traces.rush, facts, state))
