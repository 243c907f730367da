"""A cable must carry its running amps at its ambient, in its bundle, at its terminals" limit.

Asks:     ampacity is at least the running amps; the lower of a heat balance and a published table counts.
Why:      the same copper is sold with amps that differ by two; heat ends at the terminal first.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the next thicker cable.
Ignores:  sun, hot metal beside it, and moving air, which helps.
Source:   IEC 60364-5-52:2009 tables and bundle factors, from memory; heat balance by published correlations.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ratings import cable_ampacity
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the ampacity."""
    offered = cable_ampacity(parts, duty, margins)
    return [at_least(f"ampacity at {duty.ambient_c.high:g} °C", offered, duty.carry_a)]


RULE = PartRule(("cable",), judge, only_with=("carry_a",))
