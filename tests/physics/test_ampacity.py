import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.errors import RangeError
from bom.physics.air import air_at, surface_loss_w_per_m
from bom.physics.ampacity import ampacity_a, bundle_factor, heat_balance_a, table_a

CABLE = {
    "conductor_mm": 7.8,
    "outside_mm": 10.4,
    "resistance_20_mohm_per_m": 0.743,
    "insulation": "XLPE",
    "ambient_c": 30.0,
}
LOOM = CABLE | {"area_mm2": 25.0, "cable_max_c": 125.0, "terminal_max_c": 90.0, "loaded_wires": 1}


def test_between_two_sizes_the_smaller_one_counts():
    assert table_a(area_mm2=20.0, conductor_c=90.0, ambient_c=30.0) == 115
    assert table_a(area_mm2=15.9, conductor_c=90.0, ambient_c=30.0) == 86
    assert table_a(area_mm2=120.0, conductor_c=90.0, ambient_c=30.0) == 310


def test_below_its_first_size_the_table_is_silent():
    assert table_a(area_mm2=1.49, conductor_c=90.0, ambient_c=30.0) == math.inf


def test_the_column_follows_the_conductor_temperature():
    below = table_a(area_mm2=25.0, conductor_c=89.99, ambient_c=30.0)
    at = table_a(area_mm2=25.0, conductor_c=90.0, ambient_c=30.0)
    assert below < at == 161
    # Worked: 131 x sqrt(55 / 40 x 1.1965 / 1.25545), copper factors at 70 C and 85 C
    assert table_a(area_mm2=25.0, conductor_c=85.0, ambient_c=30.0) == pytest.approx(149.96, abs=0.01)


def test_between_two_bundles_the_larger_one_counts():
    assert bundle_factor(loaded_wires=10) == 0.45
    assert np.all(bundle_factor(loaded_wires=np.array([9.0, 11.0, 13.0])) == [0.50, 0.45, 0.41])
    listed = np.array([1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 12.0, 16.0, 20.0])
    assert np.all(bundle_factor(loaded_wires=listed[:-1] + 0.01) == bundle_factor(loaded_wires=listed[1:]))


@pytest.mark.parametrize("ambient_c", [90.0, 110.0])
def test_air_as_hot_as_the_limit_leaves_nothing(ambient_c):
    assert ampacity_a(**LOOM | {"ambient_c": ambient_c}) == 0.0
    assert table_a(area_mm2=25.0, conductor_c=90.0, ambient_c=ambient_c) == 0.0


def test_the_lower_temperature_limit_rules():
    assert ampacity_a(**LOOM) == ampacity_a(**LOOM | {"cable_max_c": 90.0, "terminal_max_c": 125.0})
    assert ampacity_a(**LOOM) < ampacity_a(**LOOM | {"terminal_max_c": 125.0})


def test_the_lower_of_model_and_table_rules():
    model_a = heat_balance_a(**CABLE, conductor_c=90.0)
    assert ampacity_a(**LOOM) == 161 < model_a
    # 0.75 mm2 thin wall: the table is silent, so the model speaks alone, times 0.8 for the pair
    thin = {
        "conductor_mm": 1.3,
        "outside_mm": 1.9,
        "resistance_20_mohm_per_m": 24.7,
        "insulation": "PVC",
        "ambient_c": 30.0,
    }
    limits = {"area_mm2": 0.75, "cable_max_c": 70.0, "terminal_max_c": 85.0, "loaded_wires": 2}
    assert ampacity_a(**thin, **limits) == pytest.approx(0.8 * heat_balance_a(**thin, conductor_c=70.0))


def test_insulation_by_name():
    assert heat_balance_a(**CABLE, conductor_c=90.0) == heat_balance_a(
        **CABLE | {"insulation": "xlpe"}, conductor_c=90.0
    )
    with pytest.raises(RangeError, match='insulation = "wool": this formula takes pvc, silicone, xlpe'):
        heat_balance_a(**CABLE | {"insulation": "wool"}, conductor_c=90.0)


def test_a_column_of_insulations_with_one_unknown():
    column = heat_balance_a(**CABLE | {"insulation": ["PVC", "", "XLPE"]}, conductor_c=90.0)
    assert column[0] < column[2]
    assert math.isnan(column[1])


@pytest.mark.parametrize("temperature_k", [219.0, 531.0])
def test_air_outside_its_range_is_refused(temperature_k):
    with pytest.raises(RangeError, match="temperature_k"):
        air_at(temperature_k=temperature_k)


def test_surface_and_air_outside_their_range_are_refused():
    with pytest.raises(RangeError, match=r"surface_c = -40\.1: the least"):
        surface_loss_w_per_m(outside_mm=10.0, surface_c=-40.1, ambient_c=-40.0, emissivity=0.9)
    with pytest.raises(RangeError, match=r"ambient_c = 250\.1: the most"):
        surface_loss_w_per_m(outside_mm=10.0, surface_c=250.0, ambient_c=250.1, emissivity=0.9)


def test_a_wire_wider_than_its_insulation_is_refused():
    with pytest.raises(RangeError, match=r"conductor_mm = 7.8 is above outside_mm = 7"):
        heat_balance_a(**CABLE | {"outside_mm": 7.0}, conductor_c=90.0)


# Worked: a bare wire has no wall, so its surface is as hot as its metal.
def test_a_bare_wire_is_as_hot_outside_as_inside():
    bare = CABLE | {"outside_mm": 7.8}
    loss = surface_loss_w_per_m(outside_mm=7.8, surface_c=90.0, ambient_c=30.0, emissivity=0.9)
    hot_ohm_per_m = 0.743e-3 * 1.2751
    assert heat_balance_a(**bare, conductor_c=90.0) == pytest.approx(math.sqrt(loss / hot_ohm_per_m))


@given(
    cooler_c=st.floats(-20.0, 60.0),
    warmer_by_k=st.floats(0.5, 40.0),
    loaded_wires=st.integers(1, 19),
    area_mm2=st.sampled_from([0.75, 1.5, 4.0, 25.0, 70.0]),
)
def test_warmer_air_and_more_neighbours_never_raise_the_answer(cooler_c, warmer_by_k, loaded_wires, area_mm2):
    base = LOOM | {"area_mm2": area_mm2, "ambient_c": cooler_c, "loaded_wires": loaded_wires}
    answer_a = ampacity_a(**base)
    assert ampacity_a(**base | {"ambient_c": cooler_c + warmer_by_k}) <= answer_a
    assert ampacity_a(**base | {"loaded_wires": loaded_wires + 1}) <= answer_a
    assert ampacity_a(**base | {"resistance_20_mohm_per_m": 0.9}) <= answer_a
