"""No wire or contact may carry more in a solved state than its part was chosen for.

Asks:     in every state that stands, the solved amps of each wire, fuse and contact are at most its running amps,
          or 2 % above.
Why:      drop moves the amps, amps move the part, and the part moves the drop: where that does not come to rest,
          the part is too small.
Harm:     fire.
Says:     fail.
Cure:     a larger part at the place named, by its pin, or a shorter run.
Ignores:  bursts of the controller, which are judged as bursts.
Source:   nodal analysis, circuit theory; the 2 % is what set watts take more at the end of a wire, common practice.
"""

from bom import units
from bom.duties.envelope import own_duty
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict


def judge(view: LoomView) -> list[LoomAnswer]:
    """Name each place that carries more; else say how many states were compared."""
    from bom.circuit.exceeds import exceeds

    what = "running amps"
    answers = []
    for excess in exceeds(view):
        counted = own_duty(view.loom, view.facts, excess.place).carry_a.at_high()  # with its own trace
        answers.append(
            LoomAnswer(
                excess.place,
                Verdict.FAIL,
                what,
                units.show(excess.amps, "current"),
                f"at most {counted}",
                f"{excess.state}, solved with the parts that stand",
                offers=solved(excess.amps, "current", what, excess.state),
                needs=counted,
            )
        )
    because = "solved with the parts that stand, in every state"
    return answers or [LoomAnswer("whole loom", Verdict.PASS, what, "as counted", "as counted", because)]


RULE = LoomRule(judge)
