"""A traction minus that comes off must not find a way home through a thin lead.

Asks:     with each wire of the traction return open in turn, and a bond that should not be (the controller's signal
          ground on the 12 V minus, as a display or brake lead may join it; the pack's minus touching the frame),
          no thin lead or wire carries more than it may.
Why:      the controller's minus and its throttle ground are one inside. Where the converter shares its minus with
          the pack, the motor's amps then come home through throttle, converter and key: no fuse is in that way.
Harm:     fire.
Says:     fail, can't tell, tight.
Cure:     an isolated converter; or signal leads that meet no 12 V minus; the return bolted, checked, marked.
Ignores:  controllers whose signal side is isolated: measure, minus to signal ground, with everything unplugged.
Source:   circuit theory; the join is common practice inside controllers, no source.
"""

from typing import TYPE_CHECKING

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.physics.isolation import is_above_low_voltage
from bom.span import Span

if TYPE_CHECKING:
    from bom.circuit.opens import StrayReturn


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare the worst way home with what a thin lead carries."""
    if not view.walks.strays or "converter" not in view.parts:
        return []
    worst = max(view.walks.strays, key=lambda stray: stray.over)
    what = "amps through a thin way home"
    offers = solved(worst.amps, "current", what, f"{worst.wire} open, {worst.bond}")
    needs = _may(view, worst)
    if worst.over <= 1.0:
        because = "each return open in turn, with each bond that should not be"
        return [LoomAnswer("traction return", Verdict.PASS, what, "none too much", "none too much", because)]
    above = bool(is_above_low_voltage(voltage_v=view.facts.pack.highest_bus_v.high))
    unknown = view.parts["converter"].word("isolated")[0] == ""
    verdict = Verdict.CANT_TELL if unknown else Verdict.FAIL if above else Verdict.TIGHT
    return [
        LoomAnswer(
            worst.wire,
            verdict,
            what,
            units.show(worst.amps, "current"),
            f"at most {needs}",
            f"{worst.wire} off and {worst.bond}: home through the {worst.through}; no fuse sees it",
            "whether the converter is isolated (ohms, minus to minus, unplugged)" if unknown else "",
            offers,
            needs,
            ("converter",),
        )
    ]


def _may(view: LoomView, stray: "StrayReturn") -> Span:
    """Give what the thin lead or wire may carry."""
    if stray.by_signal_lead:
        return view.facts.margins.of("signal_ground_a", "current")
    return solved(stray.may_a, "current", f"ampacity of the {stray.through}", stray.through)


RULE = LoomRule(judge)
