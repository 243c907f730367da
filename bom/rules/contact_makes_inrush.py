"""A contact must be able to close on the inrush it meets.

Asks:     the make rating, or the carrying amps where they are more, is at least the amps at closing; carrying amps
          alone may suffice, but tell only of a contactor that it is too weak.
Why:      empty capacitors and cold filaments look like a short for a moment; the contact bounces and welds.
Harm:     runaway.
Says:     fail, can't tell.
Cure:     precharge, or let the contact drive a relay coil at 12 V instead.
Ignores:  how often it closes.
Source:   IEC 60947-1 making capacity, from memory; inrush of filaments and capacitors by common practice.
"""

from dataclasses import replace

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the make rating."""
    make, carry = parts.rating("make_a"), parts.rating("carry_a")
    offered = make.or_greater(carry)
    # What a contact carries without end says nothing of the moment it closes, unless it is enough for that too.
    # A contactor, whose sheet prints both, is taken at what it carries.
    untold = np.isnan(make.values) & (carry.values < duty.make_a.high) & (parts.family != "contactor")
    offered = replace(offered, values=np.where(untold, np.nan, offered.values))
    return [at_least("amps it may close on", offered, duty.make_a)]


RULE = PartRule(
    ("contactor", "relay", "key_switch", "stop_switch", "cap_switch", "bar_switch"), judge, only_with=("make_a",)
)
