"""Sleeving over the thin pack-volts leads must show what is in it.

Asks:     it is braid or conduit, orange, and wide enough for a pair of leads (8 mm).
Why:      thin red and black leads at pack volts look like 12 V ones.
Harm:     shock.
Says:     fail, can't tell.
Cure:     orange braid or conduit.
Ignores:  packs at or below 60 V DC, where orange misleads and none is placed.
Source:   UN R136 5.1.1.5.3 (orange covering of high-voltage leads outside enclosures), read second-hand on a
          public page; the width is common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at kind and colour, compare width and heat."""
    reason = "it marks leads above 60 V DC"
    return [
        is_word("kind", parts.words_of("kind"), ("braid", "conduit"), reason),
        is_word("colour", parts.words_of("colour"), ("orange",), reason),
        at_least("width, mm", parts.rating("inside_max_mm"), duty.width_mm),
        at_least("temperature limit", parts.rating("max_c"), duty.ambient_c),
    ]


RULE = PartRule(("sleeve",), judge, only_with=("width_mm",))
