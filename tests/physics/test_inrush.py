import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.physics.inrush import capacitor_rush, coil_pull, filament_rush, limited_rush_s


def area(values, times):
    return float(np.sum((values[1:] + values[:-1]) / 2 * np.diff(times)))


def stepped_rush(*, voltage_v, resistance_ohm, capacitance_f, inductance_h, end_s):
    """The same circuit walked through in small steps (fourth-order Runge-Kutta)."""
    step_s, steps = end_s / 40_000, 40_000
    amps = bus_v = heat_j = 0.0
    peak_a, peak_s = 0.0, 0.0

    def slope(amps, bus_v):
        return (voltage_v - bus_v - resistance_ohm * amps) / inductance_h, amps / capacitance_f

    for number in range(steps):
        one = slope(amps, bus_v)
        two = slope(amps + step_s / 2 * one[0], bus_v + step_s / 2 * one[1])
        three = slope(amps + step_s / 2 * two[0], bus_v + step_s / 2 * two[1])
        four = slope(amps + step_s * three[0], bus_v + step_s * three[1])
        after = amps + step_s / 6 * (one[0] + 2 * two[0] + 2 * three[0] + four[0])
        bus_v += step_s / 6 * (one[1] + 2 * two[1] + 2 * three[1] + four[1])
        heat_j += resistance_ohm * (amps**2 + after**2) / 2 * step_s
        amps = after
        if amps > peak_a:
            peak_a, peak_s = amps, (number + 1) * step_s
    return peak_a, peak_s, heat_j


# Damping 4.7 (slow), 1.0 exactly, just either side of it, 0.22 (rings).
@pytest.mark.parametrize(
    ("resistance_ohm", "capacitance_f", "inductance_h", "end_s"),
    [
        (0.3, 1e-3, 1e-6, 3e-3),
        (2.0, 1e-3, 1e-3, 2e-2),
        (2.03, 1e-3, 1e-3, 2e-2),
        (1.97, 1e-3, 1e-3, 2e-2),
        (0.02, 1e-3, 2e-6, 2e-3),
    ],
)
def test_the_closed_form_agrees_with_small_steps(resistance_ohm, capacitance_f, inductance_h, end_s):
    circuit = {
        "voltage_v": 84.0,
        "resistance_ohm": resistance_ohm,
        "capacitance_f": capacitance_f,
        "inductance_h": inductance_h,
    }
    peak_a, peak_s, heat_j = stepped_rush(**circuit, end_s=end_s)
    rush = capacitor_rush(**circuit)
    assert rush.peak_a == pytest.approx(peak_a, rel=1e-4)
    assert rush.peak_s == pytest.approx(peak_s, rel=5e-3)  # a step is 0.5 % of it
    assert rush.heat_j == pytest.approx(heat_j, rel=2e-3)


@given(resistance_ohm=st.floats(1e-3, 10.0), capacitance_f=st.floats(1e-5, 0.1), inductance_h=st.floats(1e-8, 1e-3))
def test_inductance_only_lowers_the_peak(resistance_ohm, capacitance_f, inductance_h):
    circuit = {"voltage_v": 84.0, "resistance_ohm": resistance_ohm, "capacitance_f": capacitance_f}
    stiff, slowed = capacitor_rush(**circuit), capacitor_rush(**circuit, inductance_h=inductance_h)
    assert slowed.peak_a <= stiff.peak_a * (1 + 1e-9)
    assert slowed.peak_a <= 84.0 * math.sqrt(capacitance_f / inductance_h) * (1 + 1e-9)
    assert slowed.peak_s > stiff.peak_s == 0.0
    assert slowed.heat_j == stiff.heat_j


def test_a_little_inductance_changes_little():
    circuit = {"voltage_v": 84.0, "resistance_ohm": 1.0, "capacitance_f": 1e-3}
    stiff, slowed = capacitor_rush(**circuit), capacitor_rush(**circuit, inductance_h=1e-12)
    assert slowed.peak_a == pytest.approx(stiff.peak_a, rel=1e-6)
    assert slowed.time_constant_s == pytest.approx(stiff.time_constant_s, rel=1e-6)


