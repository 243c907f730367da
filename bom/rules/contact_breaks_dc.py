"""A switching part must be able to open the current it is asked to open, at those volts.

Asks:     a printed breaking point at no fewer volts and no shorter time constant covers the amps.
Why:      a direct-current arc has no zero to die at; a contact rated by amps alone welds or burns.
Cure:     a contact with a printed DC breaking figure at or above these volts, or let it drive a relay.
Ignores:  figures between printed points; poles in series unless the part's own table says so.
Source:   IEC 60947-4-1 and 60947-5-1 give breaking by volts, amps and time constant (utilization
          categories), read second-hand on a public page. A donor contact without a figure is refused above
          the margin donor_break_limit_v: common practice.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ratings import breaking_amps
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps each contact may break with those it is asked to."""
    offered = breaking_amps(parts, volts=duty.break_v, time_constant=duty.time_constant_ms, reverse=False)
    refused = duty.break_v.low > margins.donor_break_limit_v
    donor = np.array([parts.is_donor(index) for index in range(len(parts))])
    blank = np.where(donor & refused, Verdict.FAIL, Verdict.CANT_TELL).astype(np.int8)
    what = f"amps it may break at {duty.break_v}"
    return [at_least(what, offered, duty.break_a, blank=blank)]


RULE = PartRule(
    ("contactor", "relay", "key_switch", "stop_switch", "cap_switch", "bar_switch"), judge, only_with=("break_a",)
)
