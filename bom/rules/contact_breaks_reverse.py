"""A contact that current crosses both ways must be able to open it both ways.

Asks:     a printed breaking point in the reverse direction covers regeneration or charging amps.
Why:      blow-out magnets drive the arc of a reversed current away from the chute.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a two-way type, or a path of its own for charging.
Ignores:  parts whose circuit never reverses.
Source:   contactor makers" notes on polarised types, read second-hand on a public page; no volt threshold.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ratings import breaking_amps
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps each contact may break backwards."""
    offered = breaking_amps(parts, volts=duty.break_v, time_constant=duty.time_constant_ms, reverse=True)
    return [at_least(f"amps it may break backwards at {duty.break_v}", offered, duty.reverse_a)]


RULE = PartRule(("contactor",), judge, only_with=("reverse_a",))
