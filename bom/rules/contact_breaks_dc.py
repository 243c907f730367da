"""A switching part must be able to open the current it is asked to open, at those volts.

Asks:     a printed breaking point at no fewer volts and no shorter time constant covers the amps; of a donor contact
          above the margin donor_break_limit_v one on its data sheet or marked on it, whatever was measured or served.
Why:      a direct-current arc has no zero to die at; a contact rated by amps alone welds or burns.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a contact with a printed DC breaking figure at or above these volts, or let it drive a relay.
Ignores:  figures between printed points; poles in series unless the part's own table says so.
Source:   IEC 60947-4-1 and 60947-5-1 give breaking by volts, amps and time constant (utilization
          categories), read second-hand on a public page. A donor contact without a printed figure is refused above
          the margin donor_break_limit_v: common practice; old contacts and small relays are printed to about 30 V DC.
"""

from dataclasses import replace

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
    by_print = duty.break_v.high > margins.donor_break_limit_v
    offered = breaking_amps(
        parts, volts=duty.break_v, time_constant=duty.time_constant_ms, reverse=False, by_print=by_print
    )
    donor = np.array([parts.is_donor(index) for index in range(len(parts))])
    blank = np.where(donor & by_print, Verdict.FAIL, Verdict.CANT_TELL).astype(np.int8)
    needed, what = duty.break_a, f"amps it may break at {duty.break_v}"
    if by_print and donor.all():
        limit = f"above {margins.donor_break_limit_v:g} V DC a donor contact counts by its print alone"
        needed = replace(needed, because=f"{needed.because}; {limit}")
    return [at_least(what, offered, needed, blank=blank)]


RULE = PartRule(
    ("contactor", "relay", "key_switch", "stop_switch", "cap_switch", "bar_switch"), judge, only_with=("break_a",)
)
