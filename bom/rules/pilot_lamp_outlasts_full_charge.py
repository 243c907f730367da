"""A pilot lamp at pack volts must stand full charge, and still burn on an empty pack.

Asks:     its highest volts are at least the highest bus volts; it burns at the lowest rest volts.
Why:      a 12 V telltale on 84 V bursts; a "72 V" one made for 75 V burns out at full charge, and a dark lamp then
          says that nothing is live.
Harm:     shock.
Says:     fail, can't tell.
Cure:     a lamp with the wider window; the wire to it has a tap fuse of its own.
Ignores:  dips under load, in which it may dim; a dark lamp never proves that nothing is live.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare both ends of its window."""
    return [
        at_least("highest supply volts", parts.rating("supply_max_v"), duty.voltage_v),
        at_most("lowest supply volts", parts.rating("supply_min_v"), duty.lowest_v),
    ]


RULE = PartRule(("pilot_lamp",), judge)
