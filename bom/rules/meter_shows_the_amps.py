"""The amps range of a meter must cover the bursts of the drive.

Asks:     of a meter of volts and amps, the range is at least the controller's peak battery amps.
Why:      a display that stops at 100 A says nothing of a burst of 160 A, the one worth seeing.
Harm:     order.
Says:     fail, can't tell.
Cure:     the next range, with its own shunt.
Ignores:  accuracy; amps into the pack.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the range with the peak."""
    if duty.word("meter") != "volts and amps":
        return []
    return [at_least("amps range", parts.rating("range_a"), duty.peak_a)]


RULE = PartRule(("meter",), judge)
