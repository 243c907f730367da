"""A lug's hole must be the size of the stud it goes on.

Asks:     lug and stud have the same metric size.
Why:      a hole too large loses half its contact face; one too small does not go on.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the lug with that hole.
Ignores:  the width of the lug beside its neighbours.
Source:   ISO 273 and DIN 46234 holes by bolt size, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the sizes."""
    stud = Demand.of(second.number("stud_m")[None, :], "", "metric bolt of the part", second.cell("stud_m"))
    hole = first.rating("stud_m").down()
    return [at_least("hole for M", hole, stud), at_most("hole for M", hole, stud)]


RULE = PairRule("on stud", judge)
