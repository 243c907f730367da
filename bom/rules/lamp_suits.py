"""A lamp to be bought must fit its holder, its purpose, its kind and the earth.

Asks:     base, purpose, technology and polarity are those of the load list; watts are at most its own; those of a
          second filament are at most those of the load that shares the lamp.
Why:      a bulb of the right watts and the wrong base is a parcel and a week; an LED the wrong way round is dark.
Harm:     order.
Says:     fail, can't tell.
Cure:     the lamp with that base.
Ignores:  its mark for the road, which is asked by itself.
Source:   IEC 60061 bases by name; UN R37 categories; read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare words and watts."""
    polarity = ("either", "positive earth" if duty.word("earth") == "positive" else "negative earth")
    second = (
        [at_most("watts of its second", parts.rating("power_second_w"), duty.second_w)] if duty.has("second_w") else []
    )
    return [
        *second,
        is_word(
            "purpose",
            parts.words_of("purpose"),
            (duty.word("purpose"),),
            "as in the load list",
            asked=duty.source_of("purpose"),
        ),
        is_word(
            "base", parts.words_of("base"), (duty.word("base"),), "as in the load list", asked=duty.source_of("base")
        ),
        is_word(
            "technology",
            parts.words_of("technology"),
            (duty.word("technology"),),
            "as in the load list",
            asked=duty.source_of("technology"),
        ),
        is_word(
            "polarity",
            parts.words_of("polarity"),
            polarity,
            f"earth is {duty.word('earth')}",
            asked=duty.source_of("earth"),
        ),
        at_most("watts", parts.rating("power_w"), duty.lamp_w),
    ]


RULE = PartRule(("lamp",), judge)
