"""How a wire's metal warms or cools in time, along a loss drawn as straight lines between points."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from bom.physics.air import surface_loss_w_per_m
from bom.physics.conductor import COPPER_ALPHA_PER_K
from bom.physics.heat_balance import wall_k_m_per_w
from bom.physics.ranges import Answer, Quantity

HOTTEST_SURFACE_C = 250.0

_LINES = 32  # numerics: the loss is then under 1 % high, from 3 K above the air
_LARGEST_EXPONENT = 50.0  # numerics: far past melting, short of overflow
_SMALL = 1e-6  # numerics: below it a straight line stands for the exponential


@dataclass(frozen=True)
class LossPoints:
    """Steady loss of a wire at rising metal temperatures, the first at ambient; past the last it stays.

    metal_c       one figure or column a point
    loss_w_per_m  one figure or column a point
    """

    metal_c: list[Answer]
    loss_w_per_m: list[Answer]


@dataclass(frozen=True)
class Heated:
    """What a wire's metal takes in and holds.

    heat_20_w_per_m   current squared times resistance at 20 C
    heat_j_per_m_k    heat for one kelvin more
    """

    heat_20_w_per_m: Answer
    heat_j_per_m_k: Answer


def loss_points(
    *,
    conductor_mm: Quantity,
    outside_mm: Quantity,
    ambient_c: Quantity,
    insulation: str | Sequence[str],
    emissivity: Quantity,
) -> LossPoints:
    """Points of the steady heat balance, closer together where the loss bends most: near ambient.

    Chosen by surface temperature, so that metal temperature follows without a search:
    metal = surface + loss * wall
    """
    wall = wall_k_m_per_w(conductor_mm=conductor_mm, outside_mm=outside_mm, insulation=insulation)
    points = LossPoints(metal_c=[], loss_w_per_m=[])
    for point in range(_LINES + 1):
        share = (point / _LINES) ** 2  # numerics: any crowding towards ambient will do
        surface_c = ambient_c + (HOTTEST_SURFACE_C - np.asarray(ambient_c)) * share
        loss = surface_loss_w_per_m(
            outside_mm=outside_mm, surface_c=surface_c, ambient_c=ambient_c, emissivity=emissivity
        )
        points.metal_c.append(surface_c + loss * wall)
        points.loss_w_per_m.append(loss)
    return points


def metal_after_c(points: LossPoints, *, heated: Heated, start_c: Quantity, time_s: Quantity) -> Answer:
    """Metal temperature after a time. It only ever moves one way, so one pass up and one down reach its end."""
    everything = [start_c, time_s, heated.heat_20_w_per_m, heated.heat_j_per_m_k, points.metal_c[-1]]
    here_c, left_s, *_ = np.broadcast_arrays(*(np.asarray(each, dtype=float) for each in everything))
    lines = range(len(points.metal_c))
    for line in lines:
        here_c, left_s = _along(points, line, heated=heated, here_c=here_c, left_s=left_s, rising=True)
    for line in reversed(lines):
        here_c, left_s = _along(points, line, heated=heated, here_c=here_c, left_s=left_s, rising=False)
    unknown = np.isnan(sum(np.asarray(each, dtype=float) for each in everything))
    return np.where(unknown, np.nan, here_c)


def _along(
    points: LossPoints, line: int, *, heated: Heated, here_c: Answer, left_s: Answer, rising: bool
) -> tuple[Answer, Answer]:
    """Move those wires that are on this line and go this way, to its edge or as far as their time lasts."""
    low_c, low_loss = points.metal_c[line], points.loss_w_per_m[line]
    open_ended = line + 1 == len(points.metal_c)
    high_c = np.inf if open_ended else points.metal_c[line + 1]
    loss_slope = 0.0 if open_ended else (points.loss_w_per_m[line + 1] - low_loss) / (high_c - low_c)
    heat_w_per_m = heated.heat_20_w_per_m * (1.0 + COPPER_ALPHA_PER_K * (here_c - 20.0))
    rate = (heat_w_per_m - low_loss - loss_slope * (here_c - low_c)) / heated.heat_j_per_m_k
    bend = (heated.heat_20_w_per_m * COPPER_ALPHA_PER_K - loss_slope) / heated.heat_j_per_m_k
    freely_c = here_c + _travel_k(rate=rate, bend=bend, time_s=left_s)
    if rising:
        moves, edge_c, passes = (here_c >= low_c) & (here_c < high_c) & (rate > 0), high_c, freely_c > high_c
    else:
        moves, edge_c, passes = (here_c > low_c) & (here_c <= high_c) & (rate < 0), low_c, freely_c < low_c
    spent_s = _time_s(rate=rate, bend=bend, travel_k=np.where(moves & passes, edge_c - here_c, 0.0))
    onward_c = np.where(passes, edge_c, freely_c)
    onward_s = np.where(passes, np.maximum(left_s - spent_s, 0.0), 0.0)
    return np.where(moves, onward_c, here_c), np.where(moves, onward_s, left_s)


def _travel_k(*, rate: Answer, bend: Answer, time_s: Answer) -> Answer:
    """Solution of dT/dt = rate + bend * T from T = 0: rate * (exp(bend * t) - 1) / bend."""
    power = np.clip(bend * time_s, None, _LARGEST_EXPONENT)
    return rate * time_s * _over_itself(np.expm1, power)


def _time_s(*, rate: Answer, bend: Answer, travel_k: Answer) -> Answer:
    """The same solved for time: ln(1 + bend * T / rate) / bend; meant where the travel is reached."""
    moving = np.where(rate == 0.0, 1.0, rate)  # numerics: those that stand are not asked
    power = np.maximum(bend * travel_k / moving, -1.0 + _SMALL**2)  # numerics: short of the logarithm of 0
    return travel_k / moving * _over_itself(np.log1p, power)


def _over_itself(function: Callable[[Answer], Answer], power: Answer) -> Answer:
    """function(x) / x of a function that starts as x does: 1 where x is next to nothing."""
    small = np.abs(power) < _SMALL
    divisor = np.where(small, 1.0, power)  # numerics: no division by zero
    return np.where(small, 1.0, function(power) / divisor)
