"""A connector, holder or port must take the wire's copper.

Asks:     the wire's area lies between the smallest and the largest the part takes.
Why:      a contact crimped on the wrong copper works loose or cannot be closed.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the part, or its contact, made for that wire.
Ignores:  the seal on the wire's outside; the kit carries seals by wire.
Source:   crimp ranges as printed for the part.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the area with both ends."""
    area = second.number("area_mm2")[None, :]
    answers = [
        at_least(
            "largest wire",
            first.rating("wire_max_mm2").down(),
            Demand.of(area, "area", "area of the wire", second.cell("area_mm2")),
        )
    ]
    if "wire_min_mm2" in first.numbers:
        answers.append(
            at_most(
                "smallest wire",
                first.rating("wire_min_mm2").down(),
                Demand.of(area, "area", "area of the wire", second.cell("area_mm2")),
            )
        )
    return answers


RULE = PairRule("takes wire", judge)
