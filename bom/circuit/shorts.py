"""Shorts: what flows when two points of a network touch, for many pairs of points at once.

Thevenin's theorem on one factorised matrix: amps = open volts / (ohms seen from the pair + ohms of the short), and
every other current by superposition. The network holds resistors and sources alone: a short takes all there is.
"""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from bom.circuit.compiled import Compiled

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
CHUNK = 256  # pairs at a time: keeps a large loom's answers small in memory


@dataclass(frozen=True)
class Shorted:
    """Some shorts, a row each.

    rows     which pairs these are
    open_v   between the two points before they touch; 0 for points of two islands
    amps     through the short
    through  of every resistor, a column each
    given    of every source, a column each
    """

    rows: slice
    open_v: Floats
    amps: Floats
    through: Floats
    given: Floats


def shorted(compiled: Compiled, pairs: Ints, *, short_ohm: float) -> Iterator[Shorted]:
    """Short each pair of points by itself; a pair in two islands carries nothing.

    pairs      numbers of points, two a row
    short_ohm  ohm of the short itself, 0 or more
    """
    factors = compiled.matrix(
        np.concatenate([compiled.resistor_ends, compiled.source_ends]),
        np.concatenate([compiled.siemens, compiled.source_s]),
    )
    rest = np.zeros(len(compiled.points))
    push = compiled.source_v * compiled.source_s
    np.add.at(rest, compiled.source_ends[:, 0], push)
    np.subtract.at(rest, compiled.source_ends[:, 1], push)
    open_v = factors.solve(rest)
    for start in range(0, len(pairs), CHUNK):
        some = pairs[start : start + CHUNK]
        between, amps, volts = _each(compiled, some, open_v, factors.solve(_pushes(some, len(open_v))).T, short_ohm)
        through = (volts[:, compiled.resistor_ends[:, 0]] - volts[:, compiled.resistor_ends[:, 1]]) * compiled.siemens
        held = volts[:, compiled.source_ends[:, 0]] - volts[:, compiled.source_ends[:, 1]]
        given = (compiled.source_v - held) * compiled.source_s
        yield Shorted(slice(start, start + len(some)), between, amps, through, given)


def _pushes(pairs: Ints, points: int) -> Floats:
    """Push one amp into the first point of each pair and take it from the second, a column each."""
    rows = np.arange(len(pairs))
    push = np.zeros((points, len(pairs)))
    np.add.at(push, (pairs[:, 0], rows), 1.0)
    np.subtract.at(push, (pairs[:, 1], rows), 1.0)
    return push


def _each(
    compiled: Compiled, pairs: Ints, open_v: Floats, lifted: Floats, short_ohm: float
) -> tuple[Floats, Floats, Floats]:
    """Give the volts that stand across each pair, the amps of its short, and the volts of all points with it."""
    rows, first, second = np.arange(len(pairs)), pairs[:, 0], pairs[:, 1]
    seen_ohm = lifted[rows, first] - lifted[rows, second]
    together = (compiled.islands[first] == compiled.islands[second]) & (first != second)
    between = np.where(together, open_v[first] - open_v[second], 0.0)
    with np.errstate(divide="ignore", invalid="ignore"):
        amps = np.where(together, between / (seen_ohm + short_ohm), 0.0)
    return between, amps, open_v - np.where(together[:, None], lifted, 0.0) * amps[:, None]
