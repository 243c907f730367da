"""A converter must be able to open the fuses of the circuits it feeds.

Asks:     with a buffer battery nothing more; without one the converter limits at constant current and its
          label amps are at least twice the fuse.
Why:      a converter that limits at 20 A never opens a 20 A fuse; one that hiccups opens none. The fault
          then burns on.
Harm:     fire.
Says:     fail, can't tell.
Cure:     smaller fuses, a larger converter, or a buffer battery.
Ignores:  the discharge of its output capacitors, which may open a small fuse.
Source:   ISO 8820-3, a blade fuse opens within 5 s at twice its rating, read second-hand on a public page.
"""

from functools import partial

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, same_word
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare limit and fuse, unless a battery feeds the fault."""
    if first_duty.word("buffer") == "yes":
        return []
    needed = second.number("rated_a")[None, :] * margins.limited_source_multiple
    traced = partial(_sure_opening, second, margins)
    return [
        at_least(
            "converter's amps",
            first.rating("output_a").down(),
            Demand.of(needed, "current", f"{margins.limited_source_multiple:g} x the fuse", traced),
        ),
        same_word(
            "overload mode", first.words_of("overload"), "constant current", "a fault must be fed until the fuse opens"
        ),
    ]


def _sure_opening(fuse: Parts, margins: Margins) -> Step:
    """Show the multiple of the fuse's rating that opens it in seconds."""
    return step("k * I_fuse", k=margins.of("limited_source_multiple"), I_fuse=fuse.first("rated_a"))


RULE = PairRule("opens", judge)
