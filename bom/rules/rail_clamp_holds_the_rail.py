"""A clamp across the 12 V supply must stay quiet on the rail and hold off what its parts do not bear.

Asks:     a one-way or two-way clamp whose stand-off is at least the highest rail volts, and whose clamp volts are at
          most what 12 V parts bear.
Why:      12 V of stand-off conducts all day on a 14.4 V rail; a clamp of 39 V lets lamps and relays see 39 V.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a clamp of about 15 V stand-off and less than 24 V at its peak amps.
Ignores:  how far its volts rise beyond its peak amps; it then fails short, and the tap fuse opens.
Source:   common practice, no source; road vehicles of 12 V are tried at 24 V for a minute (ISO 16750-2, from memory).
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, at_most, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at kind, stand-off and clamp volts."""
    kinds = ("one-way clamp", "two-way clamp")
    return [
        is_word("kind", parts.words_of("kind"), kinds, "a diode holds nothing off"),
        at_least("stand-off volts", parts.rating("standoff_v"), duty.rail_high_v),
        at_most("clamp volts", parts.rating("clamp_v"), duty.parts_v),
    ]


RULE = PartRule(("clamp",), judge, only_with=("parts_v",))
