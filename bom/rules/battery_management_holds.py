"""The battery management must let controller and converter draw together.

Asks:     continuous controller amps and the converter's are at most 85 % of the discharge limit.
Why:      it opens at full throttle and the rider loses drive in traffic.
Harm:     dark.
Says:     fail, can't tell, tight.
Cure:     a lower limit in the controller, or a stronger battery management.
Ignores:  its delay; bursts shorter than that pass.
Source:   common practice, no source.
"""

from bom import units
from bom.duties.circuit_traces import converter_watts
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare the sum with the limit."""
    job, facts = view.facts.job, view.facts
    twelve = facts.budget.worst[1] * facts.budget.rail_v / facts.margins.converter_efficiency
    asked = job.controller.battery_continuous + twelve / facts.pack.nominal_v.low
    limit = job.pack.bms.discharge
    needed = f"at least {units.show(asked / facts.margins.bms_fraction, 'current')}"
    because = f"{asked:.1f} A of controller and converter over {facts.margins.bms_fraction:.0%}"
    what = "discharge limit"
    needs = Span.of(
        asked / facts.margins.bms_fraction,
        "current",
        "controller and converter",
        lambda: step(
            "(I_controller + P / U) / k",
            I_controller=Span.given(
                job.controller.battery_continuous, "current", "continuous", "controller.battery_continuous"
            ),
            P=converter_watts(facts, twelve),
            U=facts.pack.nominal_v,
            k=facts.margins.of("bms_fraction"),
        ),
    )
    if limit is None:
        return [
            LoomAnswer(
                "battery management",
                Verdict.CANT_TELL,
                what,
                "not known",
                needed,
                because,
                "the battery management's continuous discharge limit",
                needs=needs,
            )
        ]
    good = limit * facts.margins.bms_fraction >= asked
    verdict = Verdict.PASS if good else Verdict.TIGHT if limit >= asked else Verdict.FAIL
    offers = Span.given(limit, "current", what, "pack.bms.discharge")
    shown = units.show(limit, "current")
    return [LoomAnswer("battery management", verdict, what, shown, needed, because, offers=offers, needs=needs)]


RULE = LoomRule(judge)
