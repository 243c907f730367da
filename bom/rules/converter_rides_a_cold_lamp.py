"""A converter must ride through a cold lamp lighting.

Asks:     it limits at constant current, or its peak amps cover the cold filament, or a buffer battery does.
Why:      a hiccup or latching type switches off on the surge and everything goes dark.
Cure:     a constant-current type, LED lamps, or a buffer battery.
Ignores:  how far the rail dips meanwhile.
Source:   cold filaments take 8 to 15 times their running amps, lamp engineering practice, from memory.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Pass by mode or by buffer, else compare the peak amps."""
    if duty.word("buffer") == "yes":
        return [is_word("buffer battery", ["yes"] * len(parts), ("yes",), "it takes the surge")]
    mode = parts.word("overload")
    peak = at_least("peak amps", parts.rating("output_peak_a"), duty.output_peak_a)
    rides = np.array([word == "constant current" for word in mode])
    verdicts = np.where(rides, np.int8(Verdict.PASS), peak.verdicts).astype(np.int8)
    words = tuple("constant current, rides it" if word == "constant current" else word for word in mode)
    return [Judgement(peak.what, verdicts, peak.offered, peak.needed, peak.sense, 0.0, (words, ""))]


RULE = PartRule(("converter",), judge)
