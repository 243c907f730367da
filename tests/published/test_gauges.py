"""Published: area and resistance of American wire gauges, from data/gauges.csv and data/aircraft_wire.csv."""

import csv
import math
from pathlib import Path

import pytest

from bom.physics.conductor import awg_area_mm2, copper_resistance_mohm_per_m, copper_temperature_factor

FOOT_M = 0.3048
CIRCULAR_MIL_MM2 = 5.067075e-4


def read(name):
    with (Path(__file__).parent / "data" / name).open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def of(quantity, name="gauges.csv"):
    chosen = [row for row in read(name) if row["quantity"] == quantity]
    assert chosen
    return pytest.mark.parametrize("row", chosen, ids=lambda row: row["gauge"].replace("/", "_"))


def ohm_per_1000_ft(row, temperature_c):
    cold = copper_resistance_mohm_per_m(area_mm2=awg_area_mm2(gauge=row["gauge"]))
    return cold * copper_temperature_factor(temperature_c=temperature_c) * FOOT_M


def last_digit(printed):
    return 10.0 ** -len(printed.partition(".")[2])


# Half the last digit, and half a tenth of a mil (0.00127 mm) of diameter, to which the table rounds first.
@of("area")
def test_areas(row):
    area_mm2 = float(row["value"])
    half_mil_tenth = area_mm2 * 2 * 0.00127 / (4 * area_mm2 / math.pi) ** 0.5
    tolerance = last_digit(row["value"]) / 2 + half_mil_tenth
    assert awg_area_mm2(gauge=row["gauge"]) == pytest.approx(area_mm2, abs=tolerance)


# One whole last digit: the handbook works from rounded diameters, and two rows need it.
@of("resistance at 20 C")
def test_resistances_at_20_c(row):
    assert ohm_per_1000_ft(row, 20.0) == pytest.approx(float(row["value"]), abs=last_digit(row["value"]))


# The 25 C column has three digits and was worked from other diameters: one digit in the third place.
@of("resistance at 25 C")
def test_resistances_at_25_c(row):
    assert ohm_per_1000_ft(row, 25.0) == pytest.approx(float(row["value"]), rel=0.0035)


# Three digits, worked from the code's own circular mils: one digit in the third place.
@of("solid at 75 C")
def test_solid_at_75_c(row):
    assert ohm_per_1000_ft(row, 75.0) == pytest.approx(float(row["value"]), rel=0.005)


# Stranding adds 2 %, as the solid and stranded rows of 14 to 8 AWG themselves show.
@of("stranded at 75 C")
def test_stranded_at_75_c(row):
    assert 1.02 * ohm_per_1000_ft(row, 75.0) == pytest.approx(float(row["value"]), rel=0.01)


# Aircraft strands hold from 11 % less copper than the gauge (12 and 10 AWG) to a fifth more (20 AWG, 19 strands).
@of("cmil", "aircraft_wire.csv")
def test_aircraft_areas(row):
    ratio = float(row["value"]) * CIRCULAR_MIL_MM2 / awg_area_mm2(gauge=row["gauge"])
    assert 0.89 < ratio < 1.20


# So tinned strands at their greatest ohms lie from 3 % under solid copper of the gauge to a quarter over it.
@of("tinned maximum", "aircraft_wire.csv")
def test_aircraft_resistances(row):
    assert 0.97 < float(row["value"]) / ohm_per_1000_ft(row, 20.0) < 1.27
