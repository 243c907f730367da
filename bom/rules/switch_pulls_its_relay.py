"""A switch that pulls in a relay must carry and open that relay's coil.

Asks:     its carrying amps, and what it may break at the rail's volts behind the coil's time constant, are at least the
          coil's pull-in amps.
Why:      the relay is there to spare the switch; a coil of its own still arcs at every opening.
Harm:     damage.
Says:     fail, can't tell.
Cure:     a relay with a smaller coil, or a switch with a printed figure.
Ignores:  the clamp across the coil, which is judged by itself.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.ratings import breaking_amps
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the switch with the coil."""
    pull = second.number("coil_pull_a")[None, :]
    coil = Demand.of(pull, "current", "pull-in amps of the relay's coil", second.cell("coil_pull_a"))
    opens = breaking_amps(first, volts=first_duty.break_v, time_constant=first_duty.time_constant_ms, reverse=False)
    return [
        at_least("carrying amps", first.rating("carry_a").down(), coil),
        at_least(f"amps it may break at {first_duty.break_v}", opens.down(), coil),
    ]


RULE = PairRule("pulls", judge)
