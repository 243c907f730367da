"""Published: precharge and discharge of a controller's capacitors."""

import math

import pytest

from bom.physics.discharge import time_to_volts_s
from bom.physics.precharge import (
    greatest_load_w,
    stored_energy_j,
    time_to_fraction_s,
    time_under_load_s,
    worst_power_w,
)


# Published: an inverter maker's manual, 320 V, 600 ohm, 500 uF; read second-hand on a public page.
def test_a_makers_precharge_example(agrees):
    assert agrees(worst_power_w(resistance_ohm=600.0, voltage_v=320.0), "171")
    three_time_constants = 1 - math.exp(-3)
    time_s = time_to_fraction_s(resistance_ohm=600.0, capacitance_f=500e-6, fraction=three_time_constants)
    assert agrees(time_s, "0.9000")
    assert agrees(stored_energy_j(capacitance_f=500e-6, voltage_v=320.0), "25.60")


# Worked: -ln(1 - q) time constants. Published beside it: "3 tau, 95.0 %" by an inverter maker and "5 tau,
# 99.33 %" in a semiconductor maker's reference design; read second-hand on public pages.
@pytest.mark.parametrize(
    ("fraction", "printed"),
    [(0.90, "2.303"), (0.95, "2.996"), (0.99, "4.605"), (0.950213, "3.000"), (0.993262, "5.000")],
)
def test_time_constants(agrees, fraction, printed):
    assert agrees(time_to_fraction_s(resistance_ohm=1.0, capacitance_f=0.1, fraction=fraction) * 10, printed)


# Worked: 84 V through 470 ohm gives at most V^2 / 4R = 3.75 W, so 50 W of idle converter stalls the bus.
def test_a_converter_stalls_precharge(agrees):
    assert agrees(greatest_load_w(resistance_ohm=470.0, voltage_v=84.0, fraction=0.5), "3.75")
    stalled = time_under_load_s(resistance_ohm=470.0, capacitance_f=1e-3, voltage_v=84.0, load_w=50.0, fraction=0.95)
    assert stalled == math.inf


# Worked: 0.95 x 0.05 = 0.0475 of V^2 / R.
def test_load_at_95_percent(agrees):
    share = greatest_load_w(resistance_ohm=100.0, voltage_v=100.0, fraction=0.95) / 100.0
    assert agrees(share, "0.04750")


# Worked: 1000 uF at 117.6 V holds 6.91 J, far over the 0.2 J of ISO 6469-4:2015 5.2.3 (read second-hand on a
# public page), which 111.1 uF holds at 60 V.
def test_energy_of_a_capacitor(agrees):
    assert agrees(stored_energy_j(capacitance_f=1000e-6, voltage_v=117.6), "6.91")
    assert agrees(stored_energy_j(capacitance_f=111.1e-6, voltage_v=60.0), "0.200")


# Worked: 10 kohm x 1000 uF x ln(120 / 60) = 10 s x 0.693147.
def test_discharge_to_60_v(agrees):
    time_s = time_to_volts_s(resistance_ohm=10e3, capacitance_f=1000e-6, start_v=120.0)
    assert agrees(time_s, "6.93147")
