"""A bike that is plugged in must not drive off.

Asks:     a switch under the charge port's cap opens the feed of the contactor or of the key input; charging at the
          pack's own plug is tight, for want of a listed plug and fuse.
Why:      a bike that drives off tears a live lead out of the wall.
Harm:     runaway.
Says:     tight.
Cure:     the switch under the cap in the coil chain, or charge at the pack plug.
Ignores:  a charger that powers its own interlock line; the pins of the port, which stay live under the cap.
Source:   UN R136 (no movement by its own drive while connected for charging), from memory; common practice.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for what blocks the drive."""
    wishes = view.facts.job.wishes
    if not wishes.charge_port and not wishes.charger:
        return []
    fed = {"contactor coil plus", "key input relay coil plus", "controller key input"}
    chained = any(wire.end in fed and view.loom.place(wire.name).circuit == "key control" for wire in view.loom.wires)
    if wishes.charge_port and chained:
        verdict, offered, because = Verdict.PASS, "the cap's switch", "it opens the feed of what lets the bike drive"
    elif wishes.charge_port:
        verdict, offered, because = Verdict.TIGHT, "the cap's switch", "it reaches only the controller's stop input"
    elif wishes.pack_plug:
        because = "pulled to charge; its mating half and a fuse for the charger's lead are in no list here"
        verdict, offered = Verdict.TIGHT, "the pack plug"
    else:
        verdict, offered, because = Verdict.TIGHT, "nothing", "there is neither a charge port nor a pack plug"
    offers = said(offered, "wishes.charge_port" if wishes.charge_port else "wishes.pack_plug")
    return [
        LoomAnswer(
            "charging", verdict, "what blocks the drive", offered, "something that must open", because, offers=offers
        )
    ]


RULE = LoomRule(judge)
