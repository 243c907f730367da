"""Published: creepage and clearance, every row of the tables used, and the step to the next row."""

import math

import numpy as np
import pytest

from bom.errors import RangeError
from bom.physics.creepage import board_creepage_mm, clearance_mm, creepage_mm, impulse_v


def lower(row, table, key, *same):
    """Next lower printed limit among the rows that agree on everything else."""
    alike = [float(other[key]) for other in table if all(other[name] == row[name] for name in same)]
    return max((value for value in alike if value < float(row[key])), default=0.0)


# The 2007 and 2020 editions print the same figures here under two numbers; the clause of 2020 is cited.
def test_creepage_table(creepage_row, read_table):
    row = creepage_row
    below_v = lower(row, read_table("creepage"), "volts_v", "pollution_degree", "material_group")
    groups = ("IIIa", "IIIb") if row["material_group"] == "III" else (row["material_group"],)
    for group in groups:
        for volts_v in (float(row["volts_v"]), below_v + 0.001):
            answer = creepage_mm(voltage_v=volts_v, pollution_degree=int(row["pollution_degree"]), material_group=group)
            assert answer == float(row["value"])


def test_board_creepage_table(board_creepage_row, read_table):
    row = board_creepage_row
    below_v = lower(row, read_table("board_creepage"), "volts_v", "pollution_degree")
    for volts_v in (float(row["volts_v"]), below_v + 0.001):
        answer = board_creepage_mm(voltage_v=volts_v, pollution_degree=int(row["pollution_degree"]))
        assert answer == float(row["value"])


def test_impulse_table(impulse_row, read_table):
    row = impulse_row
    below_v = lower(row, read_table("impulse"), "supply_v", "overvoltage_category")
    for volts_v in (float(row["supply_v"]), below_v + 0.001):
        answer = impulse_v(supply_v=volts_v, overvoltage_category=int(row["overvoltage_category"]))
        assert answer == float(row["value"])


def test_clearance_table(clearance_row, read_table):
    row = clearance_row
    below_v = lower(row, read_table("clearance"), "impulse_v", "pollution_degree")
    for volts_v in (float(row["impulse_v"]), below_v + 0.001):
        assert clearance_mm(impulse_v=volts_v, pollution_degree=int(row["pollution_degree"])) == float(row["value"])


def test_altitude_table(altitude_row, read_table):
    row = altitude_row
    for altitude_m in (float(row["altitude_m"]), lower(row, read_table("altitude"), "altitude_m") + 0.1):
        answer = clearance_mm(impulse_v=2000.0, pollution_degree=3, altitude_m=altitude_m)
        assert answer == pytest.approx(float(row["value"]))


# Worked: a full 72 V class pack outdoors (84 V, pollution degree 3, plastic of unknown tracking index) takes
# the 100 V row, 2.2 mm; 150 V the 160 V row, 2.5 mm. Its clearance at category II is less: impulse 800 V up
# to 100 V, 1500 V up to 150 V, so 0.8 mm. Creepage governs.
def test_distances_of_a_pack():
    for volts_v, creepage, impulse in ((84.0, 2.2, 800.0), (150.0, 2.5, 1500.0)):
        assert creepage_mm(voltage_v=volts_v, pollution_degree=3, material_group="IIIa") == creepage
        assert impulse_v(supply_v=volts_v, overvoltage_category=2) == impulse
        assert clearance_mm(impulse_v=impulse, pollution_degree=3) == 0.8 < creepage
    assert clearance_mm(impulse_v=1500.0, pollution_degree=2) == 0.5


# Published: a converter maker's own distances at functional insulation, clearance / creepage: 75 V 0.7 / 1.3,
# 150 V 1.0 / 2.0, 300 V 1.6 / 3.0 mm; read second-hand on a public page. The tables at pollution degree 2 and
# IIIa agree with its creepage to a fifth; its clearances are the more careful at these volts.
@pytest.mark.parametrize(("volts_v", "clearance", "creepage"), [(75, 0.7, 1.3), (150, 1.0, 2.0), (300, 1.6, 3.0)])
def test_a_makers_distances(volts_v, clearance, creepage):
    answer = creepage_mm(voltage_v=float(volts_v), pollution_degree=2, material_group="IIIa")
    assert answer == pytest.approx(creepage, rel=0.2)
    impulse = impulse_v(supply_v=float(volts_v), overvoltage_category=1)
    assert clearance_mm(impulse_v=impulse, pollution_degree=2) <= clearance


@pytest.mark.parametrize(("pollution_degree", "group"), [(4, "IIIa"), (0, "I"), (3, "III"), (1, "III"), (2, "any")])
def test_no_creepage_is_printed_for_these(pollution_degree, group):
    with pytest.raises(RangeError, match="this table takes 1, 2 and 3, and I, II, IIIa, IIIb"):
        creepage_mm(voltage_v=84.0, pollution_degree=pollution_degree, material_group=group)


def test_other_degrees_and_categories_are_refused():
    with pytest.raises(RangeError, match="pollution_degree = 3: this table takes 1 and 2"):
        board_creepage_mm(voltage_v=84.0, pollution_degree=3)
    with pytest.raises(RangeError, match="pollution_degree = 1: this table takes 2 and 3"):
        clearance_mm(impulse_v=800.0, pollution_degree=1)
    with pytest.raises(RangeError, match="overvoltage_category = 5: this table takes 1 to 4"):
        impulse_v(supply_v=84.0, overvoltage_category=5)


def test_a_column_of_volts():
    answers = creepage_mm(voltage_v=np.array([0.0, 84.0, math.nan]), pollution_degree=2, material_group="I")
    assert answers[:2].tolist() == [0.4, 0.71]
    assert math.isnan(answers[2])
