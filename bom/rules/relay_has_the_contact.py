"""A relay must have the contact its place needs.

Asks:     where it opens a circuit by pulling in, it is a changeover relay; elsewhere it makes by pulling in.
Why:      a relay that only makes can't open anything by being pulled in.
Harm:     runaway.
Says:     fail, can't tell.
Cure:     a changeover relay.
Ignores:  the amps of its rest contact, which many sheets give lower; ask for them.
Source:   ISO 7588-1 terminal 87a of changeover relays, from memory; common practice.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins

ACCEPTED = {"opens": ("changeover",), "makes": ("NO", "changeover")}


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look at the contact."""
    word = duty.word("contact")
    return [is_word("contact", parts.words_of("contact"), ACCEPTED[word], f"it {word} its circuit by pulling in")]


RULE = PartRule(("relay",), judge)
