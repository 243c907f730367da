"""Every control lead that joins nothing must be capped.

Asks:     a cap stands for every lead that stays unused.
Why:      a spare supply lead shorts on the frame; one that looks like a lead or plug in use is joined in its
          place by the next hand at the bench.
Harm:     damage.
Says:     fail.
Cure:     a glue-lined cap on each, marked with its function, tied back out of the wet.
Ignores:  ways that stay empty in a plug: a cavity plug each.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import End

WHAT = "end of the unused lead"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for the cap of every unused lead."""
    return [_answer(end, view) for end in view.loom.leads.unused]


def _answer(end: End, view: LoomView) -> LoomAnswer:
    capped = f"{end.device} lead caps" in view.parts
    alike = ", ".join(other.label for other in view.loom.leads.look_alikes(end))
    because = f"it looks like the {alike}: mark it" if alike else "nothing joins it"
    verdict = Verdict.PASS if capped else Verdict.FAIL
    return LoomAnswer(end.name, verdict, WHAT, "capped" if capped else "open", "capped", because)


RULE = LoomRule(judge)
