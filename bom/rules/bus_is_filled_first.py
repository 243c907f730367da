"""Nothing may close on empty bus capacitors.

Asks:     a contactor with a precharge path stands between the pack and the controller.
Why:      without it the plug or hand switch closes on a short for a millisecond: tips burn, plugs burst.
Harm:     fire.
Says:     fail.
Cure:     a contactor and precharge.
Ignores:  controllers with a precharge of their own: then measure, and note it.
Source:   common practice; makers' notes quote inrush above 1000 A, read second-hand on a public page.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for contactor and precharge."""
    wishes = view.facts.job.wishes
    verdict = Verdict.PASS if wishes.contactor and wishes.precharge else Verdict.FAIL
    offered = "contactor with precharge" if verdict == Verdict.PASS else "no precharge"
    amps = f"up to {view.facts.pack.fault_high_a} through the pack's resistance alone"
    return [
        LoomAnswer(
            "traction circuit",
            verdict,
            "filling of the bus",
            offered,
            "contactor with precharge",
            amps,
            offers=said(offered, "wishes.precharge"),
        )
    ]


RULE = LoomRule(judge)
