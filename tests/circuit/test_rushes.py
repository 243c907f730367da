"""What rushes in at closing, and the motor's side, by hand."""

from collections.abc import Callable
from math import exp, isnan, sin, sqrt

import pytest

from bom.build import Build
from bom.circuit.motor_side import Figure
from bom.circuit.rushes import Rush

Converted = Callable[..., Build]


def _rush(build: Build, what: str) -> Rush:
    return next(rush for rush in build.walks.rushes if rush.what == what)


def _figure(build: Build, what: str) -> Figure:
    return next(figure for figure in build.walks.motor if figure.what == what)


def test_the_precharge_resistor_takes_half_c_v_squared(converted: Converted) -> None:
    """Worked: 2.2 mF at 84.0 V hold 7.76 J; the resistor takes as much, and V / R at first."""
    build = converted("street-72")
    ohm = float(build.filled["precharge resistor"].part.number("resistance_ohm")[0])
    rush = _rush(build, "precharge relay")
    assert rush.heat_j == pytest.approx(0.5 * 2.2e-3 * 84.0**2)
    assert rush.peak_a == pytest.approx(84.0 / ohm)
    assert rush.time_s > 3.0 * ohm * 2.2e-3  # later than 3 RC with 5 W on the bus


def test_a_bus_that_draws_too_much_never_fills(converted: Converted) -> None:
    """Worked: above q (1 - q) V^2 / R the bus stalls below 95 %."""
    build = converted("street-72")
    ohm = float(build.filled["precharge resistor"].part.number("resistance_ohm")[0])
    watts = 0.95 * 0.05 * 84.0**2 / ohm * 1.05
    pinned = {"pins.precharge resistor": build.filled["precharge resistor"].part_id}
    heavy = converted("street-72", {"controller.standby": f"{watts:.3f} W", **pinned})
    assert _rush(heavy, "precharge relay").time_s == float("inf")


def test_precharge_leaves_the_contactor_a_twentieth(converted: Converted) -> None:
    """Worked: 5 % of the volts, so 5 % of the amps."""
    build = converted("street-72")
    after, bare = (_rush(build, f"contactor, {when} precharge") for when in ("after", "without"))
    assert after.peak_a == pytest.approx(0.05 * bare.peak_a)
    assert bare.peak_a > 1000  # Trade: makers quote more than 1000 A into an empty bus


def test_a_cold_filament_takes_ten_times(converted: Converted) -> None:
    """Trade: 10 x, warm in a few thousandths of a second."""
    build = converted("street-72")
    rush = _rush(build, "headlamp, from cold")
    assert rush.peak_a == pytest.approx(10 * build.facts.budget.loads["headlamp"].amps)
    assert 0.001 < rush.time_s < 0.1


def test_the_ride_heats_the_leads_as_its_root_mean_square(converted: Converted) -> None:
    """Worked: 280 A for 10 s and 140 A for 50 s."""
    figure = _figure(converted("street-72"), "phase amps rms over the ride")
    assert figure.value == pytest.approx(sqrt((280**2 * 10 + 140**2 * 50) / 60))


def test_the_volts_between_leads_are_those_of_a_six_step_drive(converted: Converted) -> None:
    """Worked: sqrt(2 / 3) x 88 V."""
    figure = _figure(converted("street-72"), "between motor leads, all harmonics")
    assert figure.value == pytest.approx(88.0 * sqrt(2 / 3))


def test_what_a_turning_motor_feeds_is_not_known_without_its_figures(converted: Converted) -> None:
    """Unknown in, unknown out, and the figure that would settle it."""
    figure = _figure(converted("street-72"), "amps the motor feeds into a shorted bus")
    assert isnan(figure.value)
    assert figure.datum.endswith("(motor.back_emf)")


def test_a_turning_motor_feeds_a_shorted_bus(converted: Converted) -> None:
    """Worked: (80 V / sqrt 3) / (20 mohm / 2)."""
    edits = {"motor.back_emf": "80 V", "motor.winding_resistance": "20 mohm"}
    build = converted("street-72", edits)
    assert _figure(build, "amps the motor feeds into a shorted bus").value == pytest.approx(80 / sqrt(3) / 0.010)
    assert _figure(build, "share of top speed that holds 60 V").value == pytest.approx(60 / 80)


def test_a_rush_is_over_only_after_its_peak(converted: Converted) -> None:
    """Worked: 84 V, 37.3 mohm, 0.9 uH, 2.2 mF: i = V / (w L) exp(-R t / 2 L) sin(w t) peaks at 0.046 ms.

    w = sqrt(1 / L C - (R / 2 L)^2) = 8.7e3 / s and R / 2 L = 20.7e3 / s; a twentieth of the peak is left at 0.20 ms.
    """
    rush = _rush(converted("street-72"), "contactor, without precharge")
    decay, swing = 20.7e3, 8.7e3
    left_a = 84.0 / (swing * 0.9e-6) * exp(-decay * rush.time_s) * sin(swing * rush.time_s)
    assert 0.0 < rush.time_s < 1e-3
    assert abs(left_a) < 0.05 * rush.peak_a
