"""A holder must take the fuse's body and its rating.

Asks:     holder and fuse name the same body, and the holder's amps are at least the fuse's rating.
Why:      a fuse of the right shape can still carry more than the holder's clips or studs.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the holder made for that body and rating.
Ignores:  ambient of the holder.
Source:   ISO 8820-3 and IEC 60269-2 fuse bodies, read second-hand on a public page.
"""

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, same_word
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare body and amps."""
    column = "way_a" if first.family == "fuse_box" else "rated_a"
    rated = second.number("rated_a")[None, :]
    needed = Demand.of(rated, "current", "rating of the fuse", second.cell("rated_a"))
    return [
        same_word("body", first.words_of("takes_body"), second.words_of("body"), "body of the fuse"),
        at_least("amps of the holder", first.rating(column).down(), needed),
    ]


RULE = PairRule("takes fuse", judge)
