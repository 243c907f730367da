"""A controller woken at 12 V must not bond the 12 V side to the pack.

Asks:     its 12 V key input, or stop input, returns by a terminal of its own, not by the controller's pack minus.
Why:      through pack minus the whole 12 V side, and a frame that lamps return by, stand at the pack's minus:
          one chafed plus then meets a person who holds the frame.
Harm:     shock.
Says:     fail, can't tell.
Cure:     the key input at pack volts through a relay, or a controller with an isolated 12 V input.
Ignores:  display and throttle leads, which belong to pack minus: keep them off the frame.
Source:   common practice, no source.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

STOP_INPUT = "controller stop input"
VERDICTS = {"own terminal": Verdict.PASS, "pack minus": Verdict.FAIL, None: Verdict.CANT_TELL}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look where the key input comes back."""
    if any(wire.end == STOP_INPUT for wire in view.loom.wires):
        return [_stop_input()]
    control = view.facts.job.controller
    if control.key_input != "12 V":
        return []
    offered = control.key_return or "not known"
    datum = "" if control.key_return else "where the controller's 12 V key input returns (its diagram)"
    because = "pack and 12 V side must stay apart"
    verdict = VERDICTS[control.key_return]
    offers = said(offered, "controller.key_return")
    what = "return of the key input"
    return [LoomAnswer("key input wire", verdict, what, offered, "own terminal", because, datum, offers)]


def _stop_input() -> LoomAnswer:
    """Nothing but the controller's stop input hangs on the chain: its volts and its return are the controller's own."""
    datum = "what volts the controller's stop input takes and where it returns (its diagram)"
    because = "pack and 12 V side must stay apart"
    return LoomAnswer(STOP_INPUT, Verdict.CANT_TELL, "return of the stop input", "not known", "its own", because, datum)


RULE = LoomRule(judge)
