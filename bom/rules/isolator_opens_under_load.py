"""A hand switch or breaker that nothing else opens for must break the running amps.

Asks:     without a contactor, a printed DC breaking point covers the peak battery amps.
Why:      in an emergency it is opened under load; a switch made for no load burns in the hand.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a contactor that opens first, or a switch with a DC breaking figure.
Ignores:  link plugs and switches behind a contactor: they are opened with the key off, and labelled so.
Source:   IEC 60947-3 categories DC-20 (no load) to DC-23, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ratings import breaking_amps
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Ask only where no contactor opens first."""
    if duty.word("contactor") == "yes":
        return []
    offered = breaking_amps(parts, volts=duty.break_v, time_constant=duty.time_constant_ms, reverse=False)
    return [at_least(f"amps it may break at {duty.break_v}", offered, duty.break_a)]


RULE = PartRule(("isolator",), judge)
