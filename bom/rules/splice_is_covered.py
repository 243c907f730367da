"""A splice must be covered: nothing bare hangs in a loom.

Asks:     the splice is covered.
Why:      open screws touch the frame or the next wire as soon as the loom moves.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a closed splice; an open strip belongs in a box with a lid.
Ignores:  whether it is sealed against water.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the flag."""
    return [is_word("covered", parts.words_of("covered"), ("yes",), "it hangs in the loom")]


RULE = PartRule(("splice",), judge)
