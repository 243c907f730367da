"""A connector must carry its amps with the wire that is really in it.

Asks:     80 % of its curve at the fitted wire and the ambient is at least the running amps.
Why:      headline amps are for the thickest wire in cool air; the wire is the connector's heat sink.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a larger connector, or a thicker wire in it.
Ignores:  how hot a hand may find it.
Source:   IEC 60512-5-2 derated curve (0.8 of the base curve), read second-hand on a public page.
"""

from functools import partial

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rating_traces import connector_curve
from bom.judge.ratings import connector_amps
from bom.judge.rule import PairRule
from bom.parts import Parts, Rating
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the derated curve, for those families that have one."""
    needed = Demand.from_span(second_duty.carry_a)
    if first.family not in ("power_connector", "signal_connector"):
        rated = first.rating("rated_a")
        return [at_least("rated amps", _grid([rated] * len(second)), needed)]
    share, ambient_c = margins.connector_carry_fraction, first_duty.ambient_c.high
    columns = [connector_amps(first, area_mm2=float(area), ambient_c=ambient_c) for area in second.number("area_mm2")]
    curves = _grid(columns)
    traced = partial(_derated, (first, second), first_duty, curves, margins)
    what = f"{share:.0%} of its curve at {ambient_c:g} °C"
    return [at_least(what, curves.with_values(curves.values * share, traced), needed)]


def _grid(columns: list[Rating]) -> Rating:
    """Put one column of ratings for each second part side by side."""
    return Rating(
        np.stack([column.values for column in columns], axis=1),
        np.stack([column.evidence for column in columns], axis=1),
        columns[0].trace,
    )


def _derated(pair: tuple[Parts, Parts], duty: Duty, curve: Rating, margins: Margins) -> Step:
    """Show the part of the curve that is counted on, and where it was read."""
    amps = connector_curve(*pair, duty.ambient_c, float(curve.values[0, 0]))
    return step("k * I", k=margins.of("connector_carry_fraction"), I=amps)


RULE = PairRule("takes wire", judge)
