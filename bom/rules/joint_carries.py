"""A terminal, port, holder, post, splice, tail or shunt must carry its running amps.

Asks:     rated amps are at least the running amps.
Why:      tabs and bullets are rated far below the wire they take, posts below their stud.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a ring or a larger tab.
Ignores:  corrosion.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the rated amps."""
    return [at_least("rated amps", parts.rating("rated_a"), duty.carry_a)]


RULE = PartRule(
    ("terminal", "charge_port", "fuse_holder", "post", "splice", "tail", "shunt"), judge, only_with=("carry_a",)
)
