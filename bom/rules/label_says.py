"""A label must say what its place is for.

Asks:     its purpose is the place's.
Why:      whoever opens the bike next does not know it.
Harm:     order.
Says:     fail, can't tell.
Cure:     the label of that purpose.
Ignores:  language.
Source:   UN R136 5.1.1.5 (warning symbol at the traction battery), read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the purpose."""
    return [
        is_word(
            "purpose", parts.words_of("purpose"), (duty.word("label"),), "as planned", asked=duty.source_of("label")
        )
    ]


RULE = PartRule(("label",), judge)
