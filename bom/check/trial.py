"""Asking the rules of one place again with figures filled in: which of them would change its worst verdict."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from bom.check.asked import Asked, Bench, Grid, asked
from bom.check.figures import (
    AS_IT_IS,
    Figure,
    Figures,
    figure_of,
    filled_in,
    lacking,
    watched,
    ways_to_fill,
)
from bom.errors import RangeError
from bom.judge.finding import Finding, finding_of
from bom.judge.rule import PairRule, PartRule
from bom.judge.verdict import Verdict
from bom.parts import Parts

# Up to so many figures are tried in every mixture; more that belong together are taken from parts that have them.
MOST_MIXED = 3
MOST_AT_ENDS = 8


@dataclass(frozen=True)
class Needed:
    """A figure that changes the worst verdict of its place.

    column   of the part's table, or the name of a curve
    blank    True where there is none, False where it is known by word of mouth alone
    now      worst verdict of the place as it stands
    then     what it would be with this figure, and all others that are asked of the part, good
    waiting  the answers that hang on it, as they stand now
    """

    column: str
    blank: bool
    now: Verdict
    then: Verdict
    waiting: tuple[Finding, ...]


def figures_needed(bench: Bench, part: Parts, others: Sequence[Verdict] = ()) -> list[Needed]:
    """Find the figures of the one part of a place that would change its worst verdict.

    others  what rules about the whole bike say of the place

    All figures it lacks are made good together, then each is left out in turn: one without which the place stands no
    worse is not asked. What fails anyway makes every question idle. What waits for the figure of another part makes
    none idle: two that wait for each other would both be silent.
    """
    found = asked(bench, part)
    if Verdict.FAIL in (*others, *(entry.verdict for entry in found)):
        return []
    lacks, best = _best(bench, part, [entry for entry in found if entry.leans])
    if not best:
        return []
    left_out: list[Figures] = [{name: best[name] for name in best if name != out} for out in best]
    ways = [{}, best, *left_out]
    grid = _grid(bench, part, ways)
    counts = grid[:, 1] != Verdict.CANT_TELL
    floor = max((other for other in others if other != Verdict.CANT_TELL), default=Verdict.PASS)
    worst = [max(Verdict(int(column.max(initial=0))), floor) for column in grid[counts].T]
    return [
        Needed(name, lacks[name], worst[0], worst[1], _waiting(found, grid[:, 1], grid[:, row], part, bench))
        for row, name in enumerate(best, start=2)
        if worst[row] > worst[1]
    ]


def _grid(bench: Bench, part: Parts, ways: Sequence[Figures]) -> Grid:
    """Give the answers, a row each, for every way to fill the part; figures no formula takes together fail."""
    try:
        found = asked(bench, filled_in(part, ways))
    except RangeError:
        if len(ways) == 1:
            return np.full((len(asked(bench, part)), 1), Verdict.FAIL, dtype=np.int8)
        return np.concatenate([_grid(bench, part, [way]) for way in ways], axis=1)
    return np.array([entry.verdicts(len(ways)) for entry in found], dtype=np.int8)


def _best(bench: Bench, part: Parts, leaning: Sequence[Asked]) -> tuple[dict[str, bool], Figures]:
    """Fill what the leaning rules read and lack, rule by rule, with the figures that leave least against the part."""
    lacks: dict[str, bool] = {}
    best: dict[str, Figure] = {}
    for entry in leaning:
        own = {name: blank for name, blank in _read_by(entry, bench, part).items() if name not in lacks}
        if not own:
            continue
        lacks |= own
        asks = [other for other in leaning if other.answer.rule is entry.answer.rule]
        ways: list[Figures] = [{**best, **figures} for figures in _ways(part, own, _figures_asked(asks), bench.table)]
        if ways:
            grid = _grid(bench, part, ways)
            against = [(grid == verdict).sum(axis=0) for verdict in (Verdict.TIGHT, Verdict.CANT_TELL, Verdict.FAIL)]
            best = dict(ways[int(np.lexsort(against)[0])])
    return lacks, best


def _ways(part: Parts, own: Mapping[str, bool], asked_for: Sequence[float], table: Parts) -> list[Figures]:
    """Give the ways to fill some figures: mixed freely where they are few, else as parts of the table have them.

    Where no part of the table has them all, both ends of each are mixed; a free word only another part knows.
    """
    sure: Figures = {name: AS_IT_IS for name, blank in own.items() if not blank}
    blank = [name for name in own if own[name]]
    tried = [ways_to_fill(part, name, asked_for) for name in blank]
    if len(blank) <= MOST_MIXED and all(tried):
        return [{**sure, **dict(zip(blank, some, strict=True))} for some in product(*tried)]
    rows = [{name: figure_of(table.take([row]), name) for name in blank} for row in range(len(table))]
    rows = [row for row in rows if "" not in row.values()]
    if not rows and len(blank) <= MOST_AT_ENDS:
        rows = [dict(zip(blank, some, strict=True)) for some in product(*(each[:2] for each in tried))]
    return [{**sure, **row} for row in rows]


def _read_by(entry: Asked, bench: Bench, part: Parts) -> dict[str, bool]:
    """List the figures of the part that the rule of an answer reads, and that are blank or hearsay."""
    seen: set[str] = set()
    own, shape = watched(part, seen), entry.answer.rule.shape
    if entry.link is None:
        assert isinstance(shape, PartRule)  # an answer of a place alone
        shape.judge(own, bench.duties[bench.place], bench.margins)
    else:
        assert isinstance(shape, PairRule)  # an answer of a pair
        link = entry.link
        first, second = ({**bench.parts, bench.place: own}[name] for name in (link.first, link.second))
        shape.judge(first, second, bench.duties[link.first], bench.duties[link.second], bench.margins)
    return lacking(part, seen)


def _figures_asked(leaning: Sequence[Asked]) -> list[float]:
    """Gather both ends of what the answers ask."""
    needs = [entry.answer.judgement.needed for entry in leaning]
    ends = [float(np.ravel(np.asarray(end, dtype=float))[0]) for need in needs for end in (need.low, need.high)]
    return [end for end in ends if np.isfinite(end)]


def _waiting(found: Sequence[Asked], good: Grid, out: Grid, part: Parts, bench: Bench) -> tuple[Finding, ...]:
    """Tell, as they stand, the answers that a figure left out makes worse."""
    waiting = [entry for entry, with_it, without in zip(found, good, out, strict=True) if without > with_it]
    findings = []
    for entry in waiting:
        link = entry.link
        pair = (link.first, link.second) if link else (bench.place,)
        parts = tuple({**bench.parts, bench.place: part}[name] for name in pair)
        findings.append(finding_of(entry.answer, entry.subject, parts))
    return tuple(findings)
