"""A tail must fit what it brings home, reach its splice and stand the heat.

Asks:     a horn's tail has a ring, for its bolt; a lamp's a ring, a clip or a holder of its own; it is at least as long
          as a tail is counted; its conductor stands the temperature that terminals are counted at.
Why:      a clip shakes off a horn; a lead too short hangs on its crimp; a lamp's shell bakes thin plastic.
Harm:     dark.
Says:     fail, can't tell.
Cure:     the tail made for it, with heat-proof insulation.
Ignores:  whether the shell still touches the frame: a ring and a clip leave it there, so the converter is asked as if
          lamps returned by the frame; the volts lost in the tail, about 10 mV.
Source:   common practice, no source.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

OF_A_LAMP = ("ring tail", "clip tail", "insulated holder")


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare kind, length and heat."""
    horn = duty.word("technology") == "motor"
    kinds, of = (("ring tail",), "a horn's case") if horn else (OF_A_LAMP, "a lamp's shell")
    limit = margins.of("terminal_c", "temperature", "temperature of terminals")
    return [
        is_word("kind", parts.words_of("kind"), kinds, of, asked=duty.source_of("technology")),
        at_least("length", parts.rating("length_m"), duty.reach_m),
        at_least("temperature limit", parts.rating("conductor_max_c"), limit),
    ]


RULE = PartRule(("tail",), judge)
