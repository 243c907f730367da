"""A button or brake switch of a ground-active input needs a ground lead of that controller; a momentary one its own.

Asks:     the other side of the contact joins a ground lead of the same device as the input; that ground is not the
          throttle's; a momentary function has one to itself.
Why:      ground-active inputs work against the controller's own ground: the frame is none. A lost ground that the
          throttle shares opens the throttle and takes the brake's cut with it.
Harm:     runaway.
Says:     fail, tight.
Cure:     lead the other side of the contact to the function's own ground, or splice into a signal ground.
Ignores:  inputs that take 12 V or pack volts.
Source:   common practice, no source.
"""

from bom.judge.lead_figures import signal_of
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import End, Join, Pairing

WHAT = "ground of the contact"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Follow the contact of every ground-active input to its ground."""
    answers = []
    for join in view.loom.leads.joins:
        taker = join.with_role("takes")
        other = join.second if taker == join.first else join.first
        if taker and taker.signal == "ground-active" and other.role == "contact":
            answers.append(_answer(join, taker, other, view.loom.leads))
    return answers


def _answer(join: Join, taker: End, contact: End, leads: Pairing) -> LoomAnswer:
    ground = _ground(taker, contact, leads)
    needs = signal_of(taker)
    if ground is None:
        because = f"the other side of the {contact.device} leads to no ground of the {taker.device}"
        return LoomAnswer(join.name, Verdict.FAIL, WHAT, "none", "a ground of its own", because, "", None, needs)
    sharing = [end for met in leads.joins_of(ground) for end in met.ends if end.device not in _devices(ground, contact)]
    throttle = ground.function == "throttle ground" or any(end.function == "throttle ground" for end in sharing)
    verdict = Verdict.TIGHT if throttle or (taker.momentary and sharing) else Verdict.PASS
    offered = f"the {ground.label}"
    because = f"shared with the {', '.join(end.device for end in sharing)}" if sharing else "no other device uses it"
    if throttle and not sharing:
        because = "it is the throttle's"
    return LoomAnswer(join.name, verdict, WHAT, offered, "a ground of its own", because)


def _devices(*ends: End) -> set[str]:
    return {end.device for end in ends}


def _ground(taker: End, contact: End, leads: Pairing) -> End | None:
    """Find the ground lead of the input's device that the contact's other side is joined to."""
    met = (end for join in leads.joins_with(contact.device) for end in join.ends)
    return next((end for end in met if end.device == taker.device and end.role == "ground"), None)


RULE = LoomRule(judge)
