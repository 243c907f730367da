"""A converter's output must suit 12 V lamps and coils.

Asks:     output volts lie between 12.8 and 14.4 V.
Why:      at 12.0 V a filament gives two thirds of its light; above 14.4 V it lives half as long.
Cure:     a 13.5 V type, or one that adjusts.
Ignores:  the drop to the lamp, which has a rule of its own.
Source:   UN R37 test volts 13.2 and 13.5 V; light ~ V^3.4, life ~ V^-12, lamp practice, from memory.
"""

from dataclasses import replace

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins
from bom.span import Span

LEAST_V = 12.8


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the output volts; too low is tight, not dangerous."""
    output = parts.rating("output_v")
    low = at_least("output volts", output, Span.of(LEAST_V, "voltage", "lowest volts for lamps at the lamp"))
    tight = np.where(low.verdicts == Verdict.FAIL, np.int8(Verdict.TIGHT), low.verdicts).astype(np.int8)
    return [replace(low, verdicts=tight), at_most("output volts", output, duty.rail_high_v)]


RULE = PartRule(("converter",), judge)
