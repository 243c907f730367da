"""A charger must keep mains and pack apart.

Asks:     it is isolated.
Why:      a charger that ties mains neutral to the pack puts mains on the bike.
Harm:     shock.
Says:     fail, can't tell.
Cure:     an isolated charger with an earth pin; the mains side belongs to licensed practice.
Ignores:  earth leakage in damp.
Source:   IEC 60335-2-29 (chargers), from memory; common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the flag."""
    return [is_word("isolated", parts.words_of("isolated"), ("yes",), "mains and pack must stay apart")]


RULE = PartRule(("charger",), judge)
