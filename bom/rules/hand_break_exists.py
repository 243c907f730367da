"""Something that works by hand must open the pack.

Asks:     the job wishes for a hand isolator or a pack plug.
Why:      a welded contactor leaves nothing to open; nothing is safe for service or shipping.
Cure:     a link plug or a DC switch in reach.
Ignores:  what an inspector accepts: ask first.
Source:   common practice; national guides differ.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for a break by hand."""
    wishes = view.facts.job.wishes
    verdict = Verdict.PASS if wishes.isolator != "none" or wishes.pack_plug else Verdict.FAIL
    offered = wishes.isolator if wishes.isolator != "none" else "pack plug" if wishes.pack_plug else "none"
    return [
        LoomAnswer(
            "pack", verdict, "break by hand", offered, "one in reach", "a contactor can weld, and a controller fail on"
        )
    ]


RULE = LoomRule(judge)
