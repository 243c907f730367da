"""With a buffer battery a dead converter must be noticed while the battery lasts.

Asks:     with a buffer battery something on the dash shows the volts of the 12 V side.
Why:      the battery carries on for hours or days; then contactor and lamps drop out on the road, the pack full.
Harm:     dark.
Says:     tight.
Cure:     a 12 V voltmeter behind the key: leave wishes.rail_meter unsaid, or say true.
Ignores:  who reads it; a pack gauge fed from 12 V shows the pack, not the rail.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for a meter on the rail beside a buffer battery."""
    wishes = view.facts.job.wishes
    if not wishes.buffer_battery:
        return []
    verdict = Verdict.PASS if wishes.shows_rail else Verdict.TIGHT
    offered = "a rail meter" if wishes.shows_rail else "nothing"
    because = "the buffer battery hides it until it is flat"
    offers = said(offered, "wishes.rail_meter")
    what, needed = "shows the rail's volts", "a meter or telltale on the dash"
    return [LoomAnswer("12 V supply", verdict, what, offered, needed, because, offers=offers)]


RULE = LoomRule(judge)
