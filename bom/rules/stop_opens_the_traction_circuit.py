"""The stop switch must be able to open the traction circuit.

Asks:     a contactor, whose coil the stop switch feeds, stands in it.
Why:      without one the stop switch only asks the controller, which may be what has failed.
Harm:     runaway.
Says:     tight.
Cure:     a contactor.
Ignores:  the hand isolator, which a falling rider does not reach.
Source:   common practice; national guides differ.
"""

from bom.judge.loom_view import LoomAnswer, LoomView, said
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Look for the contactor."""
    if view.facts.job.wishes.contactor:
        return [
            LoomAnswer(
                "stop switch",
                Verdict.PASS,
                "what it opens",
                "the contactor",
                "the traction circuit",
                "its coil is fed through it",
                offers=said("the contactor", "wishes.contactor"),
            )
        ]
    return [
        LoomAnswer(
            "stop switch",
            Verdict.TIGHT,
            "what it opens",
            "the controller's logic",
            "the traction circuit",
            "there is no contactor",
            offers=said("the controller's logic", "wishes.contactor"),
        )
    ]


RULE = LoomRule(judge)
