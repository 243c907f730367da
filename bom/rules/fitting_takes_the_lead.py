"""A plug, splice or cap must take the copper of the control leads that come to it.

Asks:     the area of the thinnest and of the thickest lead lies between the smallest and the largest it takes.
Why:      hair-thin leads of grips and controllers slip out of a contact made for lamp wire.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a smaller contact; or fold the copper double where the contact's maker allows it.
Ignores:  the seal on the lead's outside; the kit carries seals by wire.
Source:   crimp ranges as printed for the part.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the area with both ends."""
    return [
        at_most("smallest lead", parts.rating("wire_min_mm2"), duty.lead_least_mm2),
        at_least("largest lead", parts.rating("wire_max_mm2"), duty.lead_most_mm2),
    ]


RULE = PartRule(("signal_connector", "splice", "end_cap"), judge, only_with=("lead_least_mm2",))
