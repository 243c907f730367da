"""Steady current of one insulated wire in still air, from its heat balance."""

from collections.abc import Sequence
from types import MappingProxyType

import numpy as np

from bom.errors import RangeError
from bom.physics.air import surface_loss_w_per_m
from bom.physics.conductor import copper_temperature_factor
from bom.physics.ranges import Answer, Quantity, check_order, check_range

INSULATION_RESISTIVITY_K_M_PER_W = MappingProxyType({"xlpe": 3.5, "pvc": 5.0, "silicone": 5.0})
"""Thermal resistivity by material, any letter case. Source: IEC 60287-2-1 Table 1, from memory; the
silicone figure is that table's figure for rubber compounds."""

_HALVINGS = 26  # of at most 300 K: a few millionths of a kelvin


def insulation_resistivity_k_m_per_w(*, insulation: str | Sequence[str]) -> Answer:
    """Thermal resistivity of one insulation, or of a column of them.

    insulation  "xlpe", "pvc" or "silicone", any letter case; "" for unknown
    returns     K m/W; NaN for unknown

    Raises RangeError for any other name.
    Source: IEC 60287-2-1 Table 1, from memory.
    """
    names = [insulation] if isinstance(insulation, str) else list(insulation)
    figures = []
    for name in names:
        if name and name.casefold() not in INSULATION_RESISTIVITY_K_M_PER_W:
            known = ", ".join(sorted(INSULATION_RESISTIVITY_K_M_PER_W))
            raise RangeError(f'insulation = "{name}": this formula takes {known}')
        figures.append(INSULATION_RESISTIVITY_K_M_PER_W.get(name.casefold(), float("nan")))
    return figures[0] if isinstance(insulation, str) else np.array(figures)


def wall_k_m_per_w(*, conductor_mm: Quantity, outside_mm: Quantity, insulation: str | Sequence[str]) -> Answer:
    """Thermal resistance of a metre of insulation, from metal to surface.

    rho / (2 * pi) * ln(outside / conductor)

    conductor_mm  0.3 to 30    over the strands
    outside_mm    0.3 to 150   over the insulation, no less than conductor_mm
    insulation    "xlpe", "pvc", "silicone", ""
    returns       K m/W; NaN for an unknown insulation

    Raises RangeError outside those spans.
    Leaves out a second material, such as a sleeve.
    Source: IEC 60287-2-1 (T1 of a single core), from memory.
    """
    check_range("conductor_mm", conductor_mm, low=0.3, high=30.0)
    check_range("outside_mm", outside_mm, low=0.3, high=150.0)
    check_order("conductor_mm", conductor_mm, "outside_mm", outside_mm)
    resistivity = insulation_resistivity_k_m_per_w(insulation=insulation)
    return resistivity / (2 * np.pi) * np.log(outside_mm / np.asarray(conductor_mm))


def heat_balance_a(
    *,
    conductor_mm: Quantity,
    outside_mm: Quantity,
    resistance_20_mohm_per_m: Quantity,
    conductor_c: Quantity,
    ambient_c: Quantity,
    insulation: str | Sequence[str],
    emissivity: Quantity = 0.9,
) -> Answer:
    """Steady current of one horizontal insulated wire, alone in still air.

    I^2 * R(Tc) = loss(Ts) = (Tc - Ts) * 2 * pi / (rho * ln(outside / conductor)), solved for Ts

    conductor_mm              0.3 to 30     over the strands
    outside_mm                0.3 to 150    over the insulation, no less than conductor_mm
    resistance_20_mohm_per_m  0.05 to 250
    conductor_c               -40 to 250    metal temperature that may not be passed
    ambient_c                 -40 to 150    air about the wire
    insulation                "xlpe", "pvc", "silicone", "": the one material through which heat leaves
    emissivity                0.1 to 1      0.9 suits matt plastic
    returns                   A; 0 where the air is as hot as the conductor may be, or hotter

    Raises RangeError outside those spans.
    Leaves out sun and engine heat (both lower it), draughts (which raise it), neighbours, sleeves, ends.
    It reads about 10 % above tables for touching pairs, so it is never used without the table.
    Source: as `air.surface_loss_w_per_m`; IEC 60287-2-1 for the insulation, from memory.
    """
    check_range("resistance_20_mohm_per_m", resistance_20_mohm_per_m, low=0.05, high=250.0)
    check_range("conductor_c", conductor_c, low=-40.0, high=250.0)
    check_range("ambient_c", ambient_c, low=-40.0, high=150.0)
    check_range("emissivity", emissivity, low=0.1, high=1.0)
    resistance_factor = copper_temperature_factor(temperature_c=conductor_c)
    loss_w_per_m = _balanced_loss_w_per_m(
        outside_mm=outside_mm,
        wall=wall_k_m_per_w(conductor_mm=conductor_mm, outside_mm=outside_mm, insulation=insulation),
        # Air hotter than the conductor may be leaves no room for a rise, so no current.
        conductor_c=np.maximum(conductor_c, ambient_c),
        ambient_c=ambient_c,
        emissivity=emissivity,
    )
    return np.sqrt(loss_w_per_m / (resistance_20_mohm_per_m / 1000.0 * resistance_factor))[()]


def _balanced_loss_w_per_m(
    *,
    outside_mm: Quantity,
    wall: Quantity,
    conductor_c: Quantity,
    ambient_c: Quantity,
    emissivity: Quantity,
) -> Answer:
    """Loss at the surface temperature where what crosses the wall equals what leaves the surface.

    Halves the span between air and conductor a fixed number of times: the loss rises with surface
    temperature and the flow through the wall falls, so there is one crossing.
    """
    low_c, high_c = np.asarray(ambient_c, dtype=float), np.asarray(conductor_c, dtype=float)
    for _ in range(_HALVINGS):
        surface_c = (low_c + high_c) / 2
        loss_w_per_m = surface_loss_w_per_m(
            outside_mm=outside_mm, surface_c=surface_c, ambient_c=ambient_c, emissivity=emissivity
        )
        too_hot = loss_w_per_m * wall > conductor_c - surface_c
        low_c, high_c = np.where(too_hot, low_c, surface_c), np.where(too_hot, surface_c, high_c)
    # An unknown wall decides no comparison, so the search would end at the conductor's own temperature.
    return np.where(np.isnan(wall), np.nan, loss_w_per_m)
