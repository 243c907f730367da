"""The thin leads moulded into a switch must carry its running amps too.

Asks:     the copper of its own leads carries the running amps at the ambient of its place, in the bundle.
Why:      contacts are printed in big figures; the leads of cheap buttons are 17 strands of 0.15 mm, 0.3 mm², which
          stand 3 A and run warm under a coil of 3.5 A.
Cure:     a relay that takes the load off the switch, or a switch with thicker leads; count strands x 0.785 x d².
Ignores:  the solder joint inside. Of a donor switch whose leads nobody counted, amps that it carried for years or on
          the bench went through its leads, and its maker's print is of the switch as it was built; else the thinnest
          usual lead counts, and only beyond that one can't tell.
Source:   ampacity as of any wire; below 1.5 mm², where IEC 60364-5-52 is silent, 10 A/mm² by common practice.
Harm:     fire.
Says:     fail, can't tell, tight.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.judge.switch_leads import lead_ampacity
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare what the leads stand."""
    return [at_least("amps its leads stand", lead_ampacity(parts, duty, margins), duty.carry_a)]


RULE = PartRule(("key_switch", "stop_switch", "cap_switch", "bar_switch"), judge, only_with=("carry_a",))
