"""A pack plug must be a plug of two poles; a phase joint a joint of three.

Asks:     its kind and its number of poles are those of its place.
Why:      two single plugs can be crossed, or one left connected; a bolted joint cannot be pulled.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a two-pole plug at the pack, a three-pole covered joint at the motor.
Ignores:  auxiliary contacts.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the poles."""
    poles = parts.rating("poles")
    return [
        is_word(
            "kind",
            parts.words_of("kind"),
            (duty.word("connector"),),
            "what its place is for",
            asked=duty.source_of("connector"),
        ),
        at_least("poles", poles, duty.poles),
        at_most("poles", poles, duty.poles),
    ]


RULE = PartRule(("power_connector",), judge)
