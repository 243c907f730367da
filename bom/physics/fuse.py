"""When a fuse opens: bounds from its published points, never a curve between them."""

from collections.abc import Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range

TimePoint: TypeAlias = tuple[float, float, float]
"""(multiple of the rating, earliest opening in s, latest opening in s); NaN where none is published."""


def _points_with(points: Sequence[TimePoint], column: int) -> NDArray[np.float64]:
    """Points that publish a time in this column, by rising multiple."""
    table = np.array(sorted(points), dtype=float).reshape(-1, 3)
    if np.any(np.isnan(table[:, 0])) or np.any(np.diff(table[:, 0]) <= 0.0):
        raise RangeError("points: each multiple of the rating must be a number that stands once only")
    known: NDArray[np.float64] = table[~np.isnan(table[:, column])]
    return known


def latest_s(*, multiple: Quantity, points: Sequence[TimePoint]) -> Answer:
    """Time within which the fuse has surely opened.

    The latest time published at this multiple, or else at the nearest lower one that has a latest time:
    more current never opens a fuse later.

    multiple  0 to 1000   current over the fuse's rating
    points    (multiple, earliest_s, latest_s) from the fuse's family; NaN where none is published
    returns   s; inf below the first published latest time: it need never open

    Raises RangeError outside that span, or when a multiple stands twice.
    Leaves out ambient (a warm fuse opens sooner) and arcing after it melts.
    Source: common practice with time bands such as those of ISO 8820-3, no source for the reading rule.
    """
    check_range("multiple", multiple, low=0.0, high=1000.0)
    known = _points_with(points, 2)
    times = np.concatenate(([np.inf], known[:, 2]))
    answer = times[np.searchsorted(known[:, 0], multiple, side="right")]
    return np.where(np.isnan(multiple), np.nan, answer)[()]


def earliest_s(*, multiple: Quantity, points: Sequence[TimePoint]) -> Answer:
    """Time before which the fuse surely does not open.

    The earliest time published at this multiple, or else at the nearest higher one that has an earliest
    time: less current never opens a fuse sooner.

    multiple  0 to 1000   current over the fuse's rating
    points    as `latest_s`
    returns   s; 0 above the last published earliest time: it may open at once

    Raises RangeError outside that span, or when a multiple stands twice.
    Leaves out ambient (a warm fuse opens sooner) and age.
    Source: as `latest_s`.
    """
    check_range("multiple", multiple, low=0.0, high=1000.0)
    known = _points_with(points, 1)
    times = np.concatenate((known[:, 1], [0.0]))
    answer = times[np.searchsorted(known[:, 0], multiple, side="left")]
    return np.where(np.isnan(multiple), np.nan, answer)[()]


def let_through_a2s(*, current_a: Quantity, rated_a: float, points: Sequence[TimePoint]) -> Answer:
    """Greatest I2t that the fuse surely lets through before it has opened.

    The least of I^2 * latest(I) and, for every published multiple m below the current, (m * rated)^2 * latest(m):
    the I2t that melts an element never grows with the current.

    current_a  0 to 100 000
    rated_a    0.01 to 5000
    points     as `latest_s`
    returns    A2 s; inf below the first published latest time

    Raises RangeError outside those spans, or when a multiple stands twice.
    Leaves out arcing that lasts longer on more current than at the published points; a maker's own let-through
    stands over this.
    Source: derived (melting I2t falls to its adiabatic floor as the current grows, IEC 60269-1 annex, from memory).
    """
    check_range("current_a", current_a, low=0.0, high=100_000.0)
    check_range("rated_a", rated_a, low=0.01, high=5000.0)
    known = _points_with(points, 2)
    sure = np.square(known[:, 0] * rated_a) * known[:, 2]
    best = np.minimum.accumulate(np.concatenate(([np.inf], sure)))
    multiple = np.minimum(np.asarray(current_a) / rated_a, 1000.0)
    promised = best[np.searchsorted(known[:, 0], multiple, side="right")]
    times = latest_s(multiple=multiple, points=points)
    by_time = np.where(np.isinf(times), np.inf, np.square(current_a) * np.where(np.isinf(times), 0.0, times))
    return np.where(np.isnan(multiple), np.nan, np.minimum(promised, by_time))[()]


def surely_opens_multiple(*, within_s: float, points: Sequence[TimePoint]) -> float:
    """Smallest published multiple of the rating at which the fuse has surely opened in time.

    within_s  0 to 1e6   time allowed
    points    as `latest_s`
    returns   ratio; NaN when no published point promises it

    Raises RangeError outside that span, or when a multiple stands twice.
    Leaves out multiples between the published ones, which promise no more than the lower one.
    Source: as `latest_s`.
    """
    check_range("within_s", within_s, low=0.0, high=1e6)
    known = _points_with(points, 2)
    in_time = known[known[:, 2] <= within_s, 0]
    return float(in_time[0]) if in_time.size else float("nan")


def rerating_fraction(*, ambient_c: Quantity, points: Sequence[tuple[float, float]]) -> Answer:
    """Share of its rating that a fuse keeps in warm air.

    A straight line between published temperatures; below the first one its value; never above 1.

    ambient_c  -60 to the last published temperature   air about the fuse
    points     (temperature in C, fraction) from the fuse's family
    returns    ratio

    Raises RangeError outside that span, without points, or when a temperature stands twice.
    Leaves out heat from the fuse's neighbours: enter the air that it truly sits in.
    Source: the shape of makers' re-rating curves, read second-hand on a public page.
    """
    table = np.array(sorted(points), dtype=float).reshape(-1, 2)
    if not table.size or np.any(np.isnan(table)) or np.any(np.diff(table[:, 0]) <= 0.0):
        raise RangeError("points: at least one temperature is needed, each with a fraction, none twice")
    check_range("ambient_c", ambient_c, low=-60.0, high=float(table[-1, 0]))
    return np.minimum(np.interp(ambient_c, table[:, 0], table[:, 1]), 1.0)
