"""A coil's kick must be taken once, and quickly.

Asks:     a coil without suppression gets a two-way clamp that stands off the rail; a coil with it gets none.
Why:      no clamp: a thousand volts eat the key; a plain diode: the contactor opens slowly and its arc lasts.
Harm:     damage.
Says:     fail, can't tell.
Cure:     a two-way clamp of 18 to 30 V, or none where the coil has its own.
Ignores:  the clamp's energy on a coil switched many times a second.
Source:   relay makers' notes (release 5 to 10 times slower with a plain diode), read second-hand on a public
          page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at kind and stand-off."""
    return [
        is_word("kind", parts.words_of("kind"), ("two-way clamp",), "it must take the kick and let go fast"),
        at_least("stand-off volts", parts.rating("standoff_v"), duty.clamps_v),
    ]


RULE = PartRule(("clamp",), judge, only_with=("clamps_v",))
