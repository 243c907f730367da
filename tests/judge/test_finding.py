"""Findings in words: figures that rounding would make one."""

import pytest

from bom.judge.finding import _told_apart, _wanted
from bom.judge.verdict import Verdict
from bom.span import Span


@pytest.mark.parametrize(
    ("value", "asked", "dimension", "verdict", "told"),
    [
        (0.298, 0.259, "voltage", Verdict.FAIL, ("0.298 V", "0.259 V")),  # both are 0.3 V to one decimal
        (10.0004, 10.0, "current", Verdict.TIGHT, ("10.0004 A", "10 A")),
        (0.298, 0.259, "voltage", Verdict.PASS, ("0.3 V", "0.3 V")),  # one that holds needs no more digits
        (10.0, 10.0, "current", Verdict.TIGHT, ("10 A", "10 A")),  # equal: the margin is what it lacks
        (0.6, 0.3, "voltage", Verdict.FAIL, ("0.6 V", "0.3 V")),
        (float("nan"), 10.0, "current", Verdict.CANT_TELL, ("not known", "10 A")),
    ],
)
def test_a_shortfall_is_not_rounded_away(
    value: float, asked: float, dimension: str, verdict: Verdict, told: tuple[str, str]
) -> None:
    """Worked: rounded by hand."""
    assert _told_apart(value, Span.of(asked, dimension, "a duty"), verdict) == told


@pytest.mark.parametrize(
    ("sense", "span", "told"),
    [
        ("at least", Span(44.0, 880.0, "current", "empty capacitors"), "880 A to be sure, 44 A at the least"),
        ("at most", Span(44.0, 880.0, "current", "a rush"), "at most 44 A to be sure, 880 A at the most"),
        ("at least", Span(44.0, 44.0, "current", "a duty"), "at least 44 A"),
    ],
)
def test_a_duty_between_two_ends_says_which_end_is_sure(sense: str, span: Span, told: str) -> None:
    """Worked: 88 V through 0.1 to 2 ohm are 880 A down to 44 A; a contact for 880 A does in any case."""
    assert _wanted(sense, "44 A", span) == told
