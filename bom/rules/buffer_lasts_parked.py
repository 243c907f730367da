"""A buffer battery that feeds a parked bike must last as long as the pack would.

Asks:     where the converter sleeps with the key off, what stays on at 12 V takes longer than 30 days for half of the
          buffer battery.
Why:      the key wakes the converter from this battery: once it is flat, nothing wakes the bike.
Harm:     stranded.
Says:     can't tell, tight.
Cure:     a load that stays on behind the key, a larger battery, or a converter that is always on.
Ignores:  self-discharge of the battery and its age.
Source:   common practice, no source; a lead battery is kept above half.
"""

from math import inf, isnan

from bom import units
from bom.duties.load_traces import state_figure
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step

HOURS_A_DAY = 24.0
BATTERY = "buffer battery"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Count the days that half of the battery lasts."""
    facts = view.facts
    if not facts.sleeps or BATTERY not in view.parts:
        return []
    wanted, share = facts.margins.drain_days, facts.margins.buffer_fraction
    drain_a, capacity = facts.budget.parked, view.parts[BATTERY].first("capacity_ah")
    needed, what = f"at least {wanted:g} days", f"days to lose {share:.0%}"
    because = f"{units.show(drain_a, 'current')} stay on at 12 V with the key off"
    needs = facts.margins.of("drain_days")
    if isnan(capacity.low):
        datum = "the part's capacity"
        return [LoomAnswer(BATTERY, Verdict.CANT_TELL, what, "not known", needed, because, datum, needs=needs)]
    days = share * capacity.low / drain_a / HOURS_A_DAY if drain_a else inf
    offers = Span.of(
        days,
        "",
        "days",
        lambda: step(
            "k * C / I / 24",
            k=facts.margins.of("buffer_fraction"),
            C=capacity,
            I=state_figure(facts, "parked, key off"),
        ),
    )
    if not drain_a:
        offers = Span.fixed(days, "", "days: nothing at 12 V stays on")
    verdict = Verdict.PASS if days >= wanted else Verdict.TIGHT
    shown = f"{min(days, 9999):.0f} days"
    return [LoomAnswer(BATTERY, verdict, what, shown, needed, because, offers=offers, needs=needs)]


RULE = LoomRule(judge)