# The slowest of the two parts of a slow rush: its current falls by e in that time, late on.
def test_the_time_constant_is_that_of_the_tail():
    rush = capacitor_rush(voltage_v=84.0, resistance_ohm=2.5, capacitance_f=1e-3, inductance_h=1e-3)
    # Worked: R / 2L = 1250 /s and w = 1000 /s, so the slow part falls at 1250 - 750 = 500 /s.
    assert rush.time_constant_s == pytest.approx(2e-3)
    rings = capacitor_rush(voltage_v=84.0, resistance_ohm=0.5, capacitance_f=1e-3, inductance_h=1e-3)
    assert rings.time_constant_s == pytest.approx(4e-3)  # Worked: 2 L / R
    edge = capacitor_rush(voltage_v=84.0, resistance_ohm=2.03, capacitance_f=1e-3, inductance_h=1e-3)
    assert edge.time_constant_s == pytest.approx(1e-3 * (1.015 + math.sqrt(1.015**2 - 1)))
    edge = capacitor_rush(voltage_v=84.0, resistance_ohm=1.97, capacitance_f=1e-3, inductance_h=1e-3)
    assert edge.time_constant_s == pytest.approx(1e-3 / 0.985)


@pytest.mark.parametrize(("cold_multiple", "time_constant_s"), [(10.0, 5e-3), (15.0, 1e-3), (1.2, 2e-3)])
def test_a_cold_filament_agrees_with_small_steps(cold_multiple, time_constant_s):
    rush = filament_rush(voltage_v=13.5, running_a=4.0, cold_multiple=cold_multiple, time_constant_s=time_constant_s)
    times = np.linspace(0.0, rush.settled_s, 400_001)
    amps = 4.0 * (1 + (cold_multiple - 1) * np.exp(-times / time_constant_s))
    assert amps[-1] == pytest.approx(4.4)
    assert rush.peak_a == pytest.approx(amps[0])
    assert rush.let_through_a2s == pytest.approx(area(amps**2, times), rel=1e-6)
    assert rush.energy_j == pytest.approx(area(13.5 * amps, times), rel=1e-6)


@pytest.mark.parametrize("cold_multiple", [1.0, 1.05, 1.1])
def test_a_filament_near_its_heat_does_not_rush(cold_multiple):
    rush = filament_rush(voltage_v=13.5, running_a=4.0, cold_multiple=cold_multiple, time_constant_s=5e-3)
    assert rush.settled_s == pytest.approx(0.0, abs=1e-9)
    assert rush.let_through_a2s == pytest.approx(0.0, abs=1e-6)
    assert rush.energy_j == pytest.approx(0.0, abs=1e-6)


def test_a_sagging_coil_never_pulls_in():
    coil = {"resistance_ohm": 3.0, "inductance_h": 0.1, "pull_in_a": 3.0}
    pulls = coil_pull(voltage_v=np.array([8.9, 9.0, 9.1]), **coil)
    assert pulls.time_s[0] == pulls.time_s[1] == math.inf
    assert math.isfinite(pulls.time_s[2])
    assert pulls.energy_j == pytest.approx([0.1 * (8.9 / 3) ** 2 / 2, 0.45, 0.45])


LAMP = {"voltage_v": 13.5, "running_a": 5.9, "cold_multiple": 10.0, "time_constant_s": 5e-3}


def test_a_cold_filament_on_a_limit_by_hand():
    """Worked: 7.7 A of 5.9 A is 1.3051; 9 u = 1.3051 x 13.5 / 9 - 1 = 0.9576, u = 0.10640; 2.2405 + 16.085 + 40.041
    = 58.367; over 1.3051^2 = 1.7033, times 5 ms: 171.3 ms.
    """
    assert limited_rush_s(**LAMP, limit_a=7.7, reached_v=9.0) == pytest.approx(0.1713, abs=5e-5)


@pytest.mark.parametrize(("limit_a", "reached_v"), [(7.7, 9.0), (15.0, 4.0), (6.5, 12.0)])
def test_a_cold_filament_on_a_limit_agrees_with_small_steps(limit_a, reached_v):
    """Its coldness u falls as fast as the power it gets, at full volts by u / T: stepped, not summed in closed form."""
    hot_ohm, coldness, time_s, step_s = 13.5 / 5.9, 1.0, 0.0, 2e-6
    while limit_a * hot_ohm / (1 + 9 * coldness) < reached_v:
        ohm = hot_ohm / (1 + 9 * coldness)
        coldness -= coldness / 5e-3 * (limit_a**2 * ohm) / (13.5**2 / ohm) * step_s
        time_s += step_s
    assert limited_rush_s(**LAMP, limit_a=limit_a, reached_v=reached_v) == pytest.approx(time_s, rel=2e-3)


def test_a_filament_starved_of_amps_never_warms():
    """Worked: 5 A through 13.5 V / 5.9 A = 2.288 ohm are 11.4 V when hot; cold, 5 A make 1.14 V at once."""
    assert limited_rush_s(**LAMP, limit_a=5.0, reached_v=11.5) == math.inf
    assert limited_rush_s(**LAMP, limit_a=5.0, reached_v=1.1) == 0.0
