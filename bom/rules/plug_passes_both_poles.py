"""A pack plug must pass plus and minus together.

Asks:     poles are at least two.
Why:      two single plugs can be crossed, or one left connected; a keyed pair cannot.
Cure:     a two-pole plug.
Ignores:  auxiliary contacts.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.margins import Margins
from bom.parts import Parts


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the poles."""
    return [at_least("poles", parts.rating("poles"), duty.poles)]


RULE = PartRule(("power_connector",), judge)
