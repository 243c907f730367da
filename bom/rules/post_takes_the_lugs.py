"""A post must have room for every lug that goes on it.

Asks:     it takes at least as many lugs as the loom puts there.
Why:      lugs stacked beyond what a stud is made for run hot and work loose.
Cure:     a busbar with more studs.
Ignores:  the order of the stack: the heaviest lug next to the post.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the number of lugs."""
    return [at_least("lugs", parts.rating("lugs"), duty.ways)]


RULE = PartRule(("post",), judge)
