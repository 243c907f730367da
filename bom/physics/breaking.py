"""Amps that a contact is known to break: by its own printed points, or by the factors printed for aircraft."""

from collections.abc import Mapping, Sequence
from types import MappingProxyType
from typing import Any, TypeAlias

import numpy as np

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range, known_only

BreakingPoint: TypeAlias = tuple[float, float, float]
"""(volts, amps, time constant in ms) as printed for a part; NaN where one of them is not printed."""

# Share of a switch's nominal amps, as (load, volts of the system).
_AVIATION_FACTORS: Mapping[tuple[str, float], float] = MappingProxyType(
    {
        ("lamp", 12.0): 5.0,
        ("lamp", 28.0): 8.0,
        ("relay coil", 12.0): 2.0,
        ("relay coil", 28.0): 4.0,
        ("heater", 12.0): 1.0,
        ("heater", 28.0): 2.0,
        ("motor", 12.0): 2.0,
        ("motor", 28.0): 3.0,
    }
)


def covers(*, point: BreakingPoint, voltage_v: Quantity, time_constant_ms: Quantity) -> Any:
    """Whether one printed point covers a duty: no fewer volts and no shorter time constant.

    A point that lacks one of its three figures covers nothing, and nothing covers an unknown duty.
    """
    point_v, amps, point_ms = point
    return (point_v >= voltage_v) & (point_ms >= time_constant_ms) & (amps >= 0.0)


def breaks_a(*, points: Sequence[BreakingPoint], voltage_v: Quantity, time_constant_ms: Quantity) -> Answer:
    """Amps that a part is known to break at these volts and this time constant.

    The most amps of any printed point at no fewer volts and no shorter time constant: never a line between
    two points, nor one beyond them.

    points            (volts, amps, time constant in ms) as printed for this part, its poles joined as in use
    voltage_v         0 to 1500   DC, across the open contact
    time_constant_ms  0 to 1000   inductance over resistance of the opened circuit
    returns           A; NaN where no point covers the duty: not known, which is not zero; 0 where the
                      part itself is printed to break nothing

    Raises RangeError outside those spans, or when a point holds a figure below zero.
    Leaves out AC points (they never transfer), direction, and how often: pass the points that apply.
    Source: IEC 60947-1 (a breaking capacity stands at stated volts and conditions), from memory.
    """
    check_range("voltage_v", voltage_v, low=0.0, high=1500.0)
    check_range("time_constant_ms", time_constant_ms, low=0.0, high=1000.0)
    if any(figure < 0.0 for point in points for figure in point):
        raise RangeError("points: volts, amps and time constants are zero or more")
    answer = known_only(np.nan, voltage_v, time_constant_ms)
    for point in points:
        covered = covers(point=point, voltage_v=voltage_v, time_constant_ms=time_constant_ms)
        answer = np.fmax(answer, np.where(covered, point[1], np.nan))
    return answer[()]


def aviation_switch_a(*, running_a: Quantity, system_v: float, load: str) -> Answer:
    """Nominal amps that aircraft practice asks of a switch for a load.

    nominal = factor * running; factor 5 and 8 for lamps, 2 and 4 for relay coils, 1 and 2 for heaters, 2 and
    3 for motors, at 12 and 24 to 28 V

    running_a  0 to 100   continuous
    system_v   12, 24 or 28
    load       lamp, relay coil, heater or motor
    returns    A

    Raises RangeError outside those spans: nothing is printed for pack volts, and none may be guessed.
    Leaves out a switch's own DC figures, which stand over this; it never makes an AC rating a DC one.
    Source: FAA AC 43.13-1B (1998) Table 11-4, read second-hand on a public page; the older edition names
    the 28 V row 24 V, from memory.
    """
    check_range("running_a", running_a, low=0.0, high=100.0)
    factor = _AVIATION_FACTORS.get((load, 28.0 if system_v == 24.0 else float(system_v)))
    if factor is None:
        loads = ", ".join(sorted({name for name, _ in _AVIATION_FACTORS}))
        raise RangeError(f"system_v = {system_v:g}, load = {load}: printed for 12, 24 and 28 V and for {loads}")
    return factor * running_a
