"""Whether a rating is asked at a place: the conditions of the table, in its own few words.

has X             the place has the duty X
beyond C D        its duty D is more than the part's own figure C
word X = v | w    the bike or the place says v or w under X; "word X" alone: it says anything
link K            a link of kind K ends at the place
C = v             the part's own word in column C; "C is not v": another, or none
at P, not at P    the place is P, or another
next F C = v      a part of family F that it is linked with says v in column C; "is not": another, or nothing
broken            current is opened there: a contact's break_a, or an isolator's where no contactor opens first
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass

import numpy as np

from bom.duties.model import Duty
from bom.parts import Parts


@dataclass(frozen=True)
class Here:
    """A place as the conditions ask about it."""

    place: str
    part: Parts
    duty: Duty
    words: Mapping[str, str]
    links: Collection[str]
    neighbours: Collection[Parts] = ()

    def says(self, rest: str) -> bool:
        name, _, value = rest.partition(" = ")
        said = self.words.get(name, "")
        return said in value.split(" | ") if value else bool(said)

    def beyond(self, rest: str) -> bool:
        column, name = rest.split()
        own = float(np.nan_to_num(self.part.number(column)[0]))
        return self.duty.has(name) and not self.duty.needs[name].high <= own

    def broken(self, _: str) -> bool:
        by_hand = self.part.family == "isolator" and self.words["contactor"] == "yes"
        return self.duty.has("break_a") and not by_hand

    def next_to(self, rest: str) -> bool:
        family, _, term = rest.partition(" ")
        return any(part.family == family and has_word(part, term) for part in self.neighbours)


def has_word(part: Parts, term: str) -> bool:
    column, sign, value = term.partition(" = ")
    if not sign:
        column, _, value = term.partition(" is not ")
    return (part.word(column)[0] == value) == bool(sign)


ASKS: Mapping[str, Callable[[Here, str], bool]] = {
    "broken": Here.broken,
    "has": lambda here, rest: here.duty.has(rest),
    "at": lambda here, rest: here.place == rest,
    "not": lambda here, rest: here.place != rest.removeprefix("at "),
    "link": lambda here, rest: rest in here.links,
    "beyond": Here.beyond,
    "next": Here.next_to,
    "word": Here.says,
}


def asked_here(condition: str, here: Here) -> bool:
    """Tell whether every term of a condition holds."""
    for term in filter(None, condition.split("; ")):
        head, _, rest = term.partition(" ")
        if not (ASKS[head](here, rest) if head in ASKS else has_word(here.part, term)):
            return False
    return True
