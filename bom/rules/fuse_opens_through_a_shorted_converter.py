"""A converter's tap fuse must end a shorted converter through the clamp behind it.

Asks:     the least short through the converter's shorted switch and the clamp surely opens the tap fuse within the
          time set; the fuse breaks the greatest fault that the pack drives through both.
Why:      a clamp takes joules for a millisecond. What flows after that is what the pack gives, not what the clamp is
          made for, and only the tap fuse ends it: one that does not open leaves pack amps in wire and converter.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a tap fuse of fewer amps; or an isolated converter, which needs no clamp.
Ignores:  the milliseconds in which the clamp still holds its own volts, and how it fails: it is taken to fail short
          and to stay so until the fuse has opened, whether its sheet says so or not. How much of a short it stands is
          on no sheet, so its watts are not compared.
Source:   Ohm's law; that a clamp overloaded for long fails short is common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.judge.sure_opening import sure_opening
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the fuse with the least and the greatest short through the clamp."""
    within = f"amps that surely open it within {margins.fuse_open_s:g} s"
    return [
        at_most(within, sure_opening(first, margins).down(), Demand.from_span(second_duty.fault_low_a)),
        at_least("DC breaking amps", first.rating("dc_breaking_a").down(), second_duty.fault_high_a),
    ]


RULE = PairRule("opens through", judge, only_with=("parts_v",))
