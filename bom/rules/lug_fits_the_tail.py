"""A lug on a tail that came with the motor or holder must be made for that tail's copper.

Asks:     the tail's area lies inside the lug's range.
Why:      a loose crimp is a heater, and the joint at the motor is the hottest on the bike.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the lug of the tail's own size.
Ignores:  the die; use the one its maker names.
Source:   DIN 46234 and 46235 lug sizes by area, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the area with both ends."""
    return [
        at_most("least area", parts.rating("area_min_mm2"), duty.tail_mm2),
        at_least("greatest area", parts.rating("area_max_mm2"), duty.tail_mm2),
    ]


RULE = PartRule(("lug",), judge, only_with=("tail_mm2",))
