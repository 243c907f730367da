"""A heavy run keeps one copper area from end to end.

Asks:     each piece of the traction path has the area of the pack lead.
Why:      two sizes in one run are two reels, two dies and two sizes of lugs for the sake of cents.
Harm:     order.
Says:     fail, can't tell.
Cure:     the thicker one throughout.
Ignores:  phase leads and taps, which are runs of their own.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the areas."""
    area = Demand.of(second.number("area_mm2")[None, :], "area", "area of the next piece", second.cell("area_mm2"))
    own = first.rating("area_mm2").down()
    return [at_least("area", own, area), at_most("area", own, area)]


RULE = PairRule("continues", judge)
