"""A fuse box must carry all its circuits together.

Asks:     bus amps are at least the worst state's 12 V amps.
Why:      the common rail of a small box melts long before its fuses open.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a box with a heavier rail.
Ignores:  nothing.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the bus amps."""
    return [at_least("bus amps", parts.rating("bus_a"), duty.carry_a)]


RULE = PartRule(("fuse_box",), judge)
