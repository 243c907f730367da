"""Heat that a horizontal cylinder loses to still air."""

from dataclasses import dataclass

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_order, check_range

ZERO_C_IN_KELVIN = 273.15
STEFAN_BOLTZMANN_W_M2_K4 = 5.670374e-8
GRAVITY_M_S2 = 9.80665
SEA_LEVEL_PRESSURE_PA = 101325.0
AIR_GAS_CONSTANT_J_KG_K = 287.053
AIR_SPECIFIC_HEAT_J_KG_K = 1007.0


@dataclass(frozen=True)
class Air:
    """Dry air at sea-level pressure.

    conductivity_w_m_k   thermal conductivity
    viscosity_m2_s       kinematic viscosity
    prandtl              viscosity over thermal diffusivity, a ratio
    """

    conductivity_w_m_k: Answer
    viscosity_m2_s: Answer
    prandtl: Answer


def air_at(*, temperature_k: Quantity) -> Air:
    """Properties of dry air at 101 325 Pa.

    mu = 1.458e-6 * T^1.5 / (T + 110.4);  k = 2.64638e-3 * T^1.5 / (T + 245.4 * 10^(-12/T))
    density = p / (287.053 * T);  specific heat 1007 J/(kg K)

    temperature_k  220 to 530
    returns        Air

    Raises RangeError outside that span.
    Leaves out height (thin air cools less) and damp.
    Source: U.S. Standard Atmosphere 1976, equations 51 and 53, from memory; specific heat from a
    heat-transfer textbook table near 300 K, from memory.
    """
    check_range("temperature_k", temperature_k, low=220.0, high=530.0)
    root = np.power(temperature_k, 1.5)
    dynamic_pa_s = 1.458e-6 * root / (temperature_k + 110.4)
    conductivity = 2.64638e-3 * root / (temperature_k + 245.4 * np.power(10.0, -12.0 / temperature_k))
    density_kg_m3 = SEA_LEVEL_PRESSURE_PA / (AIR_GAS_CONSTANT_J_KG_K * temperature_k)
    return Air(
        conductivity_w_m_k=conductivity,
        viscosity_m2_s=dynamic_pa_s / density_kg_m3,
        prandtl=dynamic_pa_s * AIR_SPECIFIC_HEAT_J_KG_K / conductivity,
    )


def nusselt_horizontal_cylinder(*, prandtl: Quantity, grashof: Quantity) -> Answer:
    """Nusselt number of free convection from a long horizontal cylinder.

    Nu = (0.60 + 0.387 * Ra^(1/6) / (1 + (0.559 / Pr)^(9/16))^(8/27))^2, with Ra = Pr * Gr

    prandtl  0.5 to 10    ratio
    grashof  0 to 1e12    ratio, on the outside diameter
    returns  ratio

    Raises RangeError outside those spans.
    Leaves out draughts (which cool more) and neighbours (which cool less).
    Source: Churchill and Chu, Int. J. Heat Mass Transfer 18 (1975) 1049, from memory.
    """
    check_range("prandtl", prandtl, low=0.5, high=10.0)
    check_range("grashof", grashof, low=0.0, high=1e12)
    shape = np.power(1.0 + np.power(0.559 / prandtl, 9 / 16), 8 / 27)
    return np.square(0.60 + 0.387 * np.power(prandtl * grashof, 1 / 6) / shape)


def surface_loss_w_per_m(
    *, outside_mm: Quantity, surface_c: Quantity, ambient_c: Quantity, emissivity: Quantity
) -> Answer:
    """Heat lost by one metre of a horizontal cylinder: free convection and radiation.

    q = pi * D * (Nu * k / D * (Ts - Ta) + e * 5.670374e-8 * (Ts^4 - Ta^4)), air at (Ts + Ta) / 2

    outside_mm  0.3 to 150    outside diameter
    surface_c   -40 to 250    no less than ambient_c
    ambient_c   -40 to 250    air and surroundings alike
    emissivity  0 to 1        ratio
    returns     W/m

    Raises RangeError outside those spans.
    Leaves out sun, wind and the nearness of other parts.
    Source: as `nusselt_horizontal_cylinder`; Stefan-Boltzmann constant CODATA 2018, from memory.
    """
    check_range("outside_mm", outside_mm, low=0.3, high=150.0)
    check_range("surface_c", surface_c, low=-40.0, high=250.0)
    check_range("ambient_c", ambient_c, low=-40.0, high=250.0)
    check_range("emissivity", emissivity, low=0.0, high=1.0)
    check_order("ambient_c", ambient_c, "surface_c", surface_c)
    diameter_m = outside_mm / 1000.0
    surface_k = surface_c + ZERO_C_IN_KELVIN
    ambient_k = ambient_c + ZERO_C_IN_KELVIN
    film_k = (surface_k + ambient_k) / 2
    rise_k = surface_k - ambient_k
    air = air_at(temperature_k=film_k)
    grashof = GRAVITY_M_S2 / film_k * rise_k * diameter_m**3 / air.viscosity_m2_s**2
    nusselt = nusselt_horizontal_cylinder(prandtl=air.prandtl, grashof=grashof)
    radiation_w_m2 = emissivity * STEFAN_BOLTZMANN_W_M2_K4 * (surface_k**4 - ambient_k**4)
    return np.pi * (nusselt * air.conductivity_w_m_k * rise_k + diameter_m * radiation_w_m2)
