import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.errors import RangeError
from bom.physics.fuse import earliest_s, latest_s, let_through_a2s, rerating_fraction, surely_opens_multiple

NAN = math.nan
POINTS = [(1.0, 360000, NAN), (1.35, 60, 1800), (2.0, 2, 50), (3.5, NAN, 7), (6.0, 0.04, NAN)]


@pytest.mark.parametrize(
    ("multiple", "soonest", "longest"),
    [
        (0.5, 360000, math.inf),
        (1.0, 360000, math.inf),
        (1.2, 60, math.inf),
        (1.35, 60, 1800),
        (1.9, 2, 1800),
        (2.0, 2, 50),
        (2.5, 0.04, 50),  # 3.5 has no earliest time: the next one that has counts
        (3.5, 0.04, 7),
        (6.0, 0.04, 7),  # 6.0 has no latest time: the last one that has counts
        (10.0, 0.0, 7),
    ],
)
def test_bounds_at_and_between_points(multiple, soonest, longest):
    assert earliest_s(multiple=multiple, points=POINTS) == soonest
    assert latest_s(multiple=multiple, points=POINTS) == longest


@given(multiple=st.floats(0.1, 12.0), more=st.floats(0.0, 5.0))
def test_more_current_never_opens_later(multiple, more):
    assert latest_s(multiple=multiple + more, points=POINTS) <= latest_s(multiple=multiple, points=POINTS)
    assert earliest_s(multiple=multiple + more, points=POINTS) <= earliest_s(multiple=multiple, points=POINTS)
    assert earliest_s(multiple=multiple, points=POINTS) <= latest_s(multiple=multiple, points=POINTS)


def test_the_order_of_points_does_not_matter():
    assert latest_s(multiple=np.array([1.5, 3.0]), points=POINTS[::-1]).tolist() == [1800, 50]


def test_without_points_nothing_is_promised():
    assert latest_s(multiple=5.0, points=[]) == math.inf
    assert earliest_s(multiple=5.0, points=[]) == 0.0
    assert math.isnan(surely_opens_multiple(within_s=5.0, points=[]))


@pytest.mark.parametrize("points", [[(2.0, 1, 5), (2.0, 1, 6)], [(NAN, 1, 5)]])
def test_points_that_cannot_be_read_are_refused(points):
    for bound in (earliest_s, latest_s):
        with pytest.raises(RangeError, match="stands once only"):
            bound(multiple=2.0, points=points)


@pytest.mark.parametrize(("within_s", "multiple"), [(1800, 1.35), (1799, 2.0), (50, 2.0), (49.9, 3.5), (7, 3.5)])
def test_smallest_multiple_that_surely_opens(within_s, multiple):
    assert surely_opens_multiple(within_s=within_s, points=POINTS) == multiple


@pytest.mark.parametrize("within_s", [6.9, NAN])
def test_no_multiple_surely_opens(within_s):
    assert math.isnan(surely_opens_multiple(within_s=within_s, points=POINTS))


@pytest.mark.parametrize("within_s", [-0.001, 1_000_001.0])
def test_times_outside_the_range_are_refused(within_s):
    with pytest.raises(RangeError, match="within_s"):
        surely_opens_multiple(within_s=within_s, points=POINTS)


def test_rerating_between_below_and_above():
    points = [(65, 0.85), (20, 1.0), (85, 0.75)]
    assert rerating_fraction(ambient_c=75.0, points=points) == pytest.approx(0.80)
    assert rerating_fraction(ambient_c=-20.0, points=points) == 1.0
    assert rerating_fraction(ambient_c=-20.0, points=[(0, 1.1), (50, 0.9)]) == 1.0
    assert rerating_fraction(ambient_c=-20.0, points=[(25, 0.95), (50, 0.9)]) == 0.95
    with pytest.raises(RangeError, match=r"ambient_c = 85.1: the most this formula takes is 85"):
        rerating_fraction(ambient_c=85.1, points=points)


@pytest.mark.parametrize("points", [[], [(20, NAN)], [(20, 1.0), (20, 0.9)]])
def test_rerating_needs_points(points):
    with pytest.raises(RangeError, match="at least one temperature"):
        rerating_fraction(ambient_c=20.0, points=points)


# Worked: a 10 A blade with the published points 2 x 5 s, 3.5 x 0.5 s, 6 x 0.1 s (ISO 8820-3, read second-hand).
# I2t at the points: 20^2 x 5 = 2000, 35^2 x 0.5 = 612.5, 60^2 x 0.1 = 360 A2s; it never grows with the current.
BLADE = ((2.0, 0.15, 5.0), (3.5, 0.08, 0.5), (6.0, 0.03, 0.1))


@pytest.mark.parametrize(
    ("current_a", "let_through"),
    [(20.0, 2000.0), (22.0, 2000.0), (35.0, 612.5), (40.0, 612.5), (60.0, 360.0), (600.0, 360.0), (60_000.0, 360.0)],
)
def test_let_through_is_that_of_the_last_point_passed(current_a, let_through):
    assert let_through_a2s(current_a=current_a, rated_a=10.0, points=BLADE) == pytest.approx(let_through)


def test_below_every_latest_time_all_is_let_through():
    assert let_through_a2s(current_a=19.9, rated_a=10.0, points=BLADE) == math.inf
    assert let_through_a2s(current_a=0.0, rated_a=10.0, points=BLADE) == math.inf


def test_let_through_of_a_larger_fuse_goes_with_the_square_of_its_rating():
    assert let_through_a2s(current_a=1200.0, rated_a=20.0, points=BLADE) == pytest.approx(4 * 360.0)


@pytest.mark.parametrize("current_a", [-0.1, 100_001.0])
def test_let_through_keeps_its_range(current_a):
    with pytest.raises(RangeError, match="current_a"):
        let_through_a2s(current_a=current_a, rated_a=10.0, points=BLADE)


def test_let_through_agrees_with_printed_melting_figures_of_a_40_a_blade():
    """Published: a maker's 40 A medium blade melts at 3300 A2s typically (read second-hand); the bound lies above."""
    points = ((1.35, 0.75, 600.0), (2.0, 0.15, 5.0), (3.5, 0.08, 0.5), (6.0, NAN, 0.15))
    bound = let_through_a2s(current_a=1000.0, rated_a=40.0, points=points)
    assert bound == pytest.approx((6 * 40) ** 2 * 0.15)
    assert bound > 3300
