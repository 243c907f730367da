"""A fuse must open before its wire is overloaded.

Asks:     the rating is at most the wire's ampacity; the sure fusing current is at most 1.45 times it; and
          the fuse opens on overload, not only on a short.
Why:      otherwise the wire is the fuse.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the next thicker wire, or a smaller fuse if it still holds the load.
Ignores:  what the load itself can stand; a fuse does not protect electronics.
Source:   IEC 60364-4-43 433.1 (In <= Iz and I2 <= 1.45 Iz), from memory; IEC 60269-4 (partial-range aR fuses
          do not clear overloads), read second-hand on a public page.
"""

from dataclasses import replace
from functools import partial

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, same_word
from bom.judge.ratings import cable_ampacity
from bom.judge.rule import PairRule
from bom.parts import Parts, Rating
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the wire's ampacity with the fuse's rating and its sure fusing current."""
    wire_a = cable_ampacity(second, second_duty, margins).across()
    rated = first.number("rated_a")[:, None]
    fusing = rated * first.number("conventional_fusing")[:, None]
    rating = Demand.of(rated, "current", "rating of the fuse before it", first.cell("rated_a"))
    limit = margins.fusing_over_ampacity
    return [
        at_least("ampacity of the wire", wire_a, rating),
        at_least(
            f"{limit:g} x the ampacity",
            wire_a.with_values(wire_a.values * limit, partial(_lifted, wire_a, margins)),
            Demand.of(fusing, "current", "sure fusing current of the fuse before it", partial(_fusing, first)),
        ),
        same_word("element of the fuse", first.words_of("element"), "full range", "it must open on overload too"),
    ]


def _lifted(wire_a: Rating, margins: Margins) -> Step:
    """Show the ampacity times what a sure fusing current may be over it."""
    amps = replace(wire_a.first(), dimension="current", because="ampacity of the wire")
    return step("k * I_wire", k=margins.of("fusing_over_ampacity"), I_wire=amps)


def _fusing(fuse: Parts) -> Step:
    """Show the sure fusing current."""
    return step("I_rated * k", I_rated=fuse.first("rated_a"), k=fuse.first("conventional_fusing"))


RULE = PairRule("guards", judge)
