"""A wire ends in a tab, ring or bullet, not in a splice.

Asks:     the terminal's kind joins a wire to a part.
Why:      a splice joins two wires and plugs into nothing.
Cure:     a tab, ring or bullet.
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
    return [is_word("kind", parts.words_of("kind"), ("tab", "ring", "bullet"), "it ends a wire")]


RULE = PartRule(("terminal",), judge)
