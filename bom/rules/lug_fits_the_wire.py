"""A lug or terminal must be made for the wire it is crimped on.

Asks:     the wire's area lies inside the lug's range.
Why:      a loose crimp is a heater.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the lug of the wire's own size.
Ignores:  the die; use the one its maker names.
Source:   DIN 46234 and 46235 lug sizes by area, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the area with both ends."""
    area = Demand.of(second.number("area_mm2")[None, :], "area", "area of the wire", second.cell("area_mm2"))
    return [
        at_most("least area", first.rating("area_min_mm2").down(), area),
        at_least("greatest area", first.rating("area_max_mm2").down(), area),
    ]


RULE = PairRule("crimped on", judge)
