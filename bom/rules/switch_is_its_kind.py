"""A handlebar switch must be the kind its place is for.

Asks:     its kind is the place's.
Why:      a horn button does not latch; a dip switch has no off.
Harm:     order.
Says:     fail, can't tell.
Cure:     the switch of that kind.
Ignores:  the lever's shape.
Source:   the job file.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the kind."""
    return [
        is_word(
            "kind", parts.words_of("kind"), (duty.word("switch"),), "as in the donor", asked=duty.source_of("switch")
        )
    ]


RULE = PartRule(("bar_switch",), judge)
