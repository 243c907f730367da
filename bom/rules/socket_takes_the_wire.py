"""The contacts of a fuse box or relay must take the wire plugged onto them.

Asks:     the wire's area is at most the largest the part takes.
Why:      a terminal for thick copper does not go into the cavity, and strands are cut off to make it.
Harm:     order.
Says:     fail, can't tell.
Cure:     a box or relay for thicker wire, or a shorter lead of thinner wire.
Ignores:  the coil's own thin wires; a smallest wire, which no sheet prints.
Source:   wire ranges as printed for the part.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the largest wire with the copper."""
    area = Demand.of(second.number("area_mm2")[None, :], "area", "area of the wire", second.cell("area_mm2"))
    return [at_least("largest wire", first.rating("wire_max_mm2").down(), area)]


RULE = PairRule("plugs on", judge)
