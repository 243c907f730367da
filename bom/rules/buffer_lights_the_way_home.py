"""A buffer battery must light the lamps until the bike stands somewhere safe.

Asks:     its amp-hours are at least the amps lit by night for ten minutes, times 1.5; less is tight.
Why:      the pack lets go at speed, by night: a battery of 1.2 Ah on 8 A of lamps is dark at the next bend.
Harm:     dark.
Says:     can't tell, tight.
Cure:     a larger buffer battery, or lamps that take less.
Ignores:  its age and its volts under load; the factor of 1.5 is to hold them.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, softened
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amp-hours."""
    return [softened(at_least("capacity", parts.rating("capacity_ah"), duty.light_ah))]


RULE = PartRule(("buffer_battery",), judge)
