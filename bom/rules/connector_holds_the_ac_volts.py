"""A joint in the motor leads must hold the volts between them.

Asks:     its AC volts are at least the highest volts between two leads.
Why:      the leads of even a 48 V pack carry more AC than vehicle parts are classed for.
Harm:     shock.
Says:     fail, can't tell.
Cure:     a 600 V class joint.
Ignores:  the steep edges of the controller's pulses.
Source:   UN R136 paragraph 2 (30 V AC), read second-hand on a public page; volts by algebra of the six-step limit.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the AC volts."""
    return [at_least("AC volts", parts.rating("ac_volts_v"), duty.ac_voltage_v)]


RULE = PartRule(("power_connector",), judge, only_with=("ac_voltage_v",))
