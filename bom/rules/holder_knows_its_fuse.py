"""A holder is chosen for a fuse; without the fuse it waits.

Asks:     the fuse that goes into each holder is chosen.
Why:      a holder fits one body of fuse: ordered before the fuse is known, it is ordered twice.
Harm:     order.
Says:     can't tell.
Cure:     settle the fuse first.
Ignores:  lugs and wires at a fuse not yet chosen, which follow its holder.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for holders for whose fuse none is chosen; a fuse box takes many and is judged by its ways."""
    answers = []
    for link in view.loom.links:
        if link.kind == "takes fuse" and link.first in view.parts and view.loom.place(link.first).family != "fuse_box":
            chosen = link.second in view.parts
            verdict, offered = (Verdict.PASS, "chosen") if chosen else (Verdict.CANT_TELL, "none chosen")
            datum = "" if chosen else f"which {link.second} it is to take"
            asked = ("its fuse", offered, "chosen", link.second, datum)
            answers.append(LoomAnswer(link.first, verdict, *asked, at_fault=(link.second,)))
    return answers


RULE = LoomRule(judge)
