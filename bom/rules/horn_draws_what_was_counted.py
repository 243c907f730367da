"""A horn to be bought may draw no more than the load list counts.

Asks:     its amps are at most those of the load list.
Why:      an 18 A air horn on a 10 A supply shuts the bike down.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a smaller horn, or enter its amps and see what they change.
Ignores:  loudness.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps."""
    return [at_most("amps", parts.rating("current_a"), duty.carry_a)]


RULE = PartRule(("horn",), judge)
