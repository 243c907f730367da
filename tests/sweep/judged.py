"""Judging a finished build with one figure of one part changed, without choosing again."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import partial

import numpy as np

from bom.build import Build
from bom.check.asked import Asked, Bench, asked
from bom.check.figures import watched
from bom.duties.place_words import words_of
from bom.judge.compare import Judgement
from bom.judge.loom_view import LoomView
from bom.judge.rule import LoomRule, rules
from bom.loom.model import Link
from bom.memory import Memory
from bom.parts import Parts
from bom.span import Span
from bom.trace import Origin, Step, resolved
from tests.sweep.asked_here import Here, asked_here
from tests.sweep.mutants import BETTER, BLANK, Mutation, changed, mutations, one
from tests.sweep.table import Direction, directions

Key = tuple[str, str, str, int]
Answers = dict[Key, int]


@dataclass(frozen=True)
class Outcome:
    """What became of one change: the rules that answer worse than of the sound build."""

    build: str
    place: str
    part: str
    change: Mutation
    worse: tuple[str, ...]
    asked: bool


class Bike:
    """A sound build to be spoilt."""

    def __init__(self, name: str, build: Build) -> None:
        self.name, self.build = name, build
        self.memory = Memory()
        self.parts = {place: entry.part for place, entry in build.filled.items()}
        self.words = {place: words_of(entry.place, build.facts) for place, entry in build.filled.items()}
        self.links: dict[str, list[Link]] = {place: [] for place in self.parts}
        for link in build.loom.links:
            for end in dict.fromkeys((link.first, link.second)):
                if end in self.links and {link.first, link.second} <= set(self.parts):
                    self.links[end].append(link)
        self.read = {place: set[str]() for place in self.parts}
        self.sound = self.whole({p: watched(part, self.read[p]) for p, part in self.parts.items()}, Memory())

    def whole(self, parts: Mapping[str, Parts], memory: Memory | None = None) -> Answers:
        """Ask the rules about the whole bike."""
        view = LoomView(
            self.build.loom, self.build.facts, {**self.parts, **parts}, self.build.duties, memory or self.memory
        )
        answers = (
            (rule.name, answer.subject, answer.what, int(answer.verdict))
            for rule in rules()
            if isinstance(rule.shape, LoomRule)
            for answer in rule.shape.judge(view)
        )
        return numbered(answers)

    def groups(self) -> dict[object, list[str]]:
        """Put places together that ask the same of the same part beside the same neighbours."""
        found: dict[object, list[str]] = {}
        for place, entry in self.build.filled.items():
            if entry.origin in ("chosen", "pinned"):
                found.setdefault(self.group_of(place), []).append(place)
        return found

    def group_of(self, place: str) -> object:
        duties = self.build.duties
        near = set()
        for link in self.links[place]:
            other = link.second if link.first == place else link.first
            near.add((link.kind, link.first == place, self.parts[other].ids[0], duties[other]))
        return self.parts[place].ids[0], duties[place], frozenset(near)

    def asks(self, place: str, change: Mutation) -> bool:
        """Tell whether the rating is asked at the place, by the table; a blank that may pass is not."""
        entry = directions()[change.family, change.column]
        if change.kind == BLANK and entry.blank:
            return False
        links = self.links[place]
        kinds = {link.kind for link in links}
        others = [self.parts[link.second if link.first == place else link.first] for link in links]
        duty, words = self.build.duties[place], self.words[place]
        return asked_here(entry.asked, Here(place, self.parts[place], duty, words, kinds, others))

    def bench(self, place: str) -> Bench:
        build = self.build
        return Bench(place, build.duties, build.facts.margins, self.links[place], self.parts, self.parts[place])


def numbered(answers: Iterable[tuple[str, str, str, int]]) -> Answers:
    """Key answers by rule, subject and what is compared; those alike are told apart by their order."""
    found: Answers = {}
    for rule, subject, what, verdict in answers:
        number = 0
        while (rule, subject, what, number) in found:
            number += 1
        found[rule, subject, what, number] = verdict
    return found


def spoil(bike: Bike, places: Sequence[str]) -> list[Outcome]:
    """Change every rating of the part that stands at alike places, and judge."""
    place = places[0]
    bench, part = bike.bench(place), bike.parts[place]
    now = asked(bench, part)
    changes = [
        change
        for change in mutations(part, partial(needs, bike, place, now), bike.build.facts.job.donor.earth)
        if change.kind == BETTER or bike.asks(place, change)
    ]
    table = changed(part, changes)
    then = asked(bench, table)
    assert [(a.answer.rule.name, a.subject) for a in now] == [(a.answer.rule.name, a.subject) for a in then]
    worse: list[list[str]] = [[] for _ in changes]
    read = columns_read(bench, part)
    for before, after in zip(now, then, strict=True):
        for row in np.flatnonzero(after.verdicts(len(changes)) > before.verdict):
            worse[row].append(before.answer.rule.name)
    out = []
    for row, change in enumerate(changes):
        name = change.family if change.of_curve else change.column
        for at in places:
            rules_worse, seen = worse[row], name in read
            if name in bike.read[at] and change.kind != BETTER and not rules_worse:
                rules_worse, seen = [*rules_worse, *worse_than(bike, {at: one(table, row)})], True
            out.append(Outcome(bike.name, at, part.ids[0], change, tuple(rules_worse), seen))
    return out


def columns_read(bench: Bench, part: Parts) -> set[str]:
    seen: set[str] = set()
    asked(bench, watched(part, seen))
    return seen


def raise_all(bike: Bike) -> list[Outcome]:
    """Raise one rating of one family at all its places at once, and ask the rules about the whole bike."""
    found: dict[tuple[str, str], dict[str, Parts]] = {}
    for place, entry in bike.build.filled.items():
        part = entry.part
        best = {
            (change.family, change.column): change for change in mutations(part, lambda *_: ()) if change.kind == BETTER
        }
        for key, change in best.items():
            name = change.family if change.of_curve else change.column
            if entry.origin in ("chosen", "pinned") and name in bike.read[place]:
                found.setdefault((f"{part.family}", f"{key[0]}.{key[1]}"), {})[place] = one(changed(part, [change]), 0)
    out = []
    for (family, name), parts in found.items():
        worse = worse_than(bike, parts)
        out.append(
            Outcome(bike.name, f"every {family}", "", Mutation(*name.split("."), BETTER, ""), tuple(worse), True)
        )
    return out


def worse_than(bike: Bike, parts: Mapping[str, Parts]) -> list[str]:
    """Name the rules about the whole bike that answer worse with some parts changed."""
    then = bike.whole(parts)
    return [f"{key[0]} @ {key[1]}" for key, verdict in then.items() if verdict > max(bike.sound.get(key, 1), 1)]


def needs(bike: Bike, place: str, now: Sequence[Asked], entry: Direction, sense: str) -> list[float]:
    """Give what a rating must reach: the duty named in the table, and what the rules compare the bare figure with."""
    duty, part = bike.build.duties[place], bike.parts[place]
    spans = [duty.needs[name] for name in entry.duty.split() if duty.has(name)]
    found = [span.high if sense == "at least" else span.low for span in spans]
    for answer in now:
        judgement = answer.answer.judgement
        if entry.duty == "scaled" and judgement.sense not in (sense, "is"):
            found += turned(judgement, entry, part)
        if judgement.sense != sense:
            continue
        asked_for = float(np.ravel(judgement.needed.high if sense == "at least" else judgement.needed.low)[0])
        origin = resolved(judgement.trace)
        if isinstance(origin, Origin) and (origin.name, origin.of) == (entry.column, part.ids[0]):
            found.append(asked_for)
        elif entry.duty == "scaled" and rests_on(origin, entry, part):
            found.append(float(part.number(entry.column)[0]) * asked_for / float(np.ravel(judgement.offered)[0]))
    figures = [figure for figure in found if np.isfinite(figure) and figure > 0]
    if not figures:
        return []
    return [max(figures) if sense == "at least" else min(figures)]


def turned(judgement: Judgement, entry: Direction, part: Parts) -> list[float]:
    """Give the figure of a part that makes what is asked of its neighbour equal to what the neighbour has."""
    if not rests_on(resolved(judgement.needed.trace), entry, part):
        return []
    has, asked_for = float(np.ravel(judgement.offered)[0]), float(np.ravel(judgement.needed.high)[0])
    return [float(part.number(entry.column)[0]) * has / asked_for]


def rests_on(trace: object, entry: Direction, part: Parts) -> bool:
    """Tell whether a figure was worked out, in proportion, from the part's own figure."""
    if isinstance(trace, Origin):
        return (trace.name, trace.of) == (entry.column, part.ids[0])
    inputs = trace.inputs.values() if isinstance(trace, Step) else ()
    return any(rests_on(resolved(item.trace), entry, part) for item in inputs if isinstance(item, Span))
