"""How hot a fault leaves a wire: with all the heat kept, and with heat leaving to still air."""

from collections.abc import Sequence

import numpy as np

from bom.physics.adiabatic import COPPER_FACTOR_A_S05_MM2, COPPER_INFERRED_ZERO_C, LONGEST_ADIABATIC_S
from bom.physics.heat_path import Heated, loss_points, metal_after_c
from bom.physics.ranges import Answer, Quantity, check_order, check_range

COPPER_MELTS_C = 1083.0
COPPER_HEAT_J_PER_MM2_M_K = 3.45
"""Heat that a metre of copper of 1 mm2 takes per kelvin: 3.45e6 J/(K m3)."""

_LARGEST_EXPONENT = 50.0  # numerics: far past melting, short of overflow


def adiabatic_end_c(*, area_mm2: Quantity, current_a: Quantity, time_s: Quantity, start_c: Quantity) -> Answer:
    """Temperature of the metal after a fault, if no heat leaves it.

    end = (234.5 + start) * exp(I^2 * t / (226 * area)^2) - 234.5

    area_mm2   0.05 to 240    copper that the resistance stands for; a nominal size may hold 4 to 14 % less
    current_a  0 to 100 000   rms or steady DC
    time_s     0 to 5         past 5 s use `end_with_loss_c`
    start_c    -40 to 250
    returns    C; inf where copper melts (1083 C)

    Raises RangeError outside those spans.
    Leaves out heat that leaves the metal, which only helps.
    Source: IEC 60949:1988 (226 and 234.5), solved for the end, from memory; melting point from handbooks.
    """
    check_range("time_s", time_s, low=0.0, high=LONGEST_ADIABATIC_S)
    _check_fault(area_mm2=area_mm2, current_a=current_a, start_c=start_c)
    return _molten_is_inf(_heat_kept_c(area_mm2=area_mm2, current_a=current_a, time_s=time_s, start_c=start_c))


def end_with_loss_c(
    *,
    area_mm2: Quantity,
    conductor_mm: Quantity,
    outside_mm: Quantity,
    resistance_20_mohm_per_m: Quantity,
    insulation: str | Sequence[str],
    current_a: Quantity,
    time_s: Quantity,
    start_c: Quantity,
    ambient_c: Quantity,
    emissivity: Quantity = 0.9,
) -> Answer:
    """Temperature of the metal after a fault or burst, with heat leaving through the insulation to still air.

    3.45 * area * dT/dt = I^2 * R20 * (1 + 0.00393 * (T - 20)) - loss(T), and never above
    (234.5 + start) * exp(I^2 * t / (226 * area)^2) - 234.5, the figure with all heat kept

    area_mm2                  0.05 to 240    metal that takes up heat, as in `adiabatic_end_c`
    conductor_mm              0.3 to 30      over the strands
    outside_mm                0.3 to 150     over the insulation, no less than conductor_mm
    resistance_20_mohm_per_m  0.05 to 250
    insulation                "xlpe", "pvc", "silicone", "": as `heat_balance.heat_balance_a`
    current_a                 0 to 100 000   rms or steady DC
    time_s                    0 to 86 400
    start_c                   -40 to 250     no less than ambient_c
    ambient_c                 -40 to 150     air about the wire
    emissivity                0.1 to 1       0.9 suits matt plastic
    returns                   C; inf where copper melts

    The loss at a metal temperature is the steady heat balance, read off 32 straight lines: from 3 K above
    the air under 1 % high, well under 1 K in the answer. On each line the equation has a closed form, so
    there is no time step.

    Raises RangeError outside those spans.
    Leaves out heat that the insulation itself takes up, and more loss once the surface passes 250 C: both
    only help. Leaves out sun, neighbours and sleeves, which do not.
    Source: IEC 60949:1988 Table I (3.45e6 J/(K m3)), from memory; loss as `heat_balance.heat_balance_a`.
    """
    _check_fault(area_mm2=area_mm2, current_a=current_a, start_c=start_c)
    check_range("resistance_20_mohm_per_m", resistance_20_mohm_per_m, low=0.05, high=250.0)
    check_range("time_s", time_s, low=0.0, high=86_400.0)
    check_range("ambient_c", ambient_c, low=-40.0, high=150.0)
    check_order("ambient_c", ambient_c, "start_c", start_c)
    check_range("emissivity", emissivity, low=0.1, high=1.0)
    points = loss_points(
        conductor_mm=conductor_mm,
        outside_mm=outside_mm,
        ambient_c=ambient_c,
        insulation=insulation,
        emissivity=emissivity,
    )
    heated = Heated(
        heat_20_w_per_m=np.square(current_a) * resistance_20_mohm_per_m / 1000.0,
        heat_j_per_m_k=COPPER_HEAT_J_PER_MM2_M_K * area_mm2,
    )
    cooled_c = metal_after_c(points, heated=heated, start_c=start_c, time_s=time_s)
    kept_c = _heat_kept_c(area_mm2=area_mm2, current_a=current_a, time_s=time_s, start_c=start_c)
    return _molten_is_inf(np.minimum(cooled_c, kept_c))


def _check_fault(*, area_mm2: Quantity, current_a: Quantity, start_c: Quantity) -> None:
    check_range("area_mm2", area_mm2, low=0.05, high=240.0)
    check_range("current_a", current_a, low=0.0, high=100_000.0)
    check_range("start_c", start_c, low=-40.0, high=250.0)


def _heat_kept_c(*, area_mm2: Quantity, current_a: Quantity, time_s: Quantity, start_c: Quantity) -> Answer:
    warmth = np.square(current_a) * time_s / np.square(COPPER_FACTOR_A_S05_MM2 * area_mm2)
    growth = np.exp(np.minimum(warmth, _LARGEST_EXPONENT))
    return (COPPER_INFERRED_ZERO_C + start_c) * growth - COPPER_INFERRED_ZERO_C


def _molten_is_inf(metal_c: Answer) -> Answer:
    return np.where(np.asarray(metal_c) > COPPER_MELTS_C, np.inf, metal_c)[()]
