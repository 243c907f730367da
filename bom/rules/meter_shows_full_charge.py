"""A meter's range must cover the pack, full and sagged.

Asks:     its range reaches 10 % over the highest bus volts and starts at or below the sagged lowest; it measures
          what was wished.
Why:      a 100 V meter on a pack of 100.8 V shows nonsense or dies.
Harm:     damage.
Says:     fail, can't tell.
Cure:     the next range.
Ignores:  accuracy.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare both ends of the range."""
    headroom = 1 + margins.meter_headroom_fraction
    share = margins.of("meter_headroom_fraction")
    top = duty.meter_v.scaled(headroom, f"{headroom:g} x {duty.meter_v}", "X * (1 + k)", k=share)
    return [
        at_least(
            "top of the range",
            parts.rating("range_max_v"),
            top,
        ),
        at_most("start of the range", parts.rating("range_min_v"), duty.meter_low_v),
        is_word(
            "measures",
            parts.words_of("measures"),
            (duty.word("meter"),),
            "as wished in the job",
            asked=duty.source_of("meter"),
        ),
    ]


RULE = PartRule(("meter",), judge)
