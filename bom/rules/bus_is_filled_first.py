"""Nothing may close on empty bus capacitors.

Asks:     a contactor with a precharge path stands between the pack and the controller; or, without either, the pack
          plug is all that closes and mates live, which it does through a resistor of its own.
Why:      without it the plug or hand switch closes on a short for a millisecond: tips burn, plugs burst.
Harm:     fire.
Says:     fail.
Cure:     a contactor and precharge; on a small bike a pre-charging plug and no other isolator.
Ignores:  controllers with a precharge of their own: then measure, and note it.
Source:   common practice; makers' notes quote inrush above 1000 A, read second-hand on a public page.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for contactor and precharge, or for a plug that fills the bus by itself."""
    wishes = view.facts.job.wishes
    if wishes.contactor and wishes.precharge:
        verdict, offered, key = Verdict.PASS, "contactor with precharge", "wishes.precharge"
    elif not wishes.contactor and _plug_fills_it(view):
        verdict, offered, key = Verdict.PASS, "a plug that mates live", "wishes.isolator"
    else:
        verdict, offered, key = Verdict.FAIL, "no precharge", "wishes.precharge"
    amps = f"up to {view.facts.pack.fault_high_a} through the pack's resistance alone"
    return [
        LoomAnswer(
            "traction circuit",
            verdict,
            "filling of the bus",
            offered,
            "contactor with precharge",
            amps,
            offers=said(offered, key),
        )
    ]


def _plug_fills_it(view: LoomView) -> bool:
    """Tell whether the pack plug is the only thing that closes, and fills the bus as it mates."""
    alone = view.facts.job.wishes.isolator == "none"
    return alone and "pack plug" in view.parts and view.parts["pack plug"].word("mates_live")[0] == "yes"


RULE = LoomRule(judge)
