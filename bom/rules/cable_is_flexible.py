"""A wire on a bike must be of fine strands.

Asks:     its conductor is of class 5 or 6; class 1 (solid) and class 2 (few thick strands) fail.
Why:      a solid wire breaks at the crimp when it is shaken, and a crimp made for fine strands does not hold it.
Cure:     flexible cable, class 5; class 6 where it bends at the steering head.
Ignores:  how tight it is bent: the build sheet prints the least radius.
Source:   IEC 60228 classes, ISO 6722-1 takes none coarser than its own fine strands; from memory.
Harm:     fire.
Says:     fail, can't tell.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

FLEXIBLE = ("5", "6")


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the class of the conductor."""
    return [is_word("conductor class", parts.words_of("conductor_class"), FLEXIBLE, "what rides is shaken")]


RULE = PartRule(("cable",), judge)
