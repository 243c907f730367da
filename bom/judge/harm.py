"""What goes wrong where a rule fails, in a closed list; and what the trade's four tags are called here.

A rule names one harm: the worst of what its failing does at first hand. The list stands here alone: the parser of
rules, the findings, the command `rules` and the documents read it.
"""

from collections.abc import Mapping
from enum import IntEnum

from bom.judge.verdict import Verdict


class Harm(IntEnum):
    """What goes wrong; the least value is the worst."""

    FIRE = 1
    SHOCK = 2
    RUNAWAY = 3
    DARK = 4
    DAMAGE = 5
    STRANDED = 6
    ORDER = 7

    @property
    def word(self) -> str:
        """Name the harm as rules and papers write it."""
        return self.name.lower()

    @property
    def meaning(self) -> str:
        """Tell in one sentence what goes wrong."""
        return _MEANINGS[self]


_MEANINGS = {
    Harm.FIRE: "Something arcs, melts, shorts or burns: a contact, a joint, a wire or a cell.",
    Harm.SHOCK: "Traction volts can be touched, or the frame is live.",
    Harm.RUNAWAY: "The bike drives by itself, cannot be stopped, or loses its brakes.",
    Harm.DARK: "Lights, signals or drive are lost on the road.",
    Harm.DAMAGE: "A part dies.",
    Harm.STRANDED: "The bike does not start, cuts out at the kerb, or stands with a flat battery.",
    Harm.ORDER: "A wrong fit, a small part missing, a second parcel, a label or comfort.",
}
BY_WORD: Mapping[str, Harm] = {harm.word: harm for harm in Harm}

# The trade marks what it finds with four tags; a note is a step that the build sheet prints, not an answer.
TRADE_TAGS: Mapping[str, str] = {
    "STOP": Verdict.FAIL.word,
    "WARN": Verdict.TIGHT.word,
    "ASK": Verdict.CANT_TELL.word,
    "NOTE": "note",
}
