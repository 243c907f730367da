"""A connector must name its contacts, and a sealed one its seals.

Asks:     the part of its contacts is known; where it is sealed, that of its seals too.
Why:      mating half, contacts and seals are left off the list: each is a parcel and a week.
Cure:     the series whose contacts and seals are listed with it; or ask the seller for their part numbers.
Ignores:  the crimp tool, which is a parcel too. How many: one a way, and the spares of the margins.
Source:   common practice, no source.
Harm:     order.
Says:     can't tell, tight.
"""

from dataclasses import replace

from bom.duties.model import Duty
from bom.judge.compare import Judgement, is_word
from bom.judge.rule import PartRule
from bom.parts import Parts, Words
from bom.read.margins import Margins

ANY = "a part number"
NONE = "none"


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Look for the names of what belongs to it."""
    return [
        _named("contacts", parts.words_of("contact_part"), "one a way, bought with it"),
        _named("seals", _seals(parts), "one a way where it is sealed, bought with it"),
    ]


def _named(what: str, words: Words, because: str) -> Judgement:
    return is_word(what, words, tuple(word or ANY for word in words.values), because)


def _seals(parts: Parts) -> Words:
    """Give the seals of each connector; one that is not sealed has none."""
    seals, sealed = parts.words_of("seal_part"), parts.word("sealed")
    values = tuple(seal or (NONE if word == "no" else "") for seal, word in zip(seals.values, sealed, strict=True))
    trace = parts.decided_by("sealed") if values[0] == NONE else seals.trace
    return replace(seals, values=values, trace=trace)


RULE = PartRule(("signal_connector",), judge)
