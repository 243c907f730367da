"""A terminal that plugs onto a part is a tab or a bullet.

Asks:     the terminal's kind plugs onto a part.
Why:      a splice joins two wires and plugs into nothing; a ring needs a bolt.
Harm:     order.
Says:     fail, can't tell.
Cure:     a tab or a bullet.
Ignores:  which of them the part at the other end takes: look at it.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the kind."""
    return [is_word("kind", parts.words_of("kind"), ("tab", "bullet"), "it plugs onto a part")]


RULE = PartRule(("terminal",), judge)
