"""Two plugs of one bike at other volts must not mate with each other.

Asks:     they differ in body, in ways or in keying.
Why:      hands in a hurry join what fits: pack volts on a throttle, or 12 V on a 5 V signal, and the controller is dead
          before a fuse knows.
Cure:     another keying or another body for one of them; a tag alone comes off.
Ignores:  plugs at the same volts; those of the bike's own devices that the builder does not buy.
Source:   the trade keys and colours plugs by their volts; common practice, no source.
Harm:     damage.
Says:     fail, can't tell.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement
from bom.judge.plugs import apart
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Look for one difference that keeps them apart."""
    return [apart(first, second, "they lie within reach of each other at other volts")]


RULE = PairRule("beside", judge)
