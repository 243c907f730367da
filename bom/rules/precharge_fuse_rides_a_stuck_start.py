"""The precharge fuse must ride a start that never ends.

Asks:     its rating is at least the highest bus volts over the resistor's ohms.
Why:      a fuse that opens on every stuck start hides the fault; it is there for a shorted wire.
Harm:     stranded.
Says:     fail, can't tell.
Cure:     the next rating, if the wire allows it.
Ignores:  how long the timer lets it last.
Source:   Ohm's law; common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the rating with V / R."""
    volts, ohm = first_duty.voltage_v, second.number("resistance_ohm")[None, :]

    def traced() -> Step:
        return step("U_bus / R", U_bus=volts, R=second.first("resistance_ohm"))

    demand = Demand(volts.low / ohm, volts.high / ohm, "current", "bus volts over the resistor", volts.datum, traced)
    return [at_least("rating of the fuse", first.rating("rated_a").down(), demand)]


RULE = PairRule("rides", judge)
