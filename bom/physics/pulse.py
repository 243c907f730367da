"""What a burst of current spends of a fuse, and how much of it a fuse stands often."""

from collections.abc import Mapping
from types import MappingProxyType

import numpy as np

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range, known_only

# Mean of the squared current over the squared peak.
_SHAPES: Mapping[str, float] = MappingProxyType(
    {
        "rectangle": 1.0,
        "half sine": 1 / 2,
        "triangle": 1 / 3,
        "parabola": 1 / 5,
        "exponential": 1 / 2,
    }
)
_PULSES = (100.0, 1000.0, 10000.0, 100000.0)
_SHARES = (0.48, 0.38, 0.29, 0.22)


def pulse_a2s(*, shape: str, peak_a: Quantity, time_s: Quantity) -> Answer:
    """Ampere-squared-seconds of one pulse.

    share * I^2 * t, share 1 for a rectangle, 1/2 half sine, 1/3 triangle, 1/5 parabola, 1/2 exponential

    shape    rectangle, half sine, triangle, parabola or exponential
    peak_a   0 to 1e5
    time_s   0 to 3600   its whole length; of an exponential its time constant
    returns  A2s

    Raises RangeError outside those spans.
    Leaves out what the fuse carries besides, which warms it beforehand.
    Source: a maker's fuse guide, chart of pulse shapes, read second-hand on a public page; also algebra.
    """
    if shape not in _SHAPES:
        raise RangeError(f"shape = {shape}: this chart takes {', '.join(_SHAPES)}")
    check_range("peak_a", peak_a, low=0.0, high=1e5)
    check_range("time_s", time_s, low=0.0, high=3600.0)
    return _SHAPES[shape] * np.square(peak_a) * time_s


def ramp_a2s(*, start_a: Quantity, end_a: Quantity, time_s: Quantity) -> Answer:
    """Ampere-squared-seconds of a current that rises or falls in a straight line.

    (I1^2 + I1 * I2 + I2^2) / 3 * t

    start_a  0 to 1e5
    end_a    0 to 1e5
    time_s   0 to 3600
    returns  A2s

    Raises RangeError outside those spans.
    Leaves out as `pulse_a2s`.
    Source: as `pulse_a2s`.
    """
    check_range("start_a", start_a, low=0.0, high=1e5)
    check_range("end_a", end_a, low=0.0, high=1e5)
    check_range("time_s", time_s, low=0.0, high=3600.0)
    return (np.square(start_a) + start_a * end_a + np.square(end_a)) / 3.0 * time_s


def allowed_share(*, pulses: Quantity) -> Answer:
    """Share of a fuse's melting ampere-squared-seconds that each of many pulses may take.

    0.48 for 100 pulses, 0.38 for 1000, 0.29 for 10000, 0.22 for 100000; between them the next higher count

    pulses   1 to 100000   in the fuse's life, at least 10 s apart
    returns  ratio; times the nominal melting value of the fuse's own sheet

    Raises RangeError outside that span.
    Leaves out pulses that follow sooner, and those longer than the sheet's melting value holds for.
    Source: a maker's fuse guide, chart of pulse counts, read second-hand on a public page.
    """
    check_range("pulses", pulses, low=1.0, high=_PULSES[-1])
    rows = np.minimum(np.searchsorted(_PULSES, pulses), len(_PULSES) - 1)
    return known_only(np.asarray(_SHARES)[rows], pulses)
