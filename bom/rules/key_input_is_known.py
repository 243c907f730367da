"""The volts that wake the controller must be said.

Asks:     the job says what its key input takes: pack volts, 12 V, or that it has none.
Why:      pack volts into a 12 V input burn it; 12 V into one for pack volts never wake it.
Cure:     ask, or read its diagram or label, then say controller.key_input; do not join its wire until then.
Harm:     damage.
Says:     can't tell.
Ignores:  its milliamps, which are assumed where they are not said.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

DATUM = "volts and milliamps of the controller's key input"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look whether the job says it; unsaid, it is laid for pack volts."""
    control = view.facts.job.controller
    known = "key_input" in control.model_fields_set
    verdict, datum = (Verdict.PASS, "") if known else (Verdict.CANT_TELL, DATUM)
    shown = control.key_input if known else f"not said, laid for {control.key_input}"
    offers = said(shown, "controller.key_input")
    return [LoomAnswer("controller", verdict, "key input", shown, "said", "what wakes it", datum, offers)]


RULE = LoomRule(judge)
