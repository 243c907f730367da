"""A parked bike must not empty its pack.

Asks:     what stays on with the key off takes longer than 30 days for 20 % of the pack.
Why:      a pack below its lowest cell volts after a winter is dead, and may burn when charged.
Harm:     damage.
Says:     can't tell, tight.
Cure:     switch the converter off with the key, or unplug the pack in storage; print the days for the owner.
Ignores:  self-discharge of the cells.
Source:   common practice, no source.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.parked_drain import days_figure, drawing_places, most_drawn, parked_days, parked_drain_a
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Add the amps that stay on, at nominal volts, and count the days."""
    facts = view.facts
    drain_a, unknown = parked_drain_a(view)
    fraction, wanted = facts.margins.drain_fraction, facts.margins.drain_days
    needed, what = f"at least {wanted:g} days", f"days to lose {fraction:.0%}"
    because = f"{units.show(drain_a, 'current')} stay on with the key off"
    needs = facts.margins.of("drain_days")
    if facts.job.pack.capacity is None or unknown:
        datum = unknown or "the pack's capacity"
        lacks = (what, "not known", needed, because, datum, None, needs)
        return [LoomAnswer("parked bike", Verdict.CANT_TELL, *lacks, drawing_places(unknown))]
    days = parked_days(facts, drain_a)
    verdict = Verdict.PASS if days >= wanted else Verdict.TIGHT
    shown, offers = f"{min(days, 9999):.0f} days", days_figure(view, days, drain_a)
    at_fault = drawing_places(most_drawn(view)) if verdict > Verdict.PASS else ()
    told = (what, shown, needed, because, "", offers, needs)
    return [LoomAnswer("parked bike", verdict, *told, at_fault)]


RULE = LoomRule(judge)
