"""Asking a rule about the whole bike again with figures filled in: which of them it is untold for want of."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from bom.build import Build
from bom.check.figures import Figures, filled_in, lacking, watched, ways_to_fill
from bom.judge.finding import Finding, loom_finding
from bom.judge.loom_view import LoomView
from bom.judge.rule import LoomRule, Rule, rules
from bom.judge.verdict import Verdict
from bom.parts import Parts

LOW, HIGH = 0, 1
Gaps = Mapping[str, tuple[str, ...]]


@dataclass(frozen=True)
class OfWhole:
    """A figure of a part that a rule about the whole bike is untold for want of.

    waiting  its answers that hang on it, as they stand now
    then     the worst of them with this figure, and all others they want, good
    """

    place: str
    part: Parts
    column: str
    then: Verdict
    waiting: tuple[Finding, ...]


def figures_the_whole_needs(build: Build) -> Iterator[OfWhole]:
    """Find the blanks of parts without which an answer about the whole bike stays untold.

    All blanks the rule reads are filled together at their good end, then each part's is left out in turn. An answer
    whose subject fails in another way makes the question idle.
    """
    failed = {finding.subject for finding in build.findings if finding.verdict == Verdict.FAIL}
    untold = {f.rule for f in build.findings if not f.part and f.verdict == Verdict.CANT_TELL}
    for rule in rules():
        if rule.name in untold:
            yield from _of_rule(rule, build, failed)


def _of_rule(rule: Rule, build: Build, failed: set[str]) -> Iterator[OfWhole]:
    seen: dict[str, set[str]] = {name: set() for name in build.filled}
    now = _answers(rule, build, {name: watched(entry.part, seen[name]) for name, entry in build.filled.items()})
    gaps = {name: _blanks(entry.part, seen[name]) for name, entry in build.filled.items()}
    gaps = {name: columns for name, columns in gaps.items() if columns}
    if not gaps:
        return
    end = min((LOW, HIGH), key=lambda end: sorted((f.verdict for f in _filled(rule, build, gaps, end)), reverse=True))
    best = _filled(rule, build, gaps, end)
    for place, column in _once(build, gaps):
        part_id = build.filled[place].part_id
        left = {name: _without(build, name, columns, part_id, column) for name, columns in gaps.items()}
        out = {finding.key + finding.what: finding for finding in _filled(rule, build, left, end)}
        turned = [f for f in best if out.get(f.key + f.what, f).verdict > f.verdict and f.subject not in failed]
        keys = {finding.key + finding.what for finding in turned}
        waiting = tuple(finding for finding in now if finding.key + finding.what in keys)
        if waiting:
            yield OfWhole(place, build.filled[place].part, column, max(f.verdict for f in turned), waiting)


def _blanks(part: Parts, seen: set[str]) -> tuple[str, ...]:
    return tuple(name for name, blank in lacking(part, seen).items() if blank and len(ways_to_fill(part, name, ())) > 1)


def _once(build: Build, gaps: Gaps) -> list[tuple[str, str]]:
    """Name each blank of a part once, however many places the part stands at."""
    once = {(build.filled[place].part_id, column): place for place, columns in gaps.items() for column in columns}
    return [(place, column) for (_, column), place in once.items()]


def _without(build: Build, name: str, columns: tuple[str, ...], part_id: str, column: str) -> tuple[str, ...]:
    same = build.filled[name].part_id == part_id
    return tuple(each for each in columns if not (same and each == column))


def _filled(rule: Rule, build: Build, gaps: Gaps, end: int) -> list[Finding]:
    parts = {name: entry.part for name, entry in build.filled.items()}
    for name, columns in gaps.items():
        figures: Figures = {column: ways_to_fill(parts[name], column, ())[end] for column in columns}
        own = filled_in(parts[name], [figures])
        parts[name] = replace(own, ids=parts[name].ids, curves=parts[name].curves)
    return _answers(rule, build, parts)


def _answers(rule: Rule, build: Build, parts: Mapping[str, Parts]) -> list[Finding]:
    assert isinstance(rule.shape, LoomRule)  # its findings name no part
    view = LoomView(build.loom, build.facts, parts, build.duties)
    return [loom_finding(rule, answer) for answer in rule.shape.judge(view)]
