"""Regeneration must find room in the pack.

Asks:     regeneration amps are at most the charge limit; the over-voltage limit is known and stands above a full pack
          that takes regeneration amps. One that lies below the full pack at rest is told of the controller.
Why:      the battery management opens and the bus rises into controller, converter and lamps; a controller whose limit
          lies close over full charge will not brake on a full pack.
Harm:     damage.
Says:     fail, can't tell, tight.
Cure:     less regeneration, a charge that ends below full, or none on a full pack.
Ignores:  cold cells, which take much less.
Source:   common practice, no source.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare regeneration with the charge limit, and look for the over-voltage limit."""
    control, limit = view.facts.job.controller, view.facts.job.pack.bms.charge
    if control.regen is None:
        return []
    needed, because = f"at least {units.show(control.regen, 'current')}", "regeneration amps of the controller"
    regen = Span.given(control.regen, "current", because, "controller.regen")
    what, cut = "charge limit", "over-voltage limit"
    if limit is None:
        datum = "the battery management's charge limit"
        room = LoomAnswer("regeneration", Verdict.CANT_TELL, what, "not known", needed, because, datum, needs=regen)
    else:
        verdict = Verdict.PASS if limit >= control.regen else Verdict.FAIL
        offers = Span.given(limit, "current", what, "pack.bms.charge")
        shown = units.show(limit, "current")
        room = LoomAnswer("regeneration", verdict, what, shown, needed, because, offers=offers, needs=regen)
    if control.over_voltage is not None:
        above = control.over_voltage > view.facts.pack.full_charge_v.high
        return [room, _cut(view, control.over_voltage, regen)] if above else [room]
    datum = "the controller's over-voltage limit"
    return [room, LoomAnswer("regeneration", Verdict.CANT_TELL, cut, "not known", "a figure", "the bus rises", datum)]


def _cut(view: LoomView, limit_v: float, regen: Span) -> LoomAnswer:
    """Compare an over-voltage limit above the full pack with one that takes regeneration."""
    pack = view.facts.pack
    full_v = pack.full_charge_v.high
    braking_v = full_v + regen.low * pack.resistance_ohm.low
    verdict = Verdict.TIGHT if limit_v < braking_v else Verdict.PASS
    needed = f"at least {units.show(braking_v, 'voltage')}"
    because = "a full pack that takes the regeneration amps"
    offers = Span.given(limit_v, "voltage", "over-voltage limit", "controller.over_voltage")
    braking = Span.of(
        braking_v,
        "voltage",
        because,
        lambda: step("U_full + I * R", U_full=pack.full_charge_v, I=regen, R=pack.resistance_ohm.at_low()),
    )
    shown = units.show(limit_v, "voltage")
    return LoomAnswer(
        "regeneration", verdict, "over-voltage limit", shown, needed, because, offers=offers, needs=braking
    )


RULE = LoomRule(judge)
