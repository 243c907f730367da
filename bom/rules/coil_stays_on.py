"""A coil that is on for the whole ride must be made for it.

Asks:     the coil's duty is continuous.
Why:      a starter relay's coil is made for seconds and cooks in minutes.
Harm:     damage.
Says:     fail, can't tell.
Cure:     a contactor with a continuous coil.
Ignores:  nothing.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the duty word."""
    return [is_word("coil duty", parts.words_of("duty"), ("continuous",), "the coil is on for the whole ride")]


RULE = PartRule(("contactor", "relay"), judge)
