"""A converter must feed all 12 V loads of the worst state without end.

Asks:     its amps at the ambient (its own curve, or a part of its label) are at least the worst state's.
Why:      label amps of sealed bricks are not held in a closed box; it dies or folds at night in rain.
Harm:     dark.
Says:     fail, can't tell.
Cure:     the next size, or LED lamps.
Ignores:  the moment a lamp lights; another rule looks at that.
Source:   derating of sealed converters to 60 to 70 % of their label is common practice, no source.
"""

from dataclasses import replace
from functools import partial

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rating_traces import converter
from bom.judge.ratings import converter_amps
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps held at this ambient."""
    ambient_c = duty.ambient_c.high
    offered = converter_amps(parts, ambient_c=ambient_c, label_fraction=margins.converter_label_fraction)
    offered = replace(offered, trace=partial(converter, parts, duty.ambient_c, margins))
    return [at_least(f"amps held at {ambient_c:g} °C", offered, duty.output_a)]


RULE = PartRule(("converter",), judge)
