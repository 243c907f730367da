"""The hand isolator must be of the kind the builder wished for.

Asks:     its kind is the wished one.
Why:      a link plug, a switch and a breaker do different work.
Harm:     order.
Says:     fail, can't tell.
Cure:     change the wish, or the part.
Ignores:  nothing.
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
            "kind",
            parts.words_of("kind"),
            (duty.word("isolator"),),
            "as wished in the job",
            asked=duty.source_of("isolator"),
        )
    ]


RULE = PartRule(("isolator",), judge)
