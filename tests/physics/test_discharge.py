import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.physics.discharge import harmless_capacitance_f, safe_speed_fraction, time_to_volts_s, wait_s
from bom.physics.motor import line_peak_v
from bom.physics.precharge import stored_energy_j

BLEED = {"resistance_ohm": 1e4, "capacitance_f": 1e-3}


def test_a_spinning_motor_keeps_the_bus_up():
    waits = wait_s(**BLEED, start_v=84.0, motor_line_peak_v=np.array([0.0, 60.0, 60.1, 84.0, math.nan]))
    assert waits[0] == waits[1] == pytest.approx(time_to_volts_s(**BLEED, start_v=84.0))
    assert waits[2] == waits[3] == math.inf
    assert math.isnan(waits[4])


def test_a_low_bus_is_lifted_by_the_motor_all_the_same():
    assert wait_s(**BLEED, start_v=50.0, motor_line_peak_v=84.0) == math.inf
    assert wait_s(**BLEED, start_v=50.0, motor_line_peak_v=40.0) == 0.0


@given(full_v=st.floats(1.0, 500.0))
def test_the_safe_speed_divides_waiting_from_waiting_for_ever(full_v):
    share = safe_speed_fraction(full_speed_line_peak_v=full_v)
    peak_v = line_peak_v(full_speed_line_peak_v=full_v, speed_fraction=share * 0.999)
    assert math.isfinite(wait_s(**BLEED, start_v=84.0, motor_line_peak_v=peak_v))
    faster_v = line_peak_v(full_speed_line_peak_v=full_v, speed_fraction=share * 1.001)
    assert (share == 1.0) or wait_s(**BLEED, start_v=84.0, motor_line_peak_v=faster_v) == math.inf


@given(voltage_v=st.floats(1.0, 1000.0), energy_j=st.floats(0.001, 10.0))
def test_the_harmless_capacitor_holds_that_energy(voltage_v, energy_j):
    farads = harmless_capacitance_f(voltage_v=voltage_v, energy_j=energy_j)
    if 1e-7 <= farads <= 0.5:
        assert stored_energy_j(capacitance_f=farads, voltage_v=voltage_v) == pytest.approx(energy_j)
