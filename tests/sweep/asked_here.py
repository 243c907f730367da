"""Whether a rating is asked at a place: the conditions of the table, in its own few words.

has X             the place has the duty X
beyond C D        its duty D is more than the part's own figure C
word X = v | w    the bike or the place says v or w under X; "word X" alone: it says anything
link K            a link of kind K ends at the place
C = v             the part's own word in column C; "C is not v": another, or none
at P, not at P    the place is P, or another
broken            current is opened there: a contact's break_a, or an isolator's where no contactor opens first
"""

from collections.abc import Collection, Mapping

import numpy as np

from bom.duties.model import Duty
from bom.parts import Parts


def asked_here(condition: str, place: str, part: Parts, duty: Duty, words: Mapping[str, str], links: Collection[str]) -> bool:
    return all(_holds(term, place, part, duty, words, links) for term in condition.split("; ") if term)


def _holds(term: str, place: str, part: Parts, duty: Duty, words: Mapping[str, str], links: Collection[str]) -> bool:
    head, _, rest = term.partition(" ")
    if term == "broken":
        return duty.has("break_a") and (part.family != "isolator" or words["contactor"] == "no")
    if head == "has":
        return duty.has(rest)
    if head in ("at", "not"):
        return (place == term.removeprefix("not ").removeprefix("at ")) == (head == "at")
    if head == "link":
        return rest in links
    if head == "beyond":
        column, name = rest.split()
        return duty.has(name) and not duty.needs[name].high <= float(np.nan_to_num(part.number(column)[0]))
    if head == "word":
        name, _, value = rest.partition(" = ")
        said = words.get(name, "")
        return said in value.split(" | ") if value else bool(said)
    column, sign, value = term.partition(" = ")
    if not sign:
        column, _, value = term.partition(" is not ")
    return (part.word(column)[0] == value) == bool(sign)
