"""A traction minus that comes off must not find a way home through a thin lead.

Asks:     with each wire of the traction return open in turn, and the controller's signal ground joined to the 12 V
          minus, as a display or brake lead may join it, that lead carries no more than a thin lead may.
Why:      the controller's minus and its throttle ground are one inside. Where the converter shares its minus with
          the pack, the motor's amps then come home through throttle, converter and key: no fuse is in that way.
Cure:     an isolated converter; or signal leads that meet no 12 V minus; the return bolted, checked, marked.
Ignores:  controllers whose signal side is isolated: measure, minus to signal ground, with everything unplugged.
Source:   circuit theory; the join is common practice inside controllers, no source.
"""

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.physics.isolation import is_above_low_voltage


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare the worst way home with what a thin lead carries."""
    if not view.walks.strays or "converter" not in view.parts:
        return []
    worst = max(view.walks.strays, key=lambda stray: round(stray.amps, 3))
    what = "amps through a signal ground"
    amps = round(worst.amps, 6)
    offers = solved(amps, "current", what, f"{worst.wire} open")
    needs = view.facts.margins.of("signal_ground_a", "current")
    if worst.amps <= worst.may_a:
        because = "each return open in turn; the converter keeps pack and 12 V apart"
        return [
            LoomAnswer(
                "traction return",
                Verdict.PASS,
                what,
                units.show(amps, "current"),
                f"at most {worst.may_a:g} A",
                because,
                offers=offers,
                needs=needs,
            )
        ]
    above = bool(is_above_low_voltage(voltage_v=view.facts.pack.highest_bus_v.high))
    unknown = view.parts["converter"].word("isolated")[0] == ""
    verdict = Verdict.CANT_TELL if unknown else Verdict.FAIL if above else Verdict.TIGHT
    return [
        LoomAnswer(
            worst.wire,
            verdict,
            what,
            units.show(amps, "current"),
            f"at most {worst.may_a:g} A",
            f"with {worst.wire} off, home by signal ground and converter; no fuse sees it",
            "whether the converter is isolated (ohms, minus to minus, unplugged)" if unknown else "",
            offers,
            needs,
        )
    ]


RULE = LoomRule(judge)
