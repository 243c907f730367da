"""The controller's supply window must cover the pack, full and sagged.

Asks:     its highest supply is at least the highest bus volts, its lowest at most the sagged volts.
Why:      an over-full bus kills it on the first charge; a sagged one makes it cut out at full throttle.
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
    return [
        _answer("highest supply volts", "supply_max", control.supply_max, pack.highest_bus_v, at_least=True),
        _answer("lowest supply volts", "supply_min", control.supply_min, pack.lowest_sag_v, at_least=False),
    ]


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
