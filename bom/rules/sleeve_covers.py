"""Heat-shrink must pass over the lug and grip the cable.

Asks:     it is heat-shrink, as supplied wide enough for the barrel (1.3 x the cable) and shrunk narrower than
          the cable; it stands the temperature that terminals are counted at.
Why:      a sleeve that does not grip lets water into the crimp and the barrel touch its neighbour.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the next size, or a 3:1 type.
Ignores:  glue lining.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most, same_word
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare both ends of its range with the cable's outside."""
    outside = second.number("outside_mm")[None, :]

    def traced() -> Step:
        return step("k * D", k=margins.of("barrel_over_cable"), D=second.first("outside_mm"))

    limit = margins.of("terminal_c", "temperature", "temperature of terminals")
    return [
        at_least("temperature limit", first.rating("max_c").down(), limit),
        same_word("kind", first.words_of("kind"), "heat-shrink", "it must shrink"),
        at_least(
            "inside as supplied, mm",
            first.rating("inside_max_mm").down(),
            Demand.of(outside * margins.barrel_over_cable, "", "barrel of the lug", traced),
        ),
        at_most(
            "inside when shrunk, mm",
            first.rating("inside_min_mm").down(),
            Demand.of(outside, "", "outside of the cable", second.cell("outside_mm")),
        ),
    ]


RULE = PairRule("shrinks over", judge)
