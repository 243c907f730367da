"""Which fuse opens on a short, and when; and how hot the wires get by then."""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from bom.circuit.ohms import Strand
from bom.judge.ratings import MOST_MULTIPLE, TimePoint, time_band
from bom.parts import Parts
from bom.physics.fault_heat import end_with_loss_c
from bom.physics.fuse import earliest_s, latest_s, let_through_a2s, surely_opens_multiple

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

SHARE = 0.02  # of the short's amps, below which a branch has no part in it
LEAST_A = 0.01
LONGEST_S = 86_400.0  # a day stands for "for ever": by then a wire is as hot as it gets


@dataclass(frozen=True)
class Fuse:
    """A fuse as a short sees it.

    column  of the network's resistors
    points  published opening times; none where not known
    """

    name: str
    column: int
    rated_a: float
    points: tuple[TimePoint, ...]

    def would_do_a(self, amps: float, within_s: float) -> float:
        """Give the greatest rating of its kind that surely opens on these amps in time; NaN where none does."""
        return amps / surely_opens_multiple(within_s=within_s, points=self.points) if self.points else float("nan")


def fuse_of(name: str, column: int, part: Parts | None) -> Fuse:
    """Describe a fuse by the part that stands at its place."""
    if part is None:
        return Fuse(name, column, float("nan"), ())
    return Fuse(name, column, float(part.number("rated_a")[0]), tuple(time_band(part, 0)))


@dataclass(frozen=True)
class Times:
    """Opening times, a row a short and a column a fuse; a fuse that has no part in it never opens.

    latest     s by the amps it surely gets; inf where it need never open, NaN where its times are not known
    earliest   s by the amps it may get
    heat_low   s that heat a wire as the fuse lets through at most, on the amps it surely gets
    heat_high  the same on the amps it may get
    part_in    whether it has a part in the short
    """

    latest: Floats
    earliest: Floats
    heat_low: Floats
    heat_high: Floats
    part_in: npt.NDArray[np.bool_]


def times_of(fuses: Sequence[Fuse], low_a: Floats, high_a: Floats, sure_high: Floats) -> Times:
    """Work out when each fuse opens.

    low_a, high_a  least and greatest amps of each fuse, a row a short
    sure_high      greatest amps of the shorts themselves
    """
    shape = (len(sure_high), len(fuses))
    columns = [np.full(shape, np.inf) for _ in range(4)]
    part_in = (high_a > SHARE * sure_high[:, None]) & (high_a > LEAST_A)
    for number, fuse in enumerate(fuses):
        if not fuse.points or not fuse.rated_a > 0:
            for column in columns:
                column[:, number] = np.nan
            continue
        # A converter's limit of just twice the rating counts as that, whatever the last digits of a division say.
        low, high = (np.round(amps[:, number], 9) for amps in (low_a, high_a))
        low_x, high_x = (np.minimum(amps / fuse.rated_a, MOST_MULTIPLE) for amps in (low, high))
        columns[0][:, number] = latest_s(multiple=low_x, points=fuse.points)
        columns[1][:, number] = earliest_s(multiple=high_x, points=fuse.points)
        columns[2][:, number] = _heat_s(fuse, low)
        columns[3][:, number] = _heat_s(fuse, high)
    latest, earliest, heat_low, heat_high = (np.where(part_in, column, np.inf) for column in columns)
    return Times(latest, earliest, heat_low, heat_high, part_in)


def _heat_s(fuse: Fuse, amps: Floats) -> Floats:
    """Turn let-through into seconds of these amps."""
    most = np.minimum(amps, 100_000.0)
    through = let_through_a2s(current_a=most, rated_a=fuse.rated_a, points=fuse.points)
    return np.asarray(through / np.square(np.maximum(most, LEAST_A)), dtype=np.float64)


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

    def after_c(self, wires: Ints, amps: Floats, time_s: Floats) -> Floats:
        """Give the temperature of one wire for each short, from the heat it stands in service."""
        air = np.minimum(self.air_c[wires], self.start_c[wires])
        return np.asarray(
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
