"""The wire that a short heats most, of those with a guard and of those without."""

from collections.abc import Sequence

import numpy as np
import numpy.typing as npt

from bom.circuit.clearing import LEAST_A, Metals, Openings
from bom.circuit.fault import Hot

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Ends = tuple[Floats, Floats]
"""Least and greatest amps, or what came of them."""


def hottest(
    metals: Metals, guarded: npt.NDArray[np.bool_], amps: Ends, opened: Openings
) -> tuple[list[Hot | None], list[Hot | None]]:
    """Give the hottest wire of each short, of those with a guard and of those without.

    amps  of every wire, a column each and a row a short
    Both ends count: few amps for long, and many for short. All are warmed together: it takes as long as for few.
    """
    rows, times = np.arange(len(amps[0])), (opened.low_s, opened.high_s)
    picked = [_most_strained(metals, amps[1], np.flatnonzero(which)) for which in (guarded, ~guarded)]
    carried = [None if best is None else (amps[0][rows, best], amps[1][rows, best]) for best in picked]
    asked = [
        (best, own_a, np.nan_to_num(time_s, nan=np.inf))
        for best, ends in zip(picked, carried, strict=True)
        if best is not None and ends is not None
        for own_a, time_s in zip(ends, times, strict=True)
    ]
    warmed = iter(_warmed(metals, asked))
    nothing: list[Hot | None] = [None] * len(rows)
    with_guard, bare = (
        nothing if best is None or ends is None else _hot(metals, best, (next(warmed), next(warmed)), ends, times)
        for best, ends in zip(picked, carried, strict=True)
    )
    return with_guard, bare


def _most_strained(metals: Metals, high: Floats, which: Ints) -> Ints | None:
    """Pick for each short the one of some wires that is nearest to what its insulation stands; None of no wires."""
    if not len(which):
        return None
    # Of wires alike the first, whatever the last digits say.
    strained = np.round(high[:, which] / metals.withstands[which], 9)
    return np.asarray(which[np.argmax(strained, axis=1)], dtype=np.intp)


def _warmed(metals: Metals, asked: Sequence[tuple[Ints, Floats, Floats]]) -> list[Floats]:
    """Give the temperatures of several rows of wires, each with its amps and seconds."""
    if not asked:
        return []
    wires, amps, time_s = (np.concatenate(column) for column in zip(*asked, strict=True))
    return np.split(metals.after_c(wires, amps, time_s), len(asked))


def _hot(metals: Metals, best: Ints, ends: Ends, amps: Ends, times: Ends) -> list[Hot | None]:
    """Take the hotter end of each short; nothing where the wire carries nothing."""
    many = ends[1] >= ends[0]
    most_a, time_s = np.where(many, amps[1], amps[0]), np.where(many, times[1], times[0])
    columns = (
        best,
        np.maximum(*ends),
        metals.stands_c(best, time_s),
        metals.start_c[best],
        most_a,
        time_s,
        metals.burns_s(best, most_a),
    )
    rows = zip(*(column.tolist() for column in columns), strict=True)
    hot = [Hot(metals.strands[wire].wire.name, *figures) for wire, *figures in rows]
    return [each if flows else None for each, flows in zip(hot, amps[1] > LEAST_A, strict=True)]
