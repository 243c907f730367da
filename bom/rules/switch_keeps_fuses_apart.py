"""A switch of several fused circuits must have a contact for each.

Asks:     a switch that feeds loads of more than one circuit has at least as many separate contacts.
Why:      one contact that joins two fuses feeds each circuit through both: a short blows neither in time, and
          pulling one fuse leaves its wires live.
Harm:     fire.
Says:     fail, can't tell.
Cure:     put what one contact feeds into one circuit; or a relay for the second.
Ignores:  which contact closes in which position.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the contacts with the circuits."""
    return [at_least("separate contacts", parts.rating("contacts"), duty.ways)]


RULE = PartRule(("bar_switch",), judge, only_with=("ways",))
