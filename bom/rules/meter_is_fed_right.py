"""A meter's supply must suit what feeds it.

Asks:     fed from the measured volts, its supply window covers the pack from sag to highest; fed from 12 V it
          covers the rail and is isolated, so that it does not bond pack minus to the frame.
Why:      a 4 to 30 V supply on the pack dies at once; a common minus makes a second bond.
Harm:     shock.
Says:     fail, can't tell.
Cure:     a two-wire meter for the pack's volts, or an isolated one.
Ignores:  meters that muddle both in their listing: blank is not known.
Source:   common practice, no source.
"""

from functools import partial

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts, Words
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the supply window with whichever volts feed it."""
    twelve = np.array([word == "12 V" for word in parts.word("supply_from")])
    sag, bus, low, high = duty.meter_low_v, duty.meter_v, duty.rail_low_v, duty.rail_high_v
    least = Demand(
        np.where(twelve, low.low, sag.low),
        np.where(twelve, low.high, sag.high),
        "voltage",
        "lowest volts that feed it",
        sag.datum,
        partial(_fed, parts, low, sag),
    )
    most = Demand(
        np.where(twelve, high.low, bus.low),
        np.where(twelve, high.high, bus.high),
        "voltage",
        "highest volts that feed it",
        bus.datum,
        partial(_fed, parts, high, bus),
    )
    apart = [
        isolated if source == "12 V" else "yes" if source else ""
        for isolated, source in zip(parts.word("isolated"), parts.word("supply_from"), strict=True)
    ]
    return [
        at_most("lowest supply volts", parts.rating("supply_min_v"), least),
        at_least("highest supply volts", parts.rating("supply_max_v"), most),
        is_word(
            "keeps pack and 12 V apart",
            Words(tuple(apart), parts.evidence_of("isolated"), parts.cell("isolated")),
            ("yes",),
            "no second bond",
        ),
    ]


def _fed(parts: Parts, rail: Span, pack: Span) -> Step:
    """Show which volts feed it, by the word in its row."""
    twelve = parts.word("supply_from")[0] == "12 V"
    return step("U", U=rail if twelve else pack, supply_from=parts.first_word("supply_from"))


RULE = PartRule(("meter",), judge)
