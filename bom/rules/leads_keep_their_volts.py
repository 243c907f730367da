"""No joint may put pack volts or 12 V where 5 V lives.

Asks:     what a lead, or a switch before it, brings is of no higher class than what the other lead lives on (5 V, 12 V,
          pack volts); no supply joins a ground or another supply; pack volts share no plug of a device with 5 V leads.
Why:      12 V on a ground-active brake input kills the controller's 5 V regulator, and throttle and halls with it;
          grips with a pack-volts gauge have put the pack on every 5 V lead when the plug was crossed or wet.
Harm:     damage.
Says:     fail, can't tell, tight.
Cure:     the input made for those volts, or a relay whose contact alone joins the two; a plug of its own for pack
          volts.
Ignores:  how far a lead survives above its class; a class is what its kind of signal says.
Source:   common practice, no source.
"""

from bom.judge.lead_figures import level_of, signal_of, unknown_signal
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import End, Join, Pairing
from bom.read.lead_kinds import FIVE, PACK

WHAT, SHELL = "volts on the joint", "plug with pack volts"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look at every joint, then at every plug that a device brings."""
    leads = view.loom.leads
    answers = [_joint(join, leads) for join in leads.joins if _has_volts(join, leads)]
    return [*answers, *_shells(leads)]


def _has_volts(join: Join, leads: Pairing) -> bool:
    """Tell whether volts live on an end, or may, or come through a contact; two grounds need no asking."""
    return any(end.level != 0 or _sources(end, leads) for end in join.ends)


def _joint(join: Join, leads: Pairing) -> LoomAnswer:
    for end in join.ends:
        if end.level is None:
            needed = "a known signal on both"
            return LoomAnswer(
                join.name, Verdict.CANT_TELL, WHAT, "not known", needed, f"the {end.name}", unknown_signal(end)
            )
    for end, other in (join.ends, join.ends[::-1]):
        for source in _sources(other, leads):
            answer = _meets(join, source, end)
            if answer.verdict is not Verdict.PASS:
                return answer
    return _meets(join, join.first, join.second) if "gives" not in _roles(join) else _given(join)


def _roles(join: Join) -> tuple[str, str]:
    return join.first.role, join.second.role


def _given(join: Join) -> LoomAnswer:
    giver = join.with_role("gives") or join.first
    other = join.second if giver == join.first else join.first
    return _meets(join, giver, other)


def _sources(end: End, leads: Pairing) -> list[End]:
    """List what brings volts through an end: itself, or what the other side of its contact is joined to."""
    if end.role != "contact":
        return [end] if end.role == "gives" else []
    beyond = [other for join in leads.other_contacts(end) for other in join.ends if other.device != end.device]
    return [other for other in beyond if other.role == "gives"]


def _meets(join: Join, source: End, end: End) -> LoomAnswer:
    """Judge what brings volts against where they arrive."""
    offers, needs = level_of(source), level_of(end, at_most=True)
    because = f"the {source.name} reaches the {end.name}"
    verdict = Verdict.PASS
    if source.role == "gives" and end.role in ("ground", "gives"):
        verdict, needs = Verdict.FAIL, signal_of(end)
        because = f"the {source.name} is joined to {'a ground' if end.role == 'ground' else 'another supply'}"
    elif source.role == "gives" and end.role == "takes" and (source.level or 0) > (end.level or 0):
        verdict = Verdict.FAIL
    elif end.role == "contact" or source.role != "gives":
        needs = offers
    return LoomAnswer(join.name, verdict, WHAT, offers.text, needs.text, because, "", offers, needs)


def _shells(leads: Pairing) -> list[LoomAnswer]:
    """Find plugs that a device brings in which pack volts lie beside 5 V leads."""
    ends = dict.fromkeys([*(end for join in leads.joins for end in join.ends if not end.outside), *leads.unused])
    answers = []
    for device, shell in dict.fromkeys((end.device, end.shell) for end in ends if end.shell):
        inside = [end for end in ends if (end.device, end.shell) == (device, shell)]
        high = next((end for end in inside if end.level == PACK), None)
        low = next((end for end in inside if end.level == FIVE), None)
        if high and low:
            offers, because = level_of(high), f"the {high.label} lies beside the {low.label}"
            answers.append(
                LoomAnswer(device, Verdict.TIGHT, SHELL, offers.text, "a plug of its own", because, "", offers)
            )
    return answers


RULE = LoomRule(judge)
