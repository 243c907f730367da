"""Which fuse opens on a short, and when; and how hot the wires get by then."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from bom.circuit.breaking import Breaking
from bom.circuit.ohms import Strand
from bom.judge.ratings import MOST_MULTIPLE, TimePoint, time_band
from bom.parts import Parts
from bom.physics.adiabatic import LONGEST_ADIABATIC_S, withstand_a2s
from bom.physics.fault_heat import end_with_loss_c
from bom.physics.fuse import earliest_s, latest_s, let_through_a2s, surely_opens_multiple

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

SHARE = 0.02  # of the short's amps, below which a branch has no part in it
MAIN_SHARE = 0.5  # of the short's amps: a fuse that carries less leaves it burning when it opens
LEAST_A = 0.01
LASTING_S = 600.0  # by then a bundle is as hot as it gets
LONGEST_S = 86_400.0  # a day stands for "for ever": by then a wire is as hot as it gets


@dataclass(frozen=True)
class Fuse:
    """A fuse as a short sees it.

    column  of the network's resistors
    points  published opening times; none where not known
    breaks  whether it breaks what it blows on
    """

    name: str
    column: int
    rated_a: float
    points: tuple[TimePoint, ...]
    breaks: Breaking

    def would_do_a(self, amps: float, within_s: float) -> float:
        """Give the greatest rating of its kind that surely opens on these amps in time; NaN where none does."""
        return amps / surely_opens_multiple(within_s=within_s, points=self.points) if self.points else float("nan")


def fuse_of(name: str, column: int, part: Parts | None, breaks: Breaking) -> Fuse:
    """Describe a fuse by the part that stands at its place."""
    if part is None:
        return Fuse(name, column, float("nan"), (), breaks)
    return Fuse(name, column, float(part.number("rated_a")[0]), tuple(time_band(part, 0)), breaks)


@dataclass(frozen=True)
class Openings:
    """What the fuses do in some shorts, a row each; -1 for a fuse that is not there.

    first       the fuse that has surely opened first, of those that carry most of the short
    smallest    the smallest fuse of those
    also        another fuse of the path that may open before the first one surely has
    stays       the fuse that blows first and is not known to break; it opens nothing, and no other is counted on
    known       False where none surely opens and the times of one are not known
    earliest_s  before this the first surely does not open
    latest_s    by then it surely has; inf where none does
    low_s       s that heat a wire as the first, else the smallest, lets through at most, on the amps it surely gets
    high_s      the same on the amps it may get
    """

    first: Ints
    smallest: Ints
    also: Ints
    stays: Ints
    known: npt.NDArray[np.bool_]
    earliest_s: Floats
    latest_s: Floats
    low_s: Floats
    high_s: Floats


def openings(fuses: Sequence[Fuse], low_a: Floats, high_a: Floats, short_a: Floats) -> Openings:
    """Work out what opens in some shorts.

    low_a, high_a  least and greatest amps of each fuse, a row a short
    short_a        greatest amps of the shorts themselves
    """
    part_in = (high_a > SHARE * short_a[:, None]) & (high_a > LEAST_A)
    rows, columns = np.nonzero(part_in)
    # A converter's limit of just twice the rating counts as that, whatever the last digits of a division say.
    rated = np.array([fuse.rated_a for fuse in fuses])[columns]
    low, high = (np.round(amps[rows, columns] / rated, 9) for amps in (low_a, high_a))
    times = _times(fuses, columns, np.minimum(low, MOST_MULTIPLE), np.minimum(high, MOST_MULTIPLE))
    # A second source feeds its few amps through a fuse that the short itself does not pass.
    main = high_a[rows, columns] > MAIN_SHARE * short_a[rows]
    in_way = np.flatnonzero(main)
    latest = np.where(np.isnan(times[0]) | ~main, np.inf, times[0])
    count = len(short_a)
    first = _best(rows, latest, count)
    opens = (first >= 0) & np.isfinite(np.append(latest, np.inf)[first])
    others = np.where(np.isnan(times[1]), 0.0, times[1])
    others[first[first >= 0]] = np.inf
    rival = _best(rows, others, count)
    overlaps = opens & (np.append(others, np.inf)[rival] < np.append(latest, np.inf)[first])
    unknown = np.bincount(rows, np.isnan(times[0]) & main, minlength=count) > 0
    index = np.append(columns, -1)
    smallest = np.append(in_way, -1)[_best(rows[in_way], rated[in_way], count)]
    # One that worn contacts keep shut may still open on the greatest amps: the heat of either end is its own.
    meant = np.where(opens, first, smallest)
    sound = np.array([*(fuse.breaks.sound for fuse in fuses), True])
    # The smallest blows before a larger one, whether its times are known or not.
    meant = np.where(sound[index[smallest]], meant, smallest)
    held = ~sound[index[meant]]
    opens &= ~held
    picked = [np.where(opens, np.append(column, np.inf)[first], np.inf) for column in times[:2]]
    heats = [np.where(held, np.inf, np.append(column, np.inf)[meant]) for column in times[2:]]
    return Openings(
        np.where(opens, index[first], -1),
        np.where(held, index[meant], index[smallest]),
        np.where(overlaps & opens, index[rival], -1),
        np.where(held, index[meant], -1),
        opens | held | ~unknown,
        picked[1],
        picked[0],
        *heats,
    )


def _times(fuses: Sequence[Fuse], columns: Ints, low: Floats, high: Floats) -> list[Floats]:
    """Give latest, earliest, and seconds of heat on low and high multiples; fuses of one band are asked together."""
    bands = {points: number for number, points in enumerate(dict.fromkeys(fuse.points for fuse in fuses))}
    band_of = np.array([bands[fuse.points] for fuse in fuses], dtype=np.intp)[columns]
    out = [np.full(len(columns), np.nan) for _ in range(4)]
    for points, number in bands.items():
        some = np.flatnonzero(band_of == number)
        if not points or not len(some):
            continue
        out[0][some] = latest_s(multiple=low[some], points=points)
        out[1][some] = earliest_s(multiple=high[some], points=points)
        for column, multiple in ((out[2], low[some]), (out[3], high[some])):
            through = let_through_a2s(current_a=multiple, rated_a=1.0, points=points)
            column[some] = through / np.square(np.maximum(multiple, 1e-9))
    return out


def _best(rows: Ints, values: Floats, count: int) -> Ints:
    """Give for each of `count` rows where its least value stands, -1 where it has none; the earlier of equal ones."""
    order = np.lexsort((np.where(np.isnan(values), np.inf, values), rows))
    found, at = np.unique(rows[order], return_index=True)
    out = np.full(count, -1, dtype=np.intp)
    out[found] = order[at]
    return out


@dataclass(frozen=True)
class Metals:
    """The cables of the wires, a column each, as the heat formula wants them."""

    strands: tuple[Strand, ...]
    area_mm2: Floats
    conductor_mm: Floats
    outside_mm: Floats
    mohm_per_m: Floats
    insulation: tuple[str, ...]
    start_c: Floats
    air_c: Floats
    limit_c: Floats
    lasting_c: Floats
    ampacity_a: Floats

    def stands_c(self, wires: Ints, time_s: Floats) -> Floats:
        """Give what one wire stands in each short: for seconds its insulation's end, past 5 s its cable's class."""
        return np.where(time_s > LONGEST_ADIABATIC_S, self.lasting_c[wires], self.limit_c[wires])

    @cached_property
    def withstands(self) -> Floats:
        """Give A s^0.5 that each wire withstands with all heat kept: k times its copper."""
        withstand = withstand_a2s(area_mm2=self.area_mm2, start_c=self.start_c, end_c=self.limit_c)
        return np.sqrt(np.asarray(withstand, dtype=np.float64))

    def burns_s(self, wires: Ints, amps: Floats) -> Floats:
        """Give by when one wire is at its insulation's end for each short; NaN past what the heat formula covers."""
        time_s = np.square(self.withstands[wires] / np.maximum(amps, LEAST_A))
        return np.where(time_s > LONGEST_ADIABATIC_S, np.nan, time_s)

    def after_c(self, wires: Ints, amps: Floats, time_s: Floats) -> Floats:
        """Give the temperature of one wire for each short, from the heat it stands in service."""
        air = np.minimum(self.air_c[wires], self.start_c[wires])
        alone = np.asarray(
            end_with_loss_c(
                area_mm2=self.area_mm2[wires],
                conductor_mm=self.conductor_mm[wires],
                outside_mm=self.outside_mm[wires],
                resistance_20_mohm_per_m=self.mohm_per_m[wires],
                insulation=[self.insulation[wire] for wire in wires],
                current_a=np.minimum(amps, 100_000.0),
                time_s=np.minimum(time_s, LONGEST_S),
                start_c=self.start_c[wires],
                ambient_c=air,
            ),
            dtype=np.float64,
        )
        # What lasts meets its neighbours' heat too: the rise goes with the square of the amps, as in service.
        bundled = air + (self.start_c[wires] - air) * np.square(amps / self.ampacity_a[wires])
        return np.where(time_s >= LASTING_S, np.fmax(alone, bundled), alone)
