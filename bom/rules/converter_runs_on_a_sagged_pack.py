"""A converter must keep running on the sagged pack.

Asks:     its lowest input is below the lowest volts under full throttle, less the margin.
Why:      otherwise lamps and contactor coil go out at full throttle on a low pack.
Harm:     dark.
Says:     fail, can't tell, tight.
Cure:     a wider window, a buffer battery, or a lower limit of battery amps.
Ignores:  cold, which lowers the sag further; the pack's resistance is taken as given or as its span.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the lowest input volts."""
    return [
        at_most(
            "lowest input volts", parts.rating("input_min_v"), duty.lowest_v, margin=margins.of("sag_headroom_fraction")
        )
    ]


RULE = PartRule(("converter",), judge)
