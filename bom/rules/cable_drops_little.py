"""A wire must not lose more than its share of the allowed drop.

Asks:     running amps x hot resistance of this wire are at most its share of the circuit's allowed drop.
Why:      a lamp at 90 % of its volts gives about 70 % of its light; a contactor coil may let go.
Cure:     the next thicker wire.
Ignores:  joints and contacts, a few millivolts each when good and volts when bad: measure them.
Source:   ABYC E-11 (3 % critical circuits, there and back), read second-hand on a public page; resistance by
          the cable's own maximum and IEC 60028's temperature coefficient.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.ratings import drop_v
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the volts lost when hot."""
    drop, carry = duty.drop_v, duty.carry_a
    easiest = drop.high * carry.high / carry.low if carry.low else np.inf
    allowed = Demand(np.asarray(drop.low), np.asarray(easiest), drop.dimension, drop.because, carry.datum)
    return [at_most("volts lost", drop_v(parts, duty, margins), allowed)]


RULE = PartRule(("cable",), judge, only_with=("drop_v",))
