"""A throttle that loses its ground must not mean full throttle.

Asks:     the throttle's ground is joined; the controller stops on a throttle signal above its range.
Why:      with its ground open a hall throttle's signal rises to its supply, 4 V and more: the controller reads full
          throttle.
Harm:     runaway.
Says:     fail, can't tell, tight.
Cure:     turn the controller's own high-throttle protection on; check the ground joint first, wheel raised: pull it and
          see the wheel stop.
Ignores:  throttles with two signals that are compared.
Source:   common practice, no source; builders report 4.25 V with the ground open.
"""

from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import End, Join, Pairing
from bom.read.job import JobFile
from bom.trace import Fact, Origin

GROUND, LOST = "ground of the throttle", "what a lost ground does"
KEY = "devices.stops_on_high_throttle"
VERDICTS = {True: Verdict.PASS, False: Verdict.TIGHT, None: Verdict.CANT_TELL}
WORDS = {True: "stops", False: "full throttle", None: "not known"}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look at every throttle signal that reaches a controller."""
    leads, answers = view.loom.leads, []
    for join in leads.joins:
        if join.first.function == "throttle signal" and join.first.kind == "controller":
            answers += [_ground(join, leads), _lost(join, view.facts.job)]
    return answers


def _ground(join: Join, leads: Pairing) -> LoomAnswer:
    joined = _grounded(join.second, join.first, leads)
    offered = "joined" if joined else "open"
    verdict = Verdict.PASS if joined else Verdict.FAIL
    return LoomAnswer(join.name, verdict, GROUND, offered, "joined", f"ground lead of the {join.second.device}")


def _grounded(throttle: End, control: End, leads: Pairing) -> bool:
    met = [join for join in leads.joins_with(throttle.device) if control.device in (join.first.device,)]
    return any(join.first.role == join.second.role == "ground" for join in met)


def _lost(join: Join, job: JobFile) -> LoomAnswer:
    device = next(device for device in job.devices if device.name == join.first.device)
    stops = device.stops_on_high_throttle
    offers = Fact(WORDS[stops], stops, Origin("job", KEY, device.name))
    datum = "" if stops is not None else f"whether the {device.name} stops on a throttle signal above its range"
    because = "the signal rises to its supply"
    return LoomAnswer(join.name, VERDICTS[stops], LOST, offers.text, "stops", because, datum, offers)


RULE = LoomRule(judge)
