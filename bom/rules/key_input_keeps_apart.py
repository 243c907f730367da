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
    """Look where the input that hangs on the 12 V chain comes back."""
    control = view.facts.job.controller
    if any(wire.end == STOP_INPUT for wire in view.loom.wires):
        return [_answer(STOP_INPUT, "stop input", control.stop_return, "controller.stop_return")]
    if control.key_input != "12 V":
        return []
    return [_answer("key input wire", "key input", control.key_return, "controller.key_return")]


def _answer(subject: str, name: str, comes_back: str | None, key: str) -> LoomAnswer:
    offered = comes_back or "not known"
    datum = "" if comes_back else f"where the controller's 12 V {name} returns (its diagram)"
    because = "pack and 12 V side must stay apart"
    what, offers = f"return of the {name}", said(offered, key)
    return LoomAnswer(subject, VERDICTS[comes_back], what, offered, "own terminal", because, datum, offers)


RULE = LoomRule(judge)
