"""How the duties of circuits were worked out, for those who ask; `bom.duties.circuits` makes the figures."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from bom.duties.budget import horns_on
from bom.duties.load_traces import filament_figure, load_figure, state_figure, symbol, together
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step

if TYPE_CHECKING:
    from bom.duties.budget import LoadAmps
    from bom.duties.circuits import Facts


def _between(margins: Margins, low: str, high: str, dimension: str, because: str) -> Span:
    """Give a figure that two margins bound."""
    least, most = margins.of(low, dimension), margins.of(high, dimension)
    return Span(least.low, most.high, dimension, because, "", lambda: step("a to b", a=least, b=most))


def key_loop(margins: Margins) -> Span:
    """Give the resistance between the pack and capacitors behind a key."""
    return _between(margins, "key_loop_low_ohm", "key_loop_high_ohm", "resistance", "between the pack and them")


def buffer_short(margins: Margins) -> Step:
    """Give the short-circuit amps of a small 12 V battery."""
    low, high = margins.of("buffer_short_low_a", "current"), margins.of("buffer_short_high_a", "current")
    return step("I_a to I_b", I_a=low, I_b=high)


def filled(facts: "Facts", left: float) -> Span:
    """Give the part of the pack volts that stands on the bus at closing."""
    if left < 1.0:
        return facts.margins.of("precharge_fraction")
    return Span.given(0.0, "", "nothing fills the bus beforehand", "wishes.precharge")


def idle(facts: "Facts") -> Span:
    """Give the controller's idle watts."""
    return Span.given(facts.job.controller.standby, "power", "controller's idle watts", "controller.standby")


def back(facts: "Facts") -> Step:
    """Take the greater of regeneration and charging amps."""
    job = facts.job
    amps = {}
    if job.controller.regen is not None:
        amps["I_regen"] = Span.given(job.controller.regen, "current", "regeneration", "controller.regen")
    if job.wishes.charger:
        amps["I_charge"] = Span.given(job.wishes.charge_current, "current", "charging", "wishes.charge_current")
    return Step(f"max({', '.join(amps)})" if len(amps) > 1 else next(iter(amps)), amps)


def assumed_capacitance(facts: "Facts") -> Step:
    """Work out the span of bus capacitors from the peak phase amps."""
    peak = Span.given(facts.job.controller.phase_peak, "current", "peak phase amps", "controller.phase_peak")
    low, high = "capacitance_low_uf_per_a", "capacitance_high_uf_per_a"
    return step("c * I_phase / 1000000", c=_between(facts.margins, low, high, "", "µF for each amp"), I_phase=peak)


def assumed_phase(facts: "Facts") -> Step:
    """Work out continuous phase amps from the burst, where they are not given."""
    control = facts.job.controller
    return step(
        "max(f, sqrt(t / max(T, t))) * I_peak",
        f=facts.margins.of("phase_continuous_fraction"),
        t=Span.given(control.peak_time, "time", "length of the burst", "controller.peak_time"),
        T=Span.given(control.peak_every, "time", "the burst comes back after", "controller.peak_every"),
        I_peak=Span.given(control.phase_peak, "current", "peak phase amps", "controller.phase_peak"),
    )


def converter_input(facts: "Facts", watts_w: float) -> Step:
    """Work out what the converter draws from a sagged pack."""
    margins, pack = facts.margins, facts.pack
    return step(
        "P / max(U_sag, k * U_rest)",
        P=converter_watts(facts, watts_w),
        U_sag=pack.lowest_sag_v,
        k=margins.of("least_run_fraction"),
        U_rest=pack.lowest_rest_v,
    )


def converter_watts(facts: "Facts", watts_w: float) -> Span:
    """Give the watts a converter takes in the worst state."""
    return Span.of(
        watts_w,
        "power",
        "converter's input",
        lambda: step(
            "I_12 * U_rail / eta",
            I_12=state_figure(facts, facts.budget.worst[0]),
            U_rail=facts.margins.of("rail_volts", "voltage"),
            eta=facts.margins.of("converter_efficiency"),
        ),
    )


def rush(facts: "Facts", state: str) -> Step:
    """Add the largest filament, cold, and the pulse of the horns to everything of a state."""
    cold = {
        "I": state_figure(facts, state),
        "I_filament": filament_figure(facts),
        "k": facts.margins.of("cold_filament"),
    }
    horns = horns_on(facts.budget, state)
    if not horns:
        return step("I + I_filament * (k - 1)", **cold)
    named = [(symbol("I", entry.load.name), load_figure(entry, facts.margins)) for entry in horns]
    total = Span.of(sum(entry.amps for entry in horns), "current", "horns among them", lambda: together(named))
    pulse = facts.margins.of("horn_pulse")
    return step("I + I_filament * (k - 1) + I_horn * (p - 1)", **cold, I_horn=total, p=pulse)


def switched_rush(facts: "Facts", running: Span, fed: Sequence["LoadAmps"]) -> Step:
    """Add cold filaments to what a switch carries."""
    cold = [entry for entry in fed if entry.load.kind == "filament"]
    named = [(symbol("I", entry.load.name), load_figure(entry, facts.margins)) for entry in cold]
    filaments = Span.of(sum(entry.amps for entry in cold), "current", "filaments among them", lambda: together(named))
    return step("I + I_filament * (k - 1)", I=running, I_filament=filaments, k=facts.margins.of("cold_filament"))
