"""The comparisons: equality meets, a blank never passes, hearsay never passes cleanly."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.duties.model import Duty
from bom.judge.ask import judge_pairs
from bom.judge.compare import HEARSAY, Demand, Judgement, at_least, at_most, is_word, same_word, worst
from bom.judge.verdict import Verdict
from bom.parts import Rating, Words
from bom.read.catalogue import Catalogue
from bom.read.margins import Margins
from bom.span import Span

PASS, TIGHT, CANT_TELL, FAIL = Verdict.PASS, Verdict.TIGHT, Verdict.CANT_TELL, Verdict.FAIL
NAN = float("nan")

numbers = st.floats(min_value=-1e9, max_value=1e9)
maybe_blank = st.one_of(numbers, st.just(NAN))
words = st.sampled_from(["", "yes", "no", "any"])


def exactly(value: float) -> Span:
    return Span.of(value, "voltage", "the test")


def between(low: float, high: float) -> Span:
    return Span(low, high, "voltage", "the test", "the fact that settles it")


def verdict(judgement: Judgement) -> Verdict:
    return Verdict(int(judgement.verdicts.ravel()[0]))


@pytest.mark.parametrize(
    ("offered", "needed", "answer"),
    [
        (85.0, exactly(84.0), PASS),
        (84.0, exactly(84.0), PASS),  # equality meets
        (83.9, exactly(84.0), FAIL),
        (NAN, exactly(84.0), CANT_TELL),
        (84.0, exactly(NAN), CANT_TELL),
        (NAN, exactly(NAN), CANT_TELL),
        (0.0, exactly(84.0), FAIL),  # zero is a figure, not a blank
        (92.0, between(84.0, 92.0), PASS),  # meets the bad end
        (91.9, between(84.0, 92.0), CANT_TELL),
        (84.0, between(84.0, 92.0), CANT_TELL),
        (83.9, between(84.0, 92.0), FAIL),  # misses even the good end
        (1e9, between(84.0, np.inf), CANT_TELL),
    ],
)
def test_at_least(offered: float, needed: Span, answer: Verdict) -> None:
    assert verdict(at_least("a rating", [offered], needed)) == answer


@pytest.mark.parametrize(
    ("offered", "needed", "answer"),
    [
        (55.0, exactly(56.0), PASS),
        (56.0, exactly(56.0), PASS),
        (56.1, exactly(56.0), FAIL),
        (NAN, exactly(56.0), CANT_TELL),
        (56.0, exactly(NAN), CANT_TELL),
        (NAN, exactly(NAN), CANT_TELL),
        (50.0, between(50.0, 56.0), PASS),
        (50.1, between(50.0, 56.0), CANT_TELL),
        (56.0, between(50.0, 56.0), CANT_TELL),
        (56.1, between(50.0, 56.0), FAIL),
    ],
)
def test_at_most(offered: float, needed: Span, answer: Verdict) -> None:
    assert verdict(at_most("a rating", [offered], needed)) == answer


@pytest.mark.parametrize(
    ("offered", "answer"),
    [(125.0, PASS), (124.9, TIGHT), (100.0, TIGHT), (99.9, FAIL)],  # 100 x (1 + 1/4) = 125
)
def test_margin_above_gives_tight(offered: float, answer: Verdict) -> None:
    assert verdict(at_least("a rating", [offered], exactly(100.0), margin=0.25)) == answer


@pytest.mark.parametrize(("offered", "answer"), [(75.0, PASS), (75.1, TIGHT), (100.0, TIGHT), (100.1, FAIL)])
def test_margin_beneath_gives_tight(offered: float, answer: Verdict) -> None:
    assert verdict(at_most("a rating", [offered], exactly(100.0), margin=0.25)) == answer


def test_blank_may_be_said_to_fail() -> None:
    assert verdict(at_least("a rating", [NAN], exactly(1.0), blank=FAIL)) == FAIL


@pytest.mark.parametrize("evidence", HEARSAY)
def test_hearsay_is_tight_at_best(evidence: str) -> None:
    told = Rating(np.array([90.0, 80.0, NAN]), np.array([evidence] * 3, dtype=object))
    known = Rating(told.values, np.array(["data sheet", "marked", "measured"], dtype=object))
    assert at_least("DC volts", told, exactly(84.0)).verdicts.tolist() == [TIGHT, FAIL, CANT_TELL]
    assert at_least("DC volts", known, exactly(84.0)).verdicts.tolist() == [PASS, FAIL, CANT_TELL]


def test_hearsay_word_is_tight_at_best() -> None:
    told = Words(("yes", "no", ""), np.array(["seller's word"] * 3, dtype=object))
    assert is_word("isolated", told, ["yes"], "the test").verdicts.tolist() == [TIGHT, FAIL, CANT_TELL]


def test_hearsay_counts_for_each_part_of_a_column_alone() -> None:
    mixed = Rating(np.array([90.0, 90.0]), np.array(["seller's word", "data sheet"], dtype=object))
    assert at_least("DC volts", mixed, exactly(84.0)).verdicts.tolist() == [TIGHT, PASS]


def test_an_exception_stands_over_the_evidence_of_the_part(catalogue: Catalogue) -> None:
    table = catalogue.families["converter"]
    known = table.rating("input_max_v").evidence[table.index("CV-0203")]
    assert known == "seller's word"
    assert table.rating("input_min_v").evidence[table.index("CV-0203")] == "data sheet"


def test_hearsay_in_a_pair_is_tight_at_best(catalogue: Catalogue, margins: Margins) -> None:
    fuse, holder = (catalogue.families[name] for name in ("tap_fuse", "fuse_holder"))
    fuse = fuse.take([fuse.index("TF-0101")])
    index = next(i for i, body in enumerate(holder.word("takes_body")) if body == fuse.word("body")[0])
    holder, empty = holder.take([index]), Duty({}, {})
    told = replace(holder, words={**holder.words, "evidence": ("seller's word",), "exceptions": ("",)}, whole=None)
    known = replace(told, words={**told.words, "evidence": ("data sheet",)})
    for part, answer in ((known, PASS), (told, TIGHT)):
        answers = judge_pairs("takes fuse", part, fuse, empty, empty, margins)
        assert worst([entry.judgement for entry in answers]).tolist() == [[answer]]


def test_pairs_are_a_grid_of_first_by_second() -> None:
    wire_a = np.array([10.0, 30.0, NAN])[None, :]
    fuse = Demand.of(np.array([10.0, 20.0])[:, None], "current", "rating of the fuse")
    grid = at_least("ampacity", wire_a, fuse).verdicts
    assert grid.tolist() == [[PASS, PASS, CANT_TELL], [FAIL, PASS, CANT_TELL]]


def test_same_word_is_a_grid_and_a_blank_is_not_known() -> None:
    left, right = (
        Words(words, np.array(["data sheet"] * len(words), dtype=object)) for words in (("a", "b", ""), ("a", ""))
    )
    grid = same_word("body", left, right, "the test").verdicts
    assert grid.tolist() == [[PASS, CANT_TELL], [FAIL, CANT_TELL], [CANT_TELL, CANT_TELL]]


def test_worst_takes_the_greatest_and_spreads_columns() -> None:
    row, grid = at_least("a", [1.0, 1.0], exactly(1.0)), at_least("b", [[1.0, NAN], [0.0, 1.0]], exactly(1.0))
    assert worst([row, grid]).tolist() == [[PASS, CANT_TELL], [FAIL, PASS]]


def test_fail_is_worse_than_not_knowing() -> None:
    assert Verdict.NOT_ASKED < PASS < TIGHT < CANT_TELL < FAIL


@given(maybe_blank, maybe_blank, maybe_blank, st.floats(0, 1), st.booleans())
def test_a_blank_never_passes(offered: float, one: float, other: float, margin: float, least: bool) -> None:
    low, high = (one, other) if np.isnan([one, other]).any() else (min(one, other), max(one, other))
    compare = at_least if least else at_most
    answer = verdict(compare("a rating", [offered], between(low, high), margin=margin))
    if np.isnan([offered, low, high]).any():
        assert answer == CANT_TELL
    elif answer <= TIGHT:
        assert offered >= high if least else offered <= low
    elif answer == FAIL:
        assert offered < low if least else offered > high


@given(st.lists(words, min_size=1), st.lists(words))
def test_a_blank_word_never_passes(offered: list[str], accepted: list[str]) -> None:
    answers = is_word("a word", offered, accepted, "the test").verdicts
    for word, answer in zip(offered, answers, strict=True):
        assert answer == (CANT_TELL if not word else PASS if word in accepted else FAIL)
