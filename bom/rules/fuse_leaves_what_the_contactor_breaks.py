"""The main fuse must open what the contactor cannot.

Asks:     the contactor breaks at least the rating of the main fuse at the highest bus volts.
Why:      between what the contactor can break and what the fuse opens on lies a current nobody opens.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a contactor with a higher breaking figure, or a smaller main fuse.
Ignores:  the let-through of the fuse, which the contactor must survive closed.
Source:   Formula Student rules EV 5.6.4 (the fuse rating lies below the contactor's switch-off current),
          read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.ratings import breaking_amps
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the contactor's breaking amps with the fuse's rating."""
    offered = breaking_amps(
        second, volts=second_duty.break_v, time_constant=second_duty.time_constant_ms, reverse=False
    ).across()
    rated = first.number("rated_a")[:, None]
    needed = Demand.of(rated, "current", "rating of the main fuse", first.cell("rated_a"))
    return [at_least("amps the contactor may break", offered, needed)]


RULE = PairRule("behind", judge)
