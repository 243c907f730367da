"""Regeneration must find room in the pack.

Asks:     regeneration amps are at most the charge limit, and the over-voltage limit is known.
Why:      the battery management opens and the bus rises into controller, converter and lamps.
Cure:     less regeneration, a charge that ends below full, or none on a full pack.
Ignores:  cold cells, which take much less.
Source:   common practice, no source.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare regeneration with the charge limit, and look for the over-voltage limit."""
    control, limit = view.facts.job.controller, view.facts.job.pack.bms.charge
    if control.regen is None:
        return []
    needed, because = f"at least {units.show(control.regen, 'current')}", "regeneration amps of the controller"
    what, cut = "charge limit", "over-voltage limit"
    if limit is None:
        datum = "the battery management's charge limit"
        room = LoomAnswer("regeneration", Verdict.CANT_TELL, what, "not known", needed, because, datum)
    else:
        verdict = Verdict.PASS if limit >= control.regen else Verdict.FAIL
        room = LoomAnswer("regeneration", verdict, what, units.show(limit, "current"), needed, because)
    if control.over_voltage is not None:
        return [room]
    datum = "the controller's over-voltage limit"
    return [room, LoomAnswer("regeneration", Verdict.CANT_TELL, cut, "not known", "a figure", "the bus rises", datum)]


RULE = LoomRule(judge)
