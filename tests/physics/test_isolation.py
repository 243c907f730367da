import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.errors import RangeError
from bom.physics.isolation import is_above_low_voltage, measured_ohm


def test_a_column_of_classes():
    assert is_above_low_voltage(voltage_v=np.array([58.8, 60.0, 84.0])).tolist() == [False, False, True]


@pytest.mark.parametrize("voltage_v", [math.nan, np.array([48.0, math.nan])])
def test_an_unknown_voltage_has_no_class(voltage_v):
    with pytest.raises(RangeError, match="no class"):
        is_above_low_voltage(voltage_v=voltage_v)


@pytest.mark.parametrize("voltage_v", [-1.0, 1501.0])
def test_voltages_outside_the_range_have_no_class(voltage_v):
    with pytest.raises(RangeError, match="voltage_v"):
        is_above_low_voltage(voltage_v=voltage_v)


# Derived: a pack with one leak at each pole. The pole with the larger leak resistance reads the larger
# voltage; the resistor goes across it, and the formula must give back the other, smaller leak.
@given(small_ohm=st.floats(1e4, 1e6), larger_by=st.floats(1.0, 20.0), known_ohm=st.floats(1e4, 1e6))
def test_two_readings_give_back_the_smaller_leak(small_ohm, larger_by, known_ohm):
    large_ohm = small_ohm * larger_by
    both_ohm = large_ohm * known_ohm / (large_ohm + known_ohm)
    answer = measured_ohm(
        known_resistance_ohm=known_ohm,
        pack_v=84.0,
        larger_v=84.0 * large_ohm / (large_ohm + small_ohm),
        larger_with_resistor_v=84.0 * both_ohm / (both_ohm + small_ohm),
    )
    assert answer == pytest.approx(small_ohm, rel=1e-6)


def test_readings_in_the_wrong_order_are_refused():
    readings = {"known_resistance_ohm": 5e4, "pack_v": 84.0}
    with pytest.raises(RangeError, match="larger_with_resistor_v = 50 is above larger_v = 20"):
        measured_ohm(**readings, larger_v=20.0, larger_with_resistor_v=50.0)
    with pytest.raises(RangeError, match="larger_v = 90 is above pack_v = 84"):
        measured_ohm(**readings, larger_v=90.0, larger_with_resistor_v=50.0)
