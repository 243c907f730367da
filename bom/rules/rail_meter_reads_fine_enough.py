"""A meter on the 12 V side must tell a charging rail from one that is not.

Asks:     the top of its range is at most three times the highest rail volts; more is tight.
Why:      on a dial of 0 to 150 V the half volt between a converter that charges and a dead one is a hair's breadth.
Harm:     dark.
Says:     can't tell, tight.
Cure:     a meter of 0 to 30 V, or a digital one of that range.
Ignores:  its accuracy; compare it once with a good meter.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_most, softened
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the top of the range."""
    return [softened(at_most("top of the range", parts.rating("range_max_v"), duty.scale_v))]


RULE = PartRule(("meter",), judge, only_with=("scale_v",))
