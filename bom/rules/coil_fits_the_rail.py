"""A coil must pull in on the lowest and live on the highest volts it gets.

Asks:     must-pull-in volts (hot) are at most the lowest rail volts; its highest volts at least the highest.
Why:      a coil for pack volts on a 12 V loom never pulls in; a tired rail lets it drop out and burn its tips.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a coil for 12 V with a pull-in of 9 V or less.
Ignores:  economisers; drop-out during a dip shorter than the armature's time.
Source:   IEC 61810-1 coil operative range, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare both ends of the coil's window."""
    return [
        at_most("must-pull-in volts", parts.rating("coil_min_v"), duty.coil_low_v),
        at_least("highest coil volts", parts.rating("coil_max_v"), duty.coil_high_v),
    ]


RULE = PartRule(("contactor", "relay"), judge)
