"""A converter's output must suit 12 V lamps and coils.

Asks:     output volts lie between 12.8 and 14.4 V.
Why:      at 12.0 V a filament gives two thirds of its light; above 14.4 V it lives half as long.
Harm:     dark.
Says:     fail, can't tell, tight.
Cure:     a 13.5 V type, or one that adjusts.
Ignores:  the drop to the lamp, which has a rule of its own.
Source:   UN R37 test volts 13.2 and 13.5 V; light ~ V^3.4, life ~ V^-12, lamp practice, from memory.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, softened
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the output volts; too low is tight, not dangerous."""
    output = parts.rating("output_v")
    least = margins.of("lamp_least_v", "voltage", "lowest volts for lamps at the lamp")
    low = at_least("output volts", output, least)
    return [softened(low), at_most("output volts", output, duty.rail_high_v)]


RULE = PartRule(("converter",), judge)
