"""An isolated converter must say how many volts its isolation holds.

Asks:     its isolation volts are at least the highest bus volts.
Why:      "isolated" without a figure may be a gap that only holds on a dry bench.
Harm:     shock.
Says:     fail, can't tell.
Cure:     ask the seller for the isolation test volts, or choose one that prints them.
Ignores:  creepage across its case when wet.
Source:   UN R136 5.1.3 asks for isolation at working volts, read second-hand on a public page.
"""

from dataclasses import replace

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare isolation volts of the isolated ones."""
    flags = parts.word("isolated")
    volts, isolation = duty.voltage_v, parts.rating("isolation_v")
    # A converter known to be joined has no isolation to judge; one not known to be isolated can't be told.
    needless = np.array([flag == "no" for flag in flags])
    unknown = np.where([flag == "" for flag in flags], np.nan, 0.0)
    answer = at_least(
        "isolation volts",
        isolation.with_values(
            isolation.values + unknown, parts.cell("isolation_v") if flags[0] else parts.decided_by("isolated")
        ),
        volts,
    )
    return [replace(answer, verdicts=np.where(needless, np.int8(Verdict.NOT_ASKED), answer.verdicts))]


RULE = PartRule(("converter",), judge)
