"""A fuse must be able to break the worst fault its source can feed it.

Asks:     DC breaking capacity is at least the greatest prospective fault current.
Why:      a fuse asked to break more than it can may burst and keep arcing.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a fuse of higher DC breaking capacity.
Ignores:  AC breaking capacity; inductance, which lowers the peak.
Source:   IEC 60269-1 breaking capacity, from memory; ISO 8820-3 and -5 give 1 kA and 2 kA for vehicle
          fuses, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the DC breaking capacity."""
    return [at_least("DC breaking amps", parts.rating("dc_breaking_a"), duty.fault_high_a)]


RULE = PartRule(("main_fuse", "tap_fuse", "blade_fuse"), judge)
