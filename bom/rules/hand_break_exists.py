"""Something that works by hand must open the pack.

Asks:     the job wishes for a hand isolator or a pack plug; a pack plug that is the only break, without a
          contactor before it, may be parted live.
Why:      a welded contactor leaves nothing to open; nothing is safe for service or shipping.
Harm:     runaway.
Says:     fail, can't tell.
Cure:     a link plug or a DC switch in reach.
Ignores:  what an inspector accepts: ask first.
Source:   common practice; national guides differ.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for a break by hand."""
    wishes = view.facts.job.wishes
    verdict = Verdict.PASS if wishes.isolator != "none" or wishes.pack_plug else Verdict.FAIL
    offered = wishes.isolator if wishes.isolator != "none" else "pack plug" if wishes.pack_plug else "none"
    key = "wishes.isolator" if wishes.isolator != "none" else "wishes.pack_plug"
    because = "a contactor can weld, and a controller fail on"
    answers = [
        LoomAnswer("pack", verdict, "break by hand", offered, "one in reach", because, offers=said(offered, key))
    ]
    if wishes.isolator == "none" and not wishes.contactor and "pack plug" in view.parts:
        answers.append(_parted(view.parts["pack plug"].word("mates_live")[0]))
    return answers


def _parted(mates_live: str) -> LoomAnswer:
    """Judge a plug that is all there is to open a running bike."""
    verdict = {"yes": Verdict.PASS, "no": Verdict.FAIL}.get(mates_live, Verdict.CANT_TELL)
    datum = "" if mates_live else "whether the pack plug may be parted live"
    because = "nothing else opens the running circuit"
    return LoomAnswer("pack plug", verdict, "parted live", mates_live or "not known", "yes", because, datum)


RULE = LoomRule(judge)
