"""A DC breaker must be able to break the fault, and hold the running amps.

Asks:     for breakers: DC breaking amps are at least the fault current, trip amps at least the running amps.
Why:      a breaker that cannot break the fault welds or bursts before the fuse acts.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a breaker with more DC breaking amps.
Ignores:  hand switches and link plugs.
Source:   IEC 60934 and IEC 60947-2, DC breaking as marked; from memory.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare breaking and trip amps of breakers; other kinds offer enough by definition."""
    breaker = np.array([kind == "breaker" for kind in parts.word("kind")])
    breaking, trip = parts.rating("dc_breaking_a"), parts.rating("trip_a")
    fault = Demand.from_span(duty.fault_high_a)
    traces = (breaking.trace, trip.trace) if breaker.all() else (parts.decided_by("kind"), parts.decided_by("kind"))
    return [
        at_least(
            "DC breaking amps", breaking.with_values(np.where(breaker, breaking.values, np.inf), traces[0]), fault
        ),
        at_least("trip amps", trip.with_values(np.where(breaker, trip.values, np.inf), traces[1]), duty.carry_a),
    ]


RULE = PartRule(("isolator",), judge)
