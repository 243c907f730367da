"""The heat balance and its convection, against other programs' answers and a heat-transfer library.

data/heat_balance.csv holds a second implementation: convection by the library `ht` 1.2.0 with that program's own air,
Stefan-Boltzmann and radial conduction, solved apart from this code. Rows with another correlation are left out.
"""

import csv
import math
from pathlib import Path

import numpy as np
import pytest

from bom.physics.air import air_at, surface_loss_w_per_m
from bom.physics.heat_balance import heat_balance_a, wall_k_m_per_w

with (Path(__file__).parent / "data" / "heat_balance.csv").open(encoding="utf-8", newline="") as stream:
    ROWS = list(csv.DictReader(stream))
# Two rows ask what half and double the insulation's resistivity does, which ours takes from its table alone.
NORMAL = [row for row in ROWS if float(row["resistivity_k_m_per_w"]) == {"XLPE": 3.5, "PVC": 5.0}[row["insulation"]]]

EACH_ROW = pytest.mark.parametrize(
    "row", NORMAL, ids=lambda row: f"{row['build']}-{row['insulation']}-{row['conductor_c']}".replace(" ", "_")
)


def numbers(row, *names):
    return {name: float(row[name]) for name in names}


@EACH_ROW
def test_amps_of_a_second_implementation(row):
    answer_a = heat_balance_a(
        **numbers(row, "conductor_mm", "outside_mm", "conductor_c", "ambient_c", "emissivity"),
        resistance_20_mohm_per_m=float(row["mohm_per_m"]),
        insulation=row["insulation"],
    )
    assert answer_a == pytest.approx(float(row["value"]), rel=0.001)


@EACH_ROW
def test_loss_at_its_surface(row):
    loss = surface_loss_w_per_m(**numbers(row, "outside_mm", "surface_c", "ambient_c", "emissivity"))
    assert loss == pytest.approx(float(row["loss_w_per_m"]), rel=0.002)


@EACH_ROW
def test_fall_across_its_wall(row):
    wall = wall_k_m_per_w(**numbers(row, "conductor_mm", "outside_mm"), insulation=row["insulation"])
    fall_k = float(row["loss_w_per_m"]) * wall
    assert float(row["conductor_c"]) - fall_k == pytest.approx(float(row["surface_c"]), abs=0.02)


def library():
    return pytest.importorskip("ht", reason="the heat-transfer library ht is not installed")


DIAMETERS_MM = np.array([0.3, 0.8, 1.5, 3.0, 6.0, 10.0, 20.0, 50.0, 150.0])


# Same correlation, other code: the convection term alone (emissivity 0).
@pytest.mark.parametrize("ambient_c", [-40.0, 0.0, 30.0, 60.0, 100.0, 150.0])
@pytest.mark.parametrize("rise_k", [0.1, 1.0, 10.0, 40.0, 100.0])
def test_convection_agrees_with_the_library(ambient_c, rise_k):
    nusselt_of = library().Nu_horizontal_cylinder_Churchill_Chu
    film_k = ambient_c + rise_k / 2 + 273.15
    air = air_at(temperature_k=film_k)
    grashof = 9.80665 / film_k * rise_k * (DIAMETERS_MM / 1000) ** 3 / air.viscosity_m2_s**2
    expected = [math.pi * nusselt_of(air.prandtl, each) * air.conductivity_w_m_k * rise_k for each in grashof]
    loss = surface_loss_w_per_m(
        outside_mm=DIAMETERS_MM, surface_c=ambient_c + rise_k, ambient_c=ambient_c, emissivity=0.0
    )
    assert loss == pytest.approx(np.array(expected), rel=1e-6)


# Another correlation (Kuehn and Goldstein 1976), from other measurements: within a quarter over the sizes of wire,
# and ours is the lower, which is the safe side.
@pytest.mark.parametrize("diameter_mm", [2.0, 5.0, 10.0, 20.0])
@pytest.mark.parametrize("rise_k", [20.0, 60.0])
def test_another_correlation_is_near(diameter_mm, rise_k):
    ht = library()
    air = air_at(temperature_k=303.15 + rise_k / 2)
    grashof = 9.80665 / (303.15 + rise_k / 2) * rise_k * (diameter_mm / 1000) ** 3 / air.viscosity_m2_s**2
    ours = ht.Nu_horizontal_cylinder_Churchill_Chu(air.prandtl, grashof)
    theirs = ht.Nu_horizontal_cylinder_Kuehn_Goldstein(air.prandtl, grashof)
    assert 0.75 * theirs < ours < 1.02 * theirs


# The standard atmosphere as another library codes it; it comes with the heat-transfer library.
@pytest.mark.parametrize("temperature_k", [230.0, 288.15, 330.0, 400.0, 520.0])
def test_air_agrees_with_a_library(temperature_k):
    atmosphere = pytest.importorskip("fluids", reason="the library fluids is not installed").ATMOSPHERE_1976
    air = air_at(temperature_k=temperature_k)
    density = atmosphere.density(temperature_k, 101_325.0)
    assert air.conductivity_w_m_k == pytest.approx(atmosphere.thermal_conductivity(temperature_k), rel=1e-4)
    assert air.viscosity_m2_s == pytest.approx(atmosphere.viscosity(temperature_k) / density, rel=1e-4)
