"""What a parked bike draws from its pack, and how long the pack stands it."""

from math import inf, isnan, nan

from bom.arrangement import PACK
from bom.duties.circuits import Facts
from bom.duties.load_traces import state_figure
from bom.judge.loom_view import LoomView
from bom.loom.builder import PILOT
from bom.physics.precharge import left_after_precharge_v
from bom.span import Span
from bom.trace import Step, step

HOURS_A_DAY = 24.0


def parked_draws(view: LoomView) -> tuple[tuple[str, float], ...]:
    """List what draws from the pack with the key off, in A on the pack side; NaN where it is not known.

    A meter with a tap fuse of its own is always on; the others rest behind the key.
    """
    facts = view.facts
    out = [("battery management", facts.job.pack.bms.standby)]
    if column := _converter_column(view):
        what = "the converter's amps asleep" if facts.sleeps else "the converter's idle amps"
        out.append((what, float(view.parts["converter"].number(column)[0]) / 1000))
    if facts.job.wishes.bus_stays_live:
        out.append(("the precharge resistor's ohms", _leak_a(view)))
    if "meter" in view.parts and "meter fuse" in view.parts:
        out.append(("the meter's supply amps", float(view.parts["meter"].number("supply_ma")[0]) / 1000))
    if column := _pilot_column(view):
        out.append(("the pilot lamp's amps", float(view.parts[PILOT].number(column)[0]) / 1000))
    if facts.sleeps:
        return tuple(out)  # what stays on at 12 V draws from the buffer battery
    parked = facts.budget.parked * facts.budget.rail_v / facts.margins.converter_efficiency
    return (*out, ("12 V loads that stay on", parked / facts.pack.nominal_v.low))


def _leak_a(view: LoomView) -> float:
    """Give what the controller's idle watts draw through a resistor that nothing opens.

    Where the resistor cannot pass them at any volts, its most is taken: half the pack's volts over it.
    """
    facts, part = view.facts, view.parts.get("precharge resistor")
    ohm, volts = float(part.number("resistance_ohm")[0]) if part else nan, facts.pack.nominal_v.low
    if isnan(ohm):
        return nan
    rest_v = left_after_precharge_v(resistance_ohm=ohm, voltage_v=volts, load_w=facts.job.controller.standby)
    return volts / (2 * ohm) if isnan(rest_v) else (volts - float(rest_v)) / ohm


def _converter_column(view: LoomView) -> str:
    """Name the figure of what the converter draws with the key off; "" where the key cuts its feed."""
    if view.facts.key_at == PACK or "converter" not in view.parts:
        return ""
    return "sleep_ma" if view.facts.sleeps else "quiescent_ma"


def _pilot_column(view: LoomView) -> str:
    """Name the figure of what the pilot lamp draws with the key off; "" where a contactor opens ahead of it."""
    return "current_ma" if PILOT in view.parts and not view.facts.job.wishes.contactor else ""


def parked_drain_a(view: LoomView) -> tuple[float, str]:
    """Add pack-side amps with the key off; name the first figure that is not known."""
    draws = parked_draws(view)
    unknown = next((what for what, amps in draws if isnan(amps)), "")
    return sum(amps for _, amps in draws if not isnan(amps)), unknown


def most_drawn(view: LoomView) -> str:
    """Name what draws most of what is known."""
    known = [(amps, what) for what, amps in parked_draws(view) if not isnan(amps)]
    return max(known)[1] if known else ""


def drawing_places(what: str) -> tuple[str, ...]:
    """Give the place of the part whose figure this is; none where it is no part's."""
    named = ("converter", "precharge resistor", "meter", PILOT)
    return tuple(place for place in named if what.startswith(f"the {place}'s"))


def parked_days(facts: Facts, drain_a: float) -> float:
    """Days until the allowed part of the pack is gone; no end without a drain, NaN without a capacity."""
    return facts.margins.drain_fraction * empty_days(facts, drain_a)


def empty_days(facts: Facts, drain_a: float) -> float:
    """Days from full until the cells are at their least; no end without a drain, NaN without a capacity.

    Formula: capacity / amps. Leaves out what the cells lose by themselves, and a management that opens sooner.
    """
    capacity_ah = facts.job.pack.capacity
    if capacity_ah is None:
        return nan
    return capacity_ah / drain_a / HOURS_A_DAY if drain_a else inf


def drain_limit_a(facts: Facts) -> float:
    """Amps that take the allowed part of the pack in just the allowed days; NaN without a capacity."""
    capacity_ah = facts.job.pack.capacity
    if capacity_ah is None:
        return nan
    return facts.margins.drain_fraction * capacity_ah / (facts.margins.drain_days * HOURS_A_DAY)


def days_figure(view: LoomView, days: float, drain_a: float) -> Span:
    """Give the days with how they were worked out."""
    facts = view.facts
    if not drain_a:
        return Span.fixed(days, "", "days: nothing draws from the pack")
    return Span.of(
        days,
        "",
        "days",
        lambda: step(
            "k * C / I / 24",
            k=facts.margins.of("drain_fraction"),
            C=Span.given(facts.job.pack.capacity or 0.0, "charge", "of the whole pack", "pack.capacity"),
            I=Span.of(drain_a, "current", "stays on with the key off", lambda: _drain_step(view)),
        ),
    )


def _drain_step(view: LoomView) -> Step:
    """Add what the battery management, the converter, the meter and the 12 V loads draw at the pack."""
    facts = view.facts
    inputs = {"I_bms": Span.given(facts.job.pack.bms.standby, "current", "battery management", "pack.bms.standby")}
    formula = ["I_bms"]
    if column := _converter_column(view):
        inputs["i_converter"] = view.parts["converter"].first(column)
        formula.append("i_converter / 1000")
    if "meter" in view.parts and "meter fuse" in view.parts:
        inputs["i_meter"] = view.parts["meter"].first("supply_ma")
        formula.append("i_meter / 1000")
    if facts.job.wishes.bus_stays_live:
        inputs["I_leak"] = _leak_figure(view)
        formula.append("I_leak")
    if column := _pilot_column(view):
        inputs["i_pilot"] = view.parts[PILOT].first(column)
        formula.append("i_pilot / 1000")
    margins = facts.margins
    if facts.sleeps:
        return Step(" + ".join(formula), inputs)
    inputs |= {
        "I_parked": state_figure(facts, "parked, key off"),
        "U_rail": margins.of("rail_volts", "voltage"),
        "eta": margins.of("converter_efficiency"),
        "U_pack": facts.pack.nominal_v,
    }
    return Step(f"{' + '.join(formula)} + I_parked * U_rail / eta / U_pack", inputs)


def _leak_figure(view: LoomView) -> Span:
    """Give the amps past the open contactor with how they were worked out."""
    watts, volts, ohm = view.facts.job.controller.standby, view.facts.pack.nominal_v, view.parts["precharge resistor"]
    passes = volts.low**2 >= 4 * float(ohm.number("resistance_ohm")[0]) * watts

    def traced() -> Step:
        inputs = {"U": volts, "R": ohm.first("resistance_ohm")}
        if not passes:
            return Step("U / (2 * R)", inputs)
        idle_w = Span.given(watts, "power", "controller's idle watts", "controller.standby")
        return Step("(U - (U ** 2 - 4 * R * P) ** 0.5) / (2 * R)", {**inputs, "P": idle_w})

    return Span.of(_leak_a(view), "current", "controller, through the precharge resistor", traced)
