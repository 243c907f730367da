"""Published: the motor's side, by three-phase algebra."""

import math

import pytest

from bom.physics.motor import battery_a, line_peak_v, phase_a, ride_rms_a, shorted_bus_a
from bom.physics.phase import line_rms_v


# Published: three-phase power as in any handbook, from memory: 10 kW at 400 V and a power factor of 0.8 is 18.04 A
# a lead. Here that power comes from 600 V DC: 16.67 A.
def test_handbook_three_phase_power(agrees):
    drive = {"bus_v": 600.0, "line_v": 400.0, "power_factor": 0.8}
    assert agrees(phase_a(battery_a=10_000 / 600, **drive), "18.04")
    assert agrees(battery_a(phase_a=18.042, **drive), "16.67")


# Worked: at full sine volts, bus / sqrt(2), and a power factor of 1 a lead carries sqrt(2 / 3) of the battery's
# amps; with a tenth of the volts ten times as many. At 90 % the battery gives a ninth more.
def test_amps_of_a_lead_by_speed(agrees):
    full_v = line_rms_v(bus_v=84.0)
    assert agrees(phase_a(battery_a=100.0, bus_v=84.0, line_v=full_v), "81.65")
    assert agrees(phase_a(battery_a=100.0, bus_v=84.0, line_v=full_v / 10), "816.5")
    lossy = battery_a(phase_a=81.65, bus_v=84.0, line_v=full_v, efficiency=0.9)
    assert agrees(lossy, "111.1")


# Worked: 84 V line peak at full speed; half of it at half speed, a quarter more downhill.
def test_back_emf_by_speed():
    assert line_peak_v(full_speed_line_peak_v=84.0, speed_fraction=0.5) == 42.0
    assert line_peak_v(full_speed_line_peak_v=84.0, speed_fraction=1.25) == 105.0


# Published: symmetrical short circuit, E / sqrt(r^2 + x^2) a phase, as in machine textbooks, from memory. Worked:
# 84 / sqrt(3) = 48.497 V over 0.010 + 0.002 ohm is 4041 A; with 2 pi 500 x 50 uH = 0.15708 ohm beside it
# 48.497 / 0.15754 = 307.8 A.
def test_amps_into_a_shorted_bus(agrees):
    motor = {"line_peak_v": 84.0, "between_leads_ohm": 0.020, "lead_ohm": 0.002}
    assert agrees(shorted_bus_a(**motor), "4041")
    assert agrees(shorted_bus_a(**motor, phase_inductance_h=50e-6, electrical_hz=500.0), "307.8")
    assert agrees(shorted_bus_a(**motor, phase_inductance_h=0.0, electrical_hz=500.0), "4041")


# The plain quotient of line volts and ohms between two leads is no upper bound: a short joins all three leads,
# and the peak is 2 / sqrt(3) of it.
def test_two_leads_are_not_the_worst():
    answer = shorted_bus_a(line_peak_v=84.0, between_leads_ohm=0.02)
    assert answer / (84.0 / 0.02) == pytest.approx(2 / math.sqrt(3))


# Worked: 300 A for 10 s, 100 A for 60 s, nothing for 30 s: sqrt((900000 + 600000) / 100) = 122.47 A, where the
# mean is 90 A. Duty practice (IEC 60034-1 S3 to S8 equivalents) takes the same root, from memory.
def test_rms_of_a_ride(agrees):
    assert agrees(ride_rms_a(segments=[(300.0, 10.0), (100.0, 60.0), (0.0, 30.0)]), "122.47")
    assert agrees(ride_rms_a(segments=[(-100.0, 1.0), (100.0, 3.0)]), "100.00")
