"""A switch under the charge port's cap must keep water out.

Asks:     it is sealed; an open one is tight.
Why:      the cap is opened in the rain; water across the contact lets the bike drive off on its charging lead.
Harm:     runaway.
Says:     can't tell, tight.
Cure:     a sealed switch.
Ignores:  how well: its IP code is asked by its place.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the flag; behind a cap that shuts well an open one may serve."""
    because = "its cap is opened where rain comes"
    return [is_word("sealed", parts.words_of("sealed"), ("yes",), because, other=Verdict.TIGHT)]


RULE = PartRule(("cap_switch",), judge)
