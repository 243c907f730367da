"""A stop switch must be worked by hand or by falling off.

Asks:     it is a mushroom, a bar switch, a lanyard, or the donor's own kill switch.
Why:      a side-stand switch opens when the stand is down; nobody reaches for it in a fright.
Harm:     runaway.
Says:     fail, can't tell.
Cure:     a switch at the bar, a mushroom or a lanyard.
Ignores:  where on the bar it sits.
Source:   ISO 13850 (stop by hand, in reach), from memory; common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the kind."""
    return [is_word("kind", parts.words_of("kind"), IN_REACH, "it stops the bike in a fright")]


IN_REACH = ("mushroom", "bar", "lanyard", "kill switch")
RULE = PartRule(("stop_switch",), judge)
