"""A bike that is plugged in must not drive off.

Asks:     a switch under the charge port's cap opens the coil chain; or the charger hangs on the pack's own plug,
          which is then out of the bike.
Why:      a bike that drives off tears a live lead out of the wall.
Cure:     the switch under the cap in the coil chain, or charge at the pack plug.
Ignores:  a charger that powers its own interlock line; the pins of the port, which stay live under the cap.
Source:   UN R136 (no movement by its own drive while connected for charging), from memory; common practice.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for what blocks the drive."""
    wishes = view.facts.job.wishes
    if not wishes.charge_port and not wishes.charger:
        return []
    if wishes.charge_port:
        verdict, offered, because = Verdict.PASS, "the cap's switch", "it opens the coils' feed"
    elif wishes.pack_plug:
        verdict, offered, because = Verdict.PASS, "the pack plug", "it is pulled to charge"
    else:
        verdict, offered, because = Verdict.TIGHT, "nothing", "there is neither a charge port nor a pack plug"
    return [LoomAnswer("charging", verdict, "what blocks the drive", offered, "something that must open", because)]


RULE = LoomRule(judge)
