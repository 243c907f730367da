"""A cable's class must cover the volts in it.

Asks:     the DC class is at least the highest volts, and for motor leads the AC class too.
Why:      vehicle cable is classed 60 V DC and 25 V AC; motor leads of even a 48 V pack carry more AC.
Harm:     shock.
Says:     fail, can't tell.
Cure:     600 V class cable, printed on its jacket.
Ignores:  chafe, oil and heat, which do the damage.
Source:   SAE J1128 and ISO 19642-3 scopes (60 V DC), ISO 6722-2 scope (600 V), read second-hand on a public
          page; phase volts by algebra of the six-step limit.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the DC class, and the AC class where the place asks it."""
    answers = [at_least("DC class", parts.rating("class_dc_v"), duty.voltage_v)]
    if "ac_voltage_v" in duty.needs:
        answers.append(at_least("AC class", parts.rating("class_ac_v"), duty.ac_voltage_v))
    return answers


RULE = PartRule(("cable",), judge)
