"""A parked bike must not empty its pack.

Asks:     what stays on with the key off takes longer than 30 days for 20 % of the pack.
Why:      a pack below its lowest cell volts after a winter is dead, and may burn when charged.
Cure:     switch the converter off with the key, or unplug the pack in storage; print the days for the owner.
Ignores:  self-discharge of the cells.
Source:   common practice, no source.
"""

from math import isnan

from bom import units
from bom.check.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

HOURS_A_DAY = 24.0


def judge(view: LoomView) -> list[LoomAnswer]:
    """Add the amps that stay on, at nominal volts, and count the days."""
    facts = view.facts
    capacity = facts.job.pack.capacity
    drain_a, unknown = parked_drain_a(view)
    fraction, wanted = facts.margins.drain_fraction, facts.margins.drain_days
    needed, what = f"at least {wanted:g} days", f"days to lose {fraction:.0%}"
    because = f"{units.show(drain_a, 'current')} stay on with the key off"
    if capacity is None or unknown:
        datum = unknown or "the pack's capacity"
        return [LoomAnswer("parked bike", Verdict.CANT_TELL, what, "not known", needed, because, datum)]
    days = fraction * capacity / drain_a / HOURS_A_DAY if drain_a else float("inf")
    verdict = Verdict.PASS if days >= wanted else Verdict.TIGHT
    return [LoomAnswer("parked bike", verdict, what, f"{min(days, 9999):.0f} days", needed, because)]


def parked_drain_a(view: LoomView) -> tuple[float, str]:
    """Add pack-side amps with the key off; name the first figure that is not known.

    A meter with a tap fuse of its own is always on; the others rest behind the key.
    """
    facts = view.facts
    total, unknown = facts.job.pack.bms.standby, ""
    if facts.key_at == "12 V" and "converter" in view.parts:
        idle = float(view.parts["converter"].number("quiescent_ma")[0]) / 1000
        unknown = "the converter's idle amps" if isnan(idle) else ""
        total += 0.0 if isnan(idle) else idle
    if "meter" in view.parts and "meter fuse" in view.parts:
        meter = float(view.parts["meter"].number("supply_ma")[0]) / 1000
        unknown = unknown or ("the meter's supply amps" if isnan(meter) else "")
        total += 0.0 if isnan(meter) else meter
    parked = facts.budget.states["parked, key off"] * facts.budget.rail_v / facts.margins.converter_efficiency
    return total + parked / facts.pack.nominal_v.low, unknown


RULE = LoomRule(judge)
