"""A flasher must feel the lamps that are really fitted.

Asks:     its least lamp watts are at most the watts of the bought lamps that burn together.
Why:      lamps of fewer watts than the load list counts leave a flasher below its least load.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a load-independent flasher.
Ignores:  a telltale lamp in the same circuit.
Source:   SAE J590 style windows as printed on the unit, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the least load with the watts fitted on one side."""
    watts = second.number("power_w")[None, :] * second_duty.burning.high

    def traced() -> Step:
        return step("P * n", P=second.first("power_w"), n=second_duty.burning)

    needed = Demand.of(watts, "power", f"{second_duty.burning.high:g} of the lamps bought", traced)
    return [at_most("least lamp watts", first.rating("load_min_w").down(), needed)]


RULE = PairRule("flashes", judge)
