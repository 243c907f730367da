"""A clamp must take the coil's kick, and stand beside no other.

Asks:     its peak watts are at least its clamp volts x the coil's pull-in amps; its clamp volts are at most 60 V; the
          coil has no suppression of its own.
Why:      a clamp too small shorts or opens at its first kick; one of 100 V saves no contact; a diode inside the coil
          makes it slow whatever stands beside it.
Harm:     damage.
Says:     fail, can't tell, tight.
Cure:     a two-way clamp of 18 to 30 V and 600 W; or none where the coil has its own.
Ignores:  how often it is switched.
Source:   the coil's amps go on through the clamp as it opens: algebra; 60 V by common practice, the least that thin
          contacts and closers are made for.
"""

from dataclasses import replace

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most, is_word
from bom.judge.rule import PairRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare watts and volts of the clamp, and look for another inside the coil."""
    watts = first.number("clamp_v")[:, None] * second.number("coil_pull_a")[None, :]

    def traced() -> Step:
        return step("U * I", U=first.first("clamp_v"), I=second.first("coil_pull_a"))

    kick = Demand.of(watts, "power", "its clamp volts x the coil's pull-in amps", traced)
    own = is_word("suppressed", second.words_of("suppressed"), ("no",), "one clamp is enough", other=Verdict.TIGHT)
    return [
        at_least("peak watts", first.rating("peak_w").down(), kick),
        at_most(
            "clamp volts",
            first.rating("clamp_v").down(),
            Span.fixed(MOST_V, "voltage", "what thin contacts and closers stand", "V"),
        ),
        replace(own, verdicts=own.verdicts[None, :], offered=own.offered[None, :]),
    ]


MOST_V = 60.0
RULE = PairRule("clamps", judge)
