"""A post or splice must have room for every wire that meets there.

Asks:     it takes at least as many lugs, or stripped ends, as the loom puts there.
Why:      lugs stacked beyond what a stud is made for run hot and work loose; a full splice gets a second wire
          twisted into one hole.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a busbar with more studs, a splice with more ways.
Ignores:  the order of the stack: the heaviest lug next to the post.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

ROOM = {"post": "lugs", "splice": "wires"}


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the number of wires."""
    room = ROOM[parts.family]
    return [at_least(room, parts.rating(room), duty.ways)]


RULE = PartRule(("post", "splice"), judge)
