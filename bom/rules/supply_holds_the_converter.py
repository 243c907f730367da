"""What carries the 12 V supply without a fuse must hold everything its converter can feed.

Asks:     wire, terminal, relay and fuse box each carry at least the converter's peak amps, or its label amps where
          no peak is given.
Why:      a current limit protects only what stands that current for ever.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a thicker supply wire, a stronger relay or box, or a smaller converter.
Ignores:  a buffer battery, which has a fuse of its own: a weak short may draw that fuse's rating on top.
Source:   IEC 60364-4-43 433 (protection where the source cannot exceed the ampacity), from memory.
"""

from functools import partial

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.ratings import cable_ampacity
from bom.judge.rule import PairRule
from bom.parts import Parts, Rating
from bom.read.margins import Margins
from bom.trace import Step, step

CARRIES = {"terminal": "rated_a", "relay": "carry_a", "fuse_box": "bus_a"}


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the wire's ampacity with the converter's limit."""
    peak, label = first.number("output_peak_a"), first.number("output_a")
    limit = np.where(np.isnan(peak), label, np.fmax(peak, label))[:, None]
    needed = Demand.of(
        limit, "current", "converter's limit", first.rating("output_peak_a").or_greater(first.rating("output_a")).trace
    )
    if second.family != "cable":
        carries = second.rating(CARRIES[second.family])
        if second.family == "relay":
            carries = carries.with_values(
                carries.values * margins.relay_carry_fraction, partial(_counted, carries, margins)
            )
        return [at_least("amps it carries", carries.across(), needed)]
    wire_a = cable_ampacity(second, second_duty, margins).across()
    return [at_least("ampacity of the wire", wire_a, needed)]


def _counted(carries: Rating, margins: Margins) -> Step:
    """Show the part of a relay's label that is counted on."""
    return step("k * I", k=margins.of("relay_carry_fraction"), I=carries.first("current"))


RULE = PairRule("feeds", judge)
