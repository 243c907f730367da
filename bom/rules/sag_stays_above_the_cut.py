"""The pack must not sag to the battery management's low cut while a fifth of its charge is left.

Asks:     cells at rest with a fifth of their charge, less the controller's peak amps through the pack's
          resistance, stay at or above the low cut; below it at peak is tight, at the continuous amps it fails.
Why:      at full throttle the management opens, lets go, and closes again when released: no drive in traffic.
Cure:     a lower amps limit in the controller, a lower cut as far as the cells allow, or more cells side by side.
Harm:     stranded.
Says:     fail, can't tell, tight.
Ignores:  the management's delay, cold (resistance rises), and a single weak cell, which reaches its cut first.
Source:   Ohm's law; the fifth by common practice, no source.
"""

from bom.duties.circuits import given_amps
from bom.duties.sag import low_cut_v, sagged_v
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare at peak, and at the continuous amps, by both ends of what is not known."""
    facts = view.facts
    control, cut = facts.job.controller, low_cut_v(facts)
    peak = sagged_v(facts, given_amps(control.battery_peak, "controller's peak", "controller.battery_peak"))
    steady = sagged_v(
        facts, given_amps(control.battery_continuous, "controller's continuous amps", "controller.battery_continuous")
    )
    best, worst = _at(peak.high, steady.high, cut.low), _at(peak.low, steady.low, cut.high)
    verdict = best if best == worst else Verdict.CANT_TELL
    shown = steady if best == Verdict.FAIL else peak
    because = shown.because
    if verdict == Verdict.TIGHT:
        because += ": volts dip to cut-off at full load and return on release"
    datum = (cut.datum or peak.datum) if verdict == Verdict.CANT_TELL else ""
    what = "volts at the continuous amps" if shown is steady else "volts at full load"
    return [LoomAnswer("battery management", verdict, what, str(shown), f"at least {cut}", because, datum, shown, cut)]


def _at(peak_v: float, steady_v: float, cut_v: float) -> Verdict:
    """Judge one end of what is not known."""
    return Verdict.FAIL if steady_v < cut_v else Verdict.TIGHT if peak_v < cut_v else Verdict.PASS


RULE = LoomRule(judge)
