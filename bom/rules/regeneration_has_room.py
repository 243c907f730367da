"""Regeneration must find room in the pack.

Asks:     regeneration amps are at most the charge limit, and the over-voltage limit is known.
Why:      the battery management opens and the bus rises into controller, converter and lamps.
Cure:     less regeneration, a charge that ends below full, or none on a full pack.
Ignores:  cold cells, which take much less.
Source:   common practice, no source.
"""

from bom import units
from bom.check.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare regeneration with the charge limit; a bike without it is not asked."""
    control, limit = view.facts.job.controller, view.facts.job.pack.bms.charge
    if control.regen is None:
        return []
    needed = f"at least {units.show(control.regen, 'current')}"
    if limit is None:
        return [
            LoomAnswer(
                "regeneration",
                Verdict.CANT_TELL,
                "charge limit",
                "not known",
                needed,
                "regeneration amps of the controller",
                "the battery management's charge limit",
            )
        ]
    verdict = Verdict.PASS if limit >= control.regen else Verdict.FAIL
    return [
        LoomAnswer(
            "regeneration",
            verdict,
            "charge limit",
            units.show(limit, "current"),
            needed,
            "regeneration amps of the controller",
        )
    ]


RULE = LoomRule(judge)
