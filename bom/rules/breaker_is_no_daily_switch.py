"""A breaker is no daily switch.

Asks:     where the hand isolator is a breaker, a contactor does the daily opening and closing.
Why:      a breaker is made for few operations under load; opened and closed each day, with the inrush of the bus each
          time, its contacts wear until it no longer opens the one time it must.
Cure:     a contactor with precharge for every day, the breaker behind it for emergencies and service.
Harm:     damage.
Says:     tight.
Ignores:  the number of operations that its data sheet prints.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for what opens and closes each day."""
    wishes = view.facts.job.wishes
    if wishes.isolator != "breaker":
        return []
    verdict = Verdict.PASS if wishes.contactor else Verdict.TIGHT
    daily = "contactor" if wishes.contactor else "breaker"
    because = "few rated load operations, inrush every time"
    offers = said(daily, "wishes.contactor")
    return [LoomAnswer("isolator", verdict, "daily switch", daily, "a contactor", because, "", offers)]


RULE = LoomRule(judge)
