"""A lug or terminal must stand the temperature the wire is counted on.

Asks:     its temperature limit is at least the terminal temperature used for ampacity.
Why:      terminals often stand less than the cable; the joint is rated at the lowest.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a lug of higher temperature class, or a lower terminal temperature in the margins.
Ignores:  plating.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the temperature limit."""
    limit = margins.of("terminal_c", "temperature", "terminal temperature used for ampacity")
    return [at_least("temperature limit", parts.rating("terminal_max_c"), limit)]


RULE = PartRule(("lug", "terminal"), judge)
