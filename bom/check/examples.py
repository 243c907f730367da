"""One case of a rule that fails and the one like it that passes, both worked out by the rule itself."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from typing import Any

import numpy as np

from bom.check.case_tables import TABLES, Table, Worked, table, worked
from bom.check.column_words import column_words, figure_words
from bom.check.made_of import made_of, shown
from bom.judge.ask import Answer
from bom.judge.compare import Judgement
from bom.judge.finding import Finding, finding_of
from bom.judge.rule import PairRule, PartRule, Rule
from bom.judge.verdict import Verdict
from bom.read.families import BY_NAME, CURVES
from bom.read.margins import Margins
from bom.span import Span

BAD_KINDS = ("short", "wrong word", "over")
GOOD_KINDS = ("ample", "right word", "exact")
PARTS = ("part", "first", "second")


@dataclass(frozen=True)
class Told:
    """One comparison, and what made its two figures where a formula did."""

    finding: Finding
    made: tuple[str, ...]


@dataclass(frozen=True)
class Example:
    """A case as it is printed.

    title    what it is about
    setting  what is given: the part and what is asked of it, or the starter job and what is changed in it
    told     the comparisons, the worst first
    """

    title: str
    setting: tuple[str, ...]
    told: tuple[Told, ...]

    @property
    def verdict(self) -> Verdict:
        """Give the worst answer."""
        return max((entry.finding.verdict for entry in self.told), default=Verdict.NOT_ASKED)


def of_parts(rule: Rule, shape: PartRule | PairRule, margins: Margins) -> tuple[Example, Example]:
    """Work a bad case of a rule's table, and the one that passes and is most like it: at the same place, if any is."""
    whole = table(rule.name)
    bad, good = min(
        product(
            *([case for case in whole["cases"] if case["verdict"] == word] for word in (rule.says[0].word, "pass"))
        ),
        key=lambda pair: _unlike(whole, *pair),
    )
    return _example(rule, shape, bad, margins), _example(rule, shape, good, margins)


def _unlike(whole: Table, bad: Mapping[str, Any], good: Mapping[str, Any]) -> tuple[int, int, int, int]:
    """Rank a bad and a good case: what they ask otherwise, the kind of the bad one, the parts, the kind of the good."""
    left, right = ({key: {**whole.get(key, {}), **case.get(key, {})} for key in TABLES} for case in (bad, good))
    other = {
        key: sum(left[key].get(name) != right[key].get(name) for name in {*left[key], *right[key]}) for key in TABLES
    }
    parts = sum(other.pop(key) for key in PARTS)
    place = sum(other.values()) + sum(case.get("donor", False) for case in (bad, good))
    return place, _rank(bad, BAD_KINDS), parts, _rank(good, GOOD_KINDS)


def _rank(case: Mapping[str, Any], kinds: Sequence[str]) -> int:
    return kinds.index(case["kind"]) if case["kind"] in kinds else len(kinds)


def _example(rule: Rule, shape: PartRule | PairRule, case: Mapping[str, Any], margins: Margins) -> Example:
    done = worked(shape, table(rule.name), case, margins)
    told = [_told(rule, judgement, done) for judgement in done.answers]
    told.sort(key=lambda entry: -entry.finding.verdict)
    return Example(case["name"], tuple(_setting(done)), tuple(told))


def _told(rule: Rule, judgement: Judgement, done: Worked) -> Told:
    subject = " / ".join(BY_NAME[part.family].title for part in done.parts)
    finding = finding_of(Answer(rule, judgement), subject, done.parts)
    offered, needed = float(np.ravel(judgement.offered)[0]), judgement.needed
    low, high = (float(np.ravel(end)[0]) for end in (needed.low, needed.high))
    figures = (
        Span(offered, offered, needed.dimension, "", "", judgement.trace),
        Span(low, high, needed.dimension, "", "", needed.trace),
    )
    return Told(finding, tuple(filter(None, map(made_of, figures))) if not judgement.words[0] else ())


def _setting(done: Worked) -> Iterator[str]:
    """Say what the case gives: each part with its figures, then what is asked of its place."""
    for said in done.said:
        figures = ", ".join(_figure(name, value) for name, value in said.items() if name != "family")
        yield f"{BY_NAME[said['family']].title}: {figures or 'nothing said of it'}"
    asked = [f"{span.because} {shown(span, '')}" for span in done.needs.values()]
    asked += [f"{name}: {word or 'not known'}" for name, word in done.words.items()]
    if asked:
        yield f"its place: {'; '.join(asked)}"


def _figure(name: str, value: Any) -> str:
    """Print a column, or the rows of a curve, in words and units."""
    if name in CURVES:
        rows = [", ".join(_figure(column, cell) for column, cell in row.items()) for row in value]
        return f"{name.replace('_', ' ')} ({'; '.join(rows) or 'none printed'})"
    if name == "stud_m":
        return f"stud M{value or ' not known'}"
    if name.endswith("_mohm_per_m"):
        return f"resistance {value or 'not known,'} mohm/m"
    if isinstance(value, str):
        return f"{column_words(name)}: {value or 'not known'}"
    return f"{column_words(name)} {figure_words(name, float(value))}"
