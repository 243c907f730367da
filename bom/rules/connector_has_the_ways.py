"""A plug or fuse box must have as many ways as wires or circuits.

Asks:     ways are at least the number needed.
Why:      one way short is a parcel and a week.
Harm:     order.
Says:     fail, can't tell.
Cure:     the next size.
Ignores:  spare ways; block them.
Source:   counted from the loom.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the ways."""
    return [at_least("ways", parts.rating("ways"), duty.ways)]


RULE = PartRule(("signal_connector", "fuse_box"), judge)
