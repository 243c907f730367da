"""Formulas worked out again: right ones agree, wrong ones are caught, and nothing but arithmetic is run."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.loom.lengths import Length, length_figure
from bom.replay import agrees, replayed
from bom.span import Span
from bom.trace import Fact, Origin, step

positive = st.floats(min_value=0.01, max_value=1e4)


def figure(low: float, high: float | None = None) -> Span:
    return Span(low, low if high is None else high, "", "the test", "", Origin("program", "the test"))


@pytest.mark.parametrize(
    ("formula", "inputs", "low", "high"),
    [
        # Worked: 84 V over 0.9 x 38 mohm = 2456.14 A.
        ("U / (k * R)", {"U": figure(84.0), "k": figure(0.9), "R": figure(0.038)}, 2456.1403508771932, None),
        # Worked: 60 V less 160 A through 20 to 50 mohm = 52 to 56.8 V: the greater ohms give the lower volts.
        ("max(U - I * R, 0)", {"U": figure(60.0), "I": figure(160.0), "R": figure(0.02, 0.05)}, 52.0, 56.8),
        # Worked: 40 V less 1000 A through 50 mohm would be under nothing.
        ("max(U - I * R, 0)", {"U": figure(40.0), "I": figure(1000.0), "R": figure(0.05)}, 0.0, None),
        # Worked: 3^2 / 2 = 4.5; a minus before it.
        ("-a ** 2 / 2 + sqrt(b)", {"a": figure(3.0), "b": figure(16.0)}, -0.5, None),
        # Worked: a figure from 2 to 2 x 5.
        ("a to a * k", {"a": figure(2.0), "k": figure(5.0)}, 2.0, 10.0),
        ("highest(R)", {"R": figure(1.0, 3.0)}, 3.0, None),
        ("lowest(R)", {"R": figure(1.0, 3.0)}, 1.0, None),
        # Worked: ln(1 / (1 - 0.95)) = 2.99573.
        ("ln(1 / (1 - q))", {"q": figure(0.95)}, 2.995732273553991, None),
    ],
)
def test_a_formula_gives_its_figure(formula: str, inputs: dict[str, Span], low: float, high: float | None) -> None:
    assert replayed(step(formula, **inputs)) == pytest.approx((low, low if high is None else high), rel=1e-12)
    assert agrees(step(formula, **inputs), low, low if high is None else high)


def test_a_formula_that_lies_is_caught() -> None:
    right = {"a": figure(2.0), "b": figure(3.0, 4.0)}
    assert agrees(step("a * b", **right), 6.0, 8.0)
    assert not agrees(step("a + b", **right), 6.0, 8.0)
    assert not agrees(step("a * b", **right), 6.0, 6.0)


def test_what_is_not_known_stays_so() -> None:
    assert agrees(step("a * b", a=figure(math.nan), b=figure(2.0)), math.nan, math.nan)
    assert not agrees(step("a * b", a=figure(1.0), b=figure(2.0)), math.nan, math.nan)


@pytest.mark.parametrize("formula", ["b", "a.real", "a[0]", "__import__('os')", "lambda: a", "a if a else a", "'a'"])
def test_only_arithmetic_is_run(formula: str) -> None:
    with pytest.raises((ValueError, KeyError)):
        replayed(step(formula, a=figure(1.0)))


def test_a_printed_point_counts_at_no_fewer_volts_and_no_shorter_time() -> None:
    # Worked: of 100 A at 24 V, 1 ms and 50 A at 48 V, 5 ms only the second covers 30 V; neither covers 60 V.
    points = Fact("two points", [(24.0, 1.0, 100.0), (48.0, 5.0, 50.0)], Origin("curve", "breaking_points"))
    asked = {"t": figure(1.0), "points": points}
    assert replayed(step("printed_break(U, t, points)", U=figure(30.0), **asked)) == (50.0, 50.0)
    assert replayed(step("printed_break(U, t, points)", U=figure(24.0), **asked)) == (100.0, 100.0)
    assert math.isnan(replayed(step("printed_break(U, t, points)", U=figure(60.0), **asked))[0])


def test_an_unknown_kind_of_origin_is_refused() -> None:
    with pytest.raises(KeyError):
        Origin("hearsay", "somebody")


@given(positive, positive, st.integers(1, 5), st.integers(1, 5))
def test_a_length_remembers_what_it_is_a_sum_of(first_m: float, second_m: float, times: int, parts: int) -> None:
    front, rear = (
        Length.single(value_m, Origin("job", f"runs.{name}"))
        for name, value_m in (("front", first_m), ("rear", second_m))
    )
    total = sum([times * front, rear / parts])
    assert total == pytest.approx(times * first_m + second_m / parts)
    found = length_figure(total, "the test", "a wire").origin()
    assert not isinstance(found, Origin | None)
    assert agrees(found, total, total)
    assert set(found.inputs) == {"L_front", "L_rear"}
    assert length_figure(front, "the test", "a wire").origin() == Origin("job", "runs.front")
