"""The controller's supply window must cover the pack, full and sagged.

Asks:     its highest supply is at least the highest bus volts, its lowest at most the sagged volts; its over-voltage
          limit, where it has one, stands above a full pack.
Why:      an over-full bus kills it on the first charge; a sagged one makes it cut out at full throttle; a limit at or
          below full charge trips it with the pack just charged, with regeneration or without.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a controller for that pack, or fewer cells.
Ignores:  spikes inside its own capacitors.
Source:   common practice, no source.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare both ends of the window."""
    control, pack = view.facts.job.controller, view.facts.pack
    window = [
        _answer("highest supply volts", "supply_max", control.supply_max, pack.highest_bus_v, at_least=True),
        _answer("lowest supply volts", "supply_min", control.supply_min, pack.lowest_sag_v, at_least=False),
    ]
    return window if control.over_voltage is None else [*window, _limit(control.over_voltage, pack.full_charge_v)]


def _limit(limit_v: float, full: Span) -> LoomAnswer:
    """Compare the over-voltage limit with a full pack at rest; at the limit itself it trips."""
    what = "over-voltage limit"
    verdict = Verdict.PASS if limit_v > full.high else Verdict.FAIL
    offers = Span.given(limit_v, "voltage", what, "controller.over_voltage")
    shown, needed = units.show(limit_v, "voltage"), f"over {full}"
    cure = "raise the controller's limit, or fewer cells."
    because = f"full pack, {full.because}"
    return LoomAnswer("controller", verdict, what, shown, needed, because, offers=offers, needs=full, cure=cure)


def _answer(what: str, key: str, limit: float | None, volts: Span, *, at_least: bool) -> LoomAnswer:
    needed = f"at {'least' if at_least else 'most'} {volts}"
    if limit is None:
        return LoomAnswer(
            "controller",
            Verdict.CANT_TELL,
            what,
            "not known",
            needed,
            volts.because,
            f"the controller's {what}",
            needs=volts,
        )
    good, bad = (limit >= volts.high, limit < volts.low) if at_least else (limit <= volts.low, limit > volts.high)
    verdict = Verdict.PASS if good else Verdict.FAIL if bad else Verdict.CANT_TELL
    datum = volts.datum if verdict == Verdict.CANT_TELL else ""
    offers = Span.given(limit, "voltage", what, f"controller.{key}")
    shown = units.show(limit, "voltage")
    return LoomAnswer("controller", verdict, what, shown, needed, volts.because, datum, offers, volts)


RULE = LoomRule(judge)
