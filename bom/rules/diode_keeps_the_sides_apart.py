"""The two diodes of a telltale must carry it and block the other side.

Asks:     it is a diode; its amps are at least the telltale's; its reverse volts at least the highest of the rail.
Why:      what fails short joins left and right, and both sides flash; a clamp conducts both ways.
Harm:     dark.
Says:     fail, can't tell.
Cure:     two plain diodes of 1 A and 100 V or more, their ends with the ring towards the telltale.
Ignores:  what a cold filament takes at first, which a diode stands for milliseconds; the 0.7 V lost in it; kicks of
          coils on the rail.
Source:   diode ratings (mean forward amps, repetitive peak reverse volts), from memory; common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

DIODES = ("plain diode", "ideal diode")


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare kind, amps and reverse volts."""
    return [
        is_word("kind", parts.words_of("kind"), DIODES, "it lets amps through one way only"),
        at_least("rated amps", parts.rating("rated_a"), duty.carry_a),
        at_least("reverse volts", parts.rating("reverse_v"), duty.blocks_v),
    ]


RULE = PartRule(("clamp",), judge, only_with=("blocks_v",))
