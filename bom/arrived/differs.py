"""The ratings in which the part that came differs from the one that was ordered, in the words the rules print."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from bom.build import Build
from bom.check.column_words import column_words, figure_words
from bom.check.figures import is_blank
from bom.judge.ask import Answer, judge_pairs, judge_parts
from bom.parts import Parts
from bom.trace import Origin, resolved

NOT_RATINGS = ("part_id", "name", "note", "exceptions")
OWN_NAMES = {"evidence": "known by"}
UNKNOWN = "not known"
# Said behind a column of this unit where no rule names it.
KINDS = {"a": " amps", "v": " volts", "s": " seconds"}


@dataclass(frozen=True)
class Differs:
    """One rating: what it is, of what was ordered, of what came, as printed."""

    what: str
    was: str
    now: str


def differing(place: str, old: Parts, new: Parts, build: Build) -> list[Differs]:
    """List the ratings that differ, those that a rule reads here first."""
    said = _said_by_rules(place, old, build) | _said_by_rules(place, new, build)
    was, now = _ratings(old), _ratings(new)
    changed = [name for name in now if was.get(name, UNKNOWN) != now[name]]
    changed.sort(key=lambda name: name not in said)
    return [
        Differs(said.get(name) or OWN_NAMES.get(name) or _plain(name), was.get(name, UNKNOWN), now[name])
        for name in changed
    ]


def _plain(column: str) -> str:
    return column_words(column) + KINDS.get(column.rpartition("_")[2], "")


def _ratings(part: Parts) -> Mapping[str, str]:
    """Print every rating of a part by its column."""
    words = {name: part.word(name)[0] or UNKNOWN for name in part.words if name not in NOT_RATINGS}
    numbers = {
        name: UNKNOWN if is_blank(part, name) else figure_words(name, float(part.number(name)[0]))
        for name in part.numbers
    }
    return {**numbers, **words}


def _said_by_rules(place: str, part: Parts, build: Build) -> dict[str, str]:
    """Give the name by which a rule first prints each column it reads of the part as it stands."""
    names: dict[str, str] = {}
    for answer in _answers(place, part, build):
        origin = resolved(answer.judgement.trace)
        if isinstance(origin, Origin) and origin.kind == "catalogue" and origin.of == part.ids[0]:
            names.setdefault(origin.name, answer.judgement.what)
    return names


def _answers(place: str, part: Parts, build: Build) -> Iterator[Answer]:
    duties, margins = build.duties, build.facts.margins
    yield from judge_parts(part, duties[place], margins)
    parts = {**{name: entry.part for name, entry in build.filled.items()}, place: part}
    for link in build.loom.links:
        if place in (link.first, link.second) and link.first in parts and link.second in parts:
            first, second = parts[link.first], parts[link.second]
            yield from judge_pairs(link.kind, first, second, duties[link.first], duties[link.second], margins)
