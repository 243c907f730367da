"""An isolated converter must say how many volts its isolation holds.

Asks:     its isolation volts are at least the highest bus volts.
Why:      "isolated" without a figure may be a gap that only holds on a dry bench.
Cure:     ask the seller for the isolation test volts, or choose one that prints them.
Ignores:  creepage across its case when wet.
Source:   UN R136 5.1.3 asks for isolation at working volts, read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare isolation volts of the isolated ones."""
    asked = np.array([word == "yes" for word in parts.word("isolated")])
    isolation = parts.rating("isolation_v")
    volts = duty.voltage_v
    low, high = np.where(asked, volts.low, 0.0), np.where(asked, volts.high, 0.0)
    offered = isolation.with_values(np.where(asked, isolation.values, 0.0))
    return [at_least("isolation volts", offered, Demand(low, high, "voltage", volts.because, volts.datum))]


RULE = PartRule(("converter",), judge)
