"""A closer must carry the coils it feeds.

Asks:     its output amps are at least the coil's pull-in amps.
Why:      economised coils pull several amps for a tenth of a second and kill a small output.
Harm:     damage.
Says:     fail, can't tell.
Cure:     a stronger closer, or a relay between.
Ignores:  the clamp across the coil, which is judged by itself; both coils at once, which it never feeds.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare output and coil amps."""
    pull = second.number("coil_pull_a")[None, :]
    coil = Demand.of(pull, "current", "pull-in amps of the coil", second.cell("coil_pull_a"))
    return [at_least("output amps", first.rating("output_a").down(), coil)]


RULE = PairRule("drives", judge)
