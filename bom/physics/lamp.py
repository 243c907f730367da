"""Filament lamps: watts to size by, and what volts do to power, light and life."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range

_POWER_EXPONENT = 1.6
FLUX_EXPONENT = 3.4
LIFE_EXPONENT = -12.0

# UN R7 and R50 test signalling lamps at these volts: read second-hand on a public page.
SIGNAL_TEST_V = 13.5
# UN R128 Annex 4: LED light sources for 12 V keep their light between these volts: read second-hand on a public page.
LED_LOW_V, LED_HIGH_V = 9.0, 16.0
LED_SOURCE = "UN R128 Annex 4, read second-hand on a public page"

_MEMORY = "UN R37 03 series, from memory"
_SEEN = "UN R37 03 series, read second-hand on a public page, greatest watts from memory"
_PAGE = "UN R37 03 series, read second-hand on a public page"


class UpperWatts(NamedTuple):
    """Greatest power of a filament that its regulation allows.

    watts   W at test_v
    test_v  V
    source  category, document and how it was seen
    """

    watts: float
    test_v: float
    source: str


# Printed watts and nominal volts: of all the categories that share them, the greatest.
_UPPER_WATTS: Mapping[tuple[float, float], UpperWatts] = MappingProxyType(
    {
        (3.0, 12.0): UpperWatts(3.45, 13.5, f"W3W, {_MEMORY}"),
        (4.0, 12.0): UpperWatts(5.5, 13.5, f"P21/4W minor, {_MEMORY}"),
        (5.0, 12.0): UpperWatts(6.6, 13.5, f"P21/5W minor, {_PAGE}"),
        (6.0, 12.0): UpperWatts(7.35, 13.5, f"H6W, {_MEMORY}"),
        (7.0, 12.0): UpperWatts(8.5, 13.5, f"P27/7W minor, {_MEMORY}"),
        (10.0, 12.0): UpperWatts(11.0, 13.5, f"R10W, {_MEMORY}"),
        (15.0, 12.0): UpperWatts(15.9, 13.5, f"HS2, {_MEMORY}"),
        (16.0, 12.0): UpperWatts(21.35, 13.5, f"W16W, {_MEMORY}"),
        (21.0, 12.0): UpperWatts(26.5, 13.5, f"P21W, {_PAGE}"),
        (25.0, 12.0): UpperWatts(26.25, 13.5, f"S1, {_MEMORY}"),
        (27.0, 12.0): UpperWatts(32.1, 13.5, f"P27/7W major, {_MEMORY}"),
        (35.0, 12.0): UpperWatts(43.0, 13.2, f"H8, {_MEMORY}"),
        (40.0, 12.0): UpperWatts(51.0, 13.2, f"R2 minor, {_MEMORY}"),
        (45.0, 12.0): UpperWatts(57.0, 13.2, f"R2 major, {_MEMORY}"),
        (55.0, 12.0): UpperWatts(68.0, 13.2, f"H4 minor, {_MEMORY}"),
        (60.0, 12.0): UpperWatts(75.0, 13.2, f"H4 major, {_MEMORY}"),
        (3.0, 6.0): UpperWatts(3.45, 6.75, f"W3W, {_MEMORY}"),
        (4.0, 6.0): UpperWatts(4.4, 6.75, f"T4W, {_MEMORY}"),
        (5.0, 6.0): UpperWatts(6.6, 6.75, f"P21/5W minor, {_MEMORY}"),
        (10.0, 6.0): UpperWatts(11.0, 6.75, f"R10W, {_MEMORY}"),
        (15.0, 6.0): UpperWatts(15.9, 6.75, f"HS2, {_MEMORY}"),
        (21.0, 6.0): UpperWatts(27.6, 6.75, f"P21W, {_MEMORY}"),
        (25.0, 6.0): UpperWatts(26.25, 6.75, f"S1, {_MEMORY}"),
        (35.0, 6.0): UpperWatts(36.75, 6.3, f"HS1, {_MEMORY}"),
        (40.0, 6.0): UpperWatts(47.0, 6.3, f"R2 minor, {_MEMORY}"),
        (45.0, 6.0): UpperWatts(53.0, 6.3, f"R2 major, {_MEMORY}"),
        (55.0, 6.0): UpperWatts(63.0, 6.3, f"H1, {_SEEN}"),
    }
)

_GREATEST_RATIO = max(upper.watts / printed for (printed, _), upper in _UPPER_WATTS.items())
_LEAST_TEST_V = MappingProxyType({12.0: 13.2, 6.0: 6.3})


def upper_watts(*, printed_w: float, nominal_v: float) -> UpperWatts:
    """Watts to size a lamp circuit by, from the watts printed on the lamp.

    printed_w  0.5 to 130   one filament
    nominal_v  6 or 12
    returns    (watts, test_v, source): the greatest that any category of these printed watts allows; for
               watts not in the table, printed watts times the greatest ratio in it, marked "assumed"

    Raises RangeError outside those spans. NaN gives NaN watts.
    Leaves out the lamp's own category, which may allow less; lamps of no category may take more.
    Source: UN R37 03 series category sheets; each row says how it was seen.
    """
    check_range("printed_w", printed_w, low=0.5, high=130.0)
    if nominal_v not in _LEAST_TEST_V:
        raise RangeError(f"nominal_v = {nominal_v:g}: this table takes 6 and 12")
    listed = _UPPER_WATTS.get((float(printed_w), float(nominal_v)))
    if listed is not None:
        return listed
    source = f"assumed: printed watts x {_GREATEST_RATIO:.3f}, the greatest ratio among UN R37 lamps listed"
    return UpperWatts(printed_w * _GREATEST_RATIO, _LEAST_TEST_V[nominal_v], source)


def _volts_ratio(*, voltage_v: Quantity, test_v: Quantity, low: float, high: float) -> Answer:
    check_range("voltage_v", voltage_v, low=0.0, high=40.0)
    check_range("test_v", test_v, low=1.0, high=40.0)
    ratio = voltage_v / np.asarray(test_v)
    check_range("voltage_v / test_v", ratio, low=low, high=high)
    return ratio[()]


def power_at_v(*, test_w: Quantity, test_v: Quantity, voltage_v: Quantity) -> Answer:
    """Power that a filament takes at another voltage.

    P = P_test * (V / V_test) ^ 1.6

    test_w     0 to 1000     at test_v
    test_v     1 to 40
    voltage_v  0.7 to 1.3 of test_v
    returns    W

    Raises RangeError outside those spans: a 6 V lamp on 12 V burns out, it has no power.
    Leaves out the first moments: a cold filament takes about ten times its amps.
    Source: lamp engineering practice, from memory.
    """
    check_range("test_w", test_w, low=0.0, high=1000.0)
    ratio = _volts_ratio(voltage_v=voltage_v, test_v=test_v, low=0.7, high=1.3)
    return test_w * np.power(ratio, _POWER_EXPONENT)


def flux_ratio(*, voltage_v: Quantity, test_v: Quantity) -> Answer:
    """Light of a filament over its light at test volts.

    (V / V_test) ^ 3.4

    test_v     1 to 40
    voltage_v  0.8 to 1.25 of test_v
    returns    ratio

    Raises RangeError outside those spans.
    Leaves out age and dirt.
    Source: lamp engineering practice, from memory.
    """
    ratio = _volts_ratio(voltage_v=voltage_v, test_v=test_v, low=0.8, high=1.25)
    return np.power(ratio, FLUX_EXPONENT)


def life_ratio(*, voltage_v: Quantity, test_v: Quantity) -> Answer:
    """Life of a filament over its life at test volts.

    (V / V_test) ^ -12

    test_v     1 to 40
    voltage_v  0.8 to 1.25 of test_v
    returns    ratio

    Raises RangeError outside those spans.
    Leaves out shake and switching, which end most motorcycle lamps.
    Source: lamp terminology page, read second-hand on a public page.
    """
    ratio = _volts_ratio(voltage_v=voltage_v, test_v=test_v, low=0.8, high=1.25)
    return np.power(ratio, LIFE_EXPONENT)
