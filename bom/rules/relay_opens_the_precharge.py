"""The precharge relay must open the resistor's full current.

Asks:     at the highest bus volts it breaks and makes bus volts over ohms.
Why:      a stuck start is opened with the bus still empty, at full volts.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a DC-rated relay, or more ohms.
Ignores:  nothing.
Source:   Ohm's law; breaking points as printed for the relay.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.ratings import breaking_amps
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare breaking amps with V / R."""
    volts, ohm = first_duty.voltage_v, second.number("resistance_ohm")[None, :]
    offered = breaking_amps(first, volts=volts, time_constant=first_duty.time_constant_ms, reverse=False).down()

    def traced() -> Step:
        return step("U_bus / R", U_bus=volts, R=second.first("resistance_ohm"))

    needed = Demand(volts.low / ohm, volts.high / ohm, "current", "bus volts over the resistor", volts.datum, traced)
    makes = first.rating("make_a").or_greater(first.rating("carry_a")).down()
    return [
        at_least(f"amps it may break at {volts}", offered, needed),
        at_least("amps it may close on", makes, needed),
    ]


RULE = PairRule("fills through", judge)
