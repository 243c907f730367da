"""A lamp, horn or closer to be bought must run on the 12 V side, low and high.

Asks:     its supply window covers the lowest and the highest rail volts.
Why:      a 6 V lamp bursts; a 10.8 V module goes dark in a dip.
Harm:     dark.
Says:     fail, can't tell.
Cure:     one with the wider window.
Ignores:  light and life at the rail, another matter.
Source:   UN R128 Annex 4 (LED sources 9 to 16 V), read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare both ends."""
    return [
        at_most("lowest supply volts", parts.rating("supply_min_v"), duty.rail_low_v),
        at_least("highest supply volts", parts.rating("supply_max_v"), duty.rail_high_v),
    ]


RULE = PartRule(("lamp", "horn", "closer"), judge)
