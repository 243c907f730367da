"""A holder must take the fuse's body and its rating.

Asks:     holder and fuse name the same body, and the holder's amps are at least the fuse's rating; a
          bolted fuse sits on the holder's bolts.
Why:      a fuse of the right shape can still carry more than the holder's clips or studs.
Harm:     fire.
Says:     fail, can't tell.
Cure:     the holder made for that body and rating.
Ignores:  ambient of the holder.
Source:   ISO 8820-3 and IEC 60269-2 fuse bodies, read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most, same_word
from bom.judge.rule import PairRule
from bom.parts import Parts, Rating
from bom.read.margins import Margins


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare body and amps."""
    column = "way_a" if first.family == "fuse_box" else "rated_a"
    rated = second.number("rated_a")[None, :]
    needed = Demand.of(rated, "current", "rating of the fuse", second.cell("rated_a"))
    return [
        *_bolts(first, second),
        same_word("body", first.words_of("takes_body"), second.words_of("body"), "body of the fuse"),
        at_least("amps of the holder", first.rating(column).down(), needed),
    ]


def _bolts(holder: Parts, fuse: Parts) -> list[Judgement]:
    """Compare the bolts of strip and square fuses; others are clipped in."""
    if holder.family != "fuse_holder" or fuse.family != "main_fuse":
        return []
    clipped = np.array([body.startswith(CLIPPED) for body in fuse.word("body")])[None, :]
    own = holder.rating("stud_m").down()
    size = np.broadcast_to(own.values, (len(holder), len(fuse)))
    wanted = np.where(clipped, 0.0, fuse.number("stud_m")[None, :])
    offered = Rating(np.where(clipped, 0.0, size), np.broadcast_to(own.evidence, size.shape), own.trace)
    bolt = Demand.of(wanted, "", "bolt of the fuse", fuse.cell("stud_m"))
    return [at_least("bolt of the holder, mm", offered, bolt), at_most("bolt of the holder, mm", offered, bolt)]


CLIPPED = ("cartridge", "blade", "glass")
RULE = PairRule("takes fuse", judge)
