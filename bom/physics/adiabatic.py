"""How long a wire withstands a short circuit, if no heat leaves it."""

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_order, check_range

LONGEST_ADIABATIC_S = 5.0
COPPER_FACTOR_A_S05_MM2 = 226.0
COPPER_INFERRED_ZERO_C = 234.5


def k_factor(*, start_c: Quantity, end_c: Quantity) -> Answer:
    """Heating constant of copper between two temperatures.

    k = 226 * sqrt(ln((234.5 + end) / (234.5 + start)))

    start_c  -40 to 250   metal before the fault: the insulation's operating limit
    end_c    -40 to 350   metal that the insulation stands for seconds, no less than start_c
    returns  A s^0.5 / mm2

    Raises RangeError outside those spans.
    Leaves out heat that leaves the metal, which only helps.
    Source: IEC 60364-5-54:2011 Annex A and IEC 60949, from memory; agrees with IEC 60364-4-43 Table 43A.
    """
    check_range("start_c", start_c, low=-40.0, high=250.0)
    check_range("end_c", end_c, low=-40.0, high=350.0)
    check_order("start_c", start_c, "end_c", end_c)
    return COPPER_FACTOR_A_S05_MM2 * np.sqrt(
        np.log((COPPER_INFERRED_ZERO_C + end_c) / (COPPER_INFERRED_ZERO_C + start_c))
    )


def withstand_a2s(*, area_mm2: Quantity, start_c: Quantity, end_c: Quantity) -> Answer:
    """Let-through that a copper wire withstands: what a fuse's clearing I2t is judged by under 0.1 s.

    I2t = (k * area)^2

    area_mm2        0.05 to 240
    start_c, end_c  as `k_factor`
    returns         A2 s

    Raises RangeError outside those spans.
    Leaves out what `k_factor` leaves out.
    Source: IEC 60364-4-43:2008 434.5.2, from memory.
    """
    check_range("area_mm2", area_mm2, low=0.05, high=240.0)
    return np.square(k_factor(start_c=start_c, end_c=end_c) * area_mm2)


def longest_s(*, area_mm2: Quantity, current_a: Quantity, start_c: Quantity, end_c: Quantity) -> Answer:
    """Longest time that a steady fault current may last.

    t = (k * area / I)^2, never more than 5 s

    area_mm2        0.05 to 240
    current_a       0.1 to 100 000   rms or steady DC
    start_c, end_c  as `k_factor`
    returns         s; 5 means "5 s or longer": past 5 s heat leaves the wire and this formula says no more

    Raises RangeError outside those spans.
    Leaves out what `k_factor` leaves out. Where the answer is under 0.1 s judge let-through as well.
    Source: IEC 60364-4-43:2008 434.5.2, from memory.
    """
    check_range("current_a", current_a, low=0.1, high=100_000.0)
    withstand = withstand_a2s(area_mm2=area_mm2, start_c=start_c, end_c=end_c)
    return np.minimum(withstand / np.square(current_a), LONGEST_ADIABATIC_S)
