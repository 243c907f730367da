"""A wire must not lose more than its share of the allowed drop.

Asks:     running amps x hot resistance of this wire are at most its share of the circuit's allowed drop.
Why:      a lamp at 90 % of its volts gives about 70 % of its light; a contactor coil may let go.
Harm:     dark.
Says:     fail, can't tell.
Cure:     the next thicker wire.
Ignores:  joints and contacts, a few millivolts each when good and volts when bad: measure them.
Source:   ABYC E-11 (3 % critical circuits, there and back), read second-hand on a public page; resistance by
          the cable's own maximum and IEC 60028's temperature coefficient.
"""

from functools import partial

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.ratings import drop_v
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the volts lost when hot."""
    drop, carry = duty.drop_v, duty.carry_a
    easiest = drop.high * carry.high / carry.low if carry.low else np.inf
    traced = partial(_easiest, drop, carry)
    allowed = Demand(np.asarray(drop.low), np.asarray(easiest), drop.dimension, drop.because, carry.datum, traced)
    return [at_most("volts lost", drop_v(parts, duty, margins), allowed)]


def _easiest(drop: Span, carry: Span) -> Origin | Step | None:
    """Show the volts allowed; where the amps lie between two ends, those allowed at the least of them."""
    if carry.known or not carry.low:
        return drop.origin()
    high, low = carry.at_high(), carry.at_low()
    return step("U to U * I_high / I_low", U=drop, I_high=high, I_low=low)


RULE = PartRule(("cable",), judge, only_with=("drop_v",))
