"""Keep every formula inside the range it is published or tested for."""

from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

from bom.errors import RangeError

Quantity: TypeAlias = float | NDArray[np.float64]
"""One number, or a column of them."""

Answer: TypeAlias = Any
"""A float where every argument was a float, else an array of their common shape."""


def check_range(name: str, value: Quantity, *, low: float, high: float) -> None:
    """Raise RangeError, naming the limit and the value, when any value lies outside low to high.

    NaN (unknown) passes here and comes out of the formula as NaN.
    """
    if isinstance(value, float) and low <= value <= high:
        return  # most are single figures, and most are right
    values = np.asarray(value, dtype=float)
    if np.any(values < low):
        raise RangeError(f"{name} = {np.nanmin(values):g}: the least this formula takes is {low:g}")
    if np.any(values > high):
        raise RangeError(f"{name} = {np.nanmax(values):g}: the most this formula takes is {high:g}")


def check_order(lower_name: str, lower: Quantity, upper_name: str, upper: Quantity) -> None:
    """Raise RangeError when any lower value is above its upper one. NaN passes."""
    lows, highs = np.broadcast_arrays(np.asarray(lower, dtype=float), np.asarray(upper, dtype=float))
    wrong = lows > highs
    if np.any(wrong):
        raise RangeError(
            f"{lower_name} = {lows[wrong][0]:g} is above {upper_name} = {highs[wrong][0]:g}: "
            f"{lower_name} must be no more than {upper_name}"
        )


def known_only(answer: Answer, *arguments: Quantity) -> Answer:
    """Give the answer in the arguments' common shape, with NaN wherever any argument is NaN."""
    whole, *columns = np.broadcast_arrays(np.asarray(answer, dtype=float), *arguments)
    unknown = np.zeros(whole.shape, dtype=bool)
    for column in columns:
        unknown |= np.isnan(column)
    return np.where(unknown, np.nan, whole)[()]
