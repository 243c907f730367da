"""A flasher must flash at the rate the road asks.

Asks:     its flashes a minute are 60 to 120.
Why:      slower reads as a lamp that is on, faster as a lamp that has failed; both fail an inspection.
Harm:     order.
Says:     fail, can't tell.
Cure:     a flasher of that rate; a thermal one races or hangs with other watts than its own.
Ignores:  the share of time the lamps are on; how the rate moves with volts and heat: count it on the bike.
Source:   UN R53 6.3 (90 flashes a minute, 30 either way), read second-hand on a public page; SAE J590, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the rate with both ends."""
    rate = parts.rating("flashes_per_min")
    return [
        at_least("flashes a minute", rate, margins.of("flash_rate_low")),
        at_most("flashes a minute", rate, margins.of("flash_rate_high")),
    ]


RULE = PartRule(("flasher",), judge)
