"""A connector must carry its amps with the wire that is really in it.

Asks:     80 % of its curve at the fitted wire and the ambient is at least the running amps.
Why:      headline amps are for the thickest wire in cool air; the wire is the connector's heat sink.
Cure:     a larger connector, or a thicker wire in it.
Ignores:  how hot a hand may find it.
Source:   IEC 60512-5-2 derated curve (0.8 of the base curve), read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.ratings import connector_amps
from bom.judge.rule import PairRule
from bom.margins import Margins
from bom.parts import Parts


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the derated curve, for those families that have one."""
    needed = Demand.from_span(second_duty.carry_a)
    if first.family not in ("power_connector", "signal_connector"):
        offered = np.broadcast_to(first.number("rated_a")[:, None], (len(first), len(second)))
        return [at_least("rated amps", offered, needed)]
    share = margins.connector_carry_fraction
    columns = [
        connector_amps(first, area_mm2=float(area), ambient_c=first_duty.ambient_c.high) * share
        for area in second.number("area_mm2")
    ]
    offered = np.stack(columns, axis=1)
    return [at_least(f"{share:.0%} of its curve at {first_duty.ambient_c.high:g} °C", offered, needed)]


RULE = PairRule("takes wire", judge)
