"""Copper: area of a wire gauge, and resistance cold and hot."""

import math

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_range

COPPER_CONDUCTIVITY_M_PER_OHM_MM2 = 58.0
COPPER_ALPHA_PER_K = 0.00393

_GAUGE_NUMBERS = {str(number): number for number in range(1, 27)} | {f"{zeros}/0": 1 - zeros for zeros in range(1, 5)}


def awg_area_mm2(*, gauge: str) -> float:
    """Area of a solid round wire of an American wire gauge.

    d = 0.127 mm * 92 ** ((36 - n) / 39), area = pi / 4 * d ** 2; n = 0, -1, -2, -3 for 1/0 to 4/0

    gauge    text "26" to "1", then "1/0" to "4/0"
    returns  mm2

    Raises RangeError for any other text.
    Leaves out stranding: vehicle cable sold by gauge may hold 3 to 12 % less copper than this.
    Source: ASTM B258 (formula), from memory; areas checked against published resistances.
    """
    if gauge not in _GAUGE_NUMBERS:
        raise RangeError(f'gauge = "{gauge}": this formula takes "26" to "1", and "1/0" to "4/0"')
    diameter_mm = 0.127 * 92.0 ** ((36 - _GAUGE_NUMBERS[gauge]) / 39)
    return float(math.pi / 4 * diameter_mm**2)


def copper_resistance_mohm_per_m(*, area_mm2: Quantity) -> Answer:
    """Resistance of ideal annealed copper at 20 C: the least that a wire of this metal area can have.

    R = 1000 / (58 * area)

    area_mm2  0.05 to 240   true metal area, not a nominal size
    returns   mohm/m

    Raises RangeError outside that span.
    Leaves out strand lay, plating and the maker's allowance: a cable of this *nominal* area has more.
    Source: IEC 60028 (1/58 ohm mm2/m at 20 C), from memory.
    """
    check_range("area_mm2", area_mm2, low=0.05, high=240.0)
    return 1000.0 / (COPPER_CONDUCTIVITY_M_PER_OHM_MM2 * area_mm2)


def copper_temperature_factor(*, temperature_c: Quantity) -> Answer:
    """Resistance of copper over its resistance at 20 C.

    R(T) / R(20) = 1 + 0.00393 * (T - 20)

    temperature_c  -40 to 250   mean metal temperature
    returns        ratio

    Raises RangeError outside that span.
    Leaves out the slight curve of real copper (under 1 % to 200 C).
    Source: IEC 60028 (0.00393 per K), from memory.
    """
    check_range("temperature_c", temperature_c, low=-40.0, high=250.0)
    return 1.0 + COPPER_ALPHA_PER_K * (temperature_c - 20.0)


def hot_resistance_ohm(*, resistance_20_mohm_per_m: Quantity, length_m: Quantity, temperature_c: Quantity) -> Answer:
    """DC resistance of a length of copper wire at a given metal temperature.

    R = R20 * length * (1 + 0.00393 * (T - 20)) / 1000

    resistance_20_mohm_per_m  0.05 to 250   from the cable's sheet (equal to ohm/km)
    length_m                  0 to 100      metal path: out and back where both carry the current
    temperature_c             -40 to 250    mean metal temperature
    returns                   ohm

    Raises RangeError outside those spans.
    Leaves out joints, terminals and skin effect.
    Source: IEC 60028 (0.00393 per K), from memory.
    """
    check_range("resistance_20_mohm_per_m", resistance_20_mohm_per_m, low=0.05, high=250.0)
    check_range("length_m", length_m, low=0.0, high=100.0)
    factor = copper_temperature_factor(temperature_c=temperature_c)
    return resistance_20_mohm_per_m / 1000.0 * length_m * factor
