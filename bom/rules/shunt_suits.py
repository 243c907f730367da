"""A shunt must carry the battery amps and give the meter its millivolts.

Asks:     rated amps reach the running amps with the bursts inside them; drop and rated amps are those the meter is
          scaled for.
Why:      a shunt in the wrong place or of the wrong millivolts shows wrong amps for ever.
Harm:     order.
Says:     fail, can't tell.
Cure:     the shunt named by the meter.
Ignores:  loads on the pack side of it, which are not counted.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps with the burst, and both of its figures with the meter's."""
    wanted = Demand.of(second.number("shunt_mv")[None, :], "", "millivolts the meter expects", second.cell("shunt_mv"))
    drop, rated = first.rating("drop_mv").down(), first.rating("rated_a").down()
    scale = Demand.of(
        second.number("range_a")[None, :], "current", "amps the meter is scaled for", second.cell("range_a")
    )
    return [
        at_least("rated amps", rated, Demand.from_span(first_duty.peak_a)),
        at_least("amps at those millivolts", rated, scale),
        at_most("amps at those millivolts", rated, scale),
        at_least("millivolts", drop, wanted),
        at_most("millivolts", drop, wanted),
    ]


RULE = PairRule("drops in", judge)
