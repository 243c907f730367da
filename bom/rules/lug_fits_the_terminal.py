"""A lug's hole must be the size of the pack's, controller's or motor's bolt.

Asks:     lug and bolt have the same metric size, as the job names it.
Why:      a hole too large loses half its contact face; one too small does not go on.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the lug with that hole; measure the bolt.
Ignores:  the width of the lug beside its neighbours.
Source:   ISO 273 and DIN 46234 holes by bolt size, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the sizes."""
    hole = parts.rating("stud_m")
    return [at_least("hole for M", hole, duty.stud_m), at_most("hole for M", hole, duty.stud_m)]


RULE = PartRule(("lug",), judge, only_with=("stud_m",))
