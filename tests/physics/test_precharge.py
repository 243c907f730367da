import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.physics.discharge import time_to_volts_s
from bom.physics.precharge import (
    greatest_load_w,
    left_after_precharge_v,
    time_to_fraction_s,
    time_under_load_s,
)

CIRCUIT = {"resistance_ohm": 100.0, "capacitance_f": 1e-3}


def stepped_time_s(*, load_w: float, fraction: float, load_starts_fraction: float, voltage_v: float) -> float:
    """The same charge walked through in small steps of bus volts (middle of each step)."""
    edges = np.linspace(0.0, fraction * voltage_v, 200_001)
    bus_v = (edges[1:] + edges[:-1]) / 2
    load_a = np.where(bus_v >= load_starts_fraction * voltage_v, load_w / bus_v, 0.0)
    charge_a = (voltage_v - bus_v) / CIRCUIT["resistance_ohm"] - load_a
    return float(np.sum(CIRCUIT["capacitance_f"] * np.diff(edges) / charge_a))


@pytest.mark.parametrize(
    ("load_w", "fraction", "load_starts_fraction"),
    [(0.5, 0.95, 0.1), (3.0, 0.95, 0.1), (10.0, 0.80, 0.5), (2.0, 0.5, 0.3), (5.0, 0.2, 0.4)],
)
def test_closed_form_agrees_with_small_steps(load_w, fraction, load_starts_fraction):
    case = {"load_w": load_w, "fraction": fraction, "load_starts_fraction": load_starts_fraction}
    stepped = stepped_time_s(voltage_v=84.0, **case)
    assert time_under_load_s(voltage_v=84.0, **CIRCUIT, **case) == pytest.approx(stepped, rel=1e-4)


@pytest.mark.parametrize("fraction", [0.0, 0.05, 0.5, 0.95])
def test_without_a_load_both_formulas_agree(fraction):
    loaded = time_under_load_s(**CIRCUIT, voltage_v=84.0, load_w=0.0, fraction=fraction)
    assert loaded == pytest.approx(time_to_fraction_s(**CIRCUIT, fraction=fraction))


@given(fraction=st.floats(0.90, 0.99), voltage_v=st.floats(24.0, 400.0))
def test_the_greatest_load_divides_arriving_from_stalling(fraction, voltage_v):
    limit_w = greatest_load_w(resistance_ohm=100.0, voltage_v=voltage_v, fraction=fraction)
    case = CIRCUIT | {"voltage_v": voltage_v, "fraction": fraction}
    below = time_under_load_s(**case, load_w=0.99 * limit_w)
    assert math.isfinite(below)
    assert below > time_to_fraction_s(**CIRCUIT, fraction=fraction)
    assert time_under_load_s(**case, load_w=1.01 * limit_w) == math.inf


@given(load_w=st.floats(0.0, 17.0))
def test_where_it_settles_the_resistor_passes_what_the_load_draws(load_w):
    bus_v = left_after_precharge_v(resistance_ohm=100.0, voltage_v=84.0, load_w=load_w)
    assert bus_v * (84.0 - bus_v) / 100.0 == pytest.approx(load_w, abs=1e-9)
    assert 42.0 <= bus_v <= 84.0


# The two views of one limit: the load that the bus just carries past a fraction settles it at that fraction,
# and a little below it the bus does arrive.
@given(fraction=st.floats(0.51, 0.999))
def test_it_settles_at_the_fraction_of_the_greatest_load(fraction):
    limit_w = greatest_load_w(resistance_ohm=100.0, voltage_v=84.0, fraction=fraction)
    bus_v = left_after_precharge_v(resistance_ohm=100.0, voltage_v=84.0, load_w=limit_w)
    assert bus_v == pytest.approx(fraction * 84.0)


def test_above_a_quarter_it_never_settles():
    quarter_w = 84.0**2 / 400.0
    loads = np.array([quarter_w * 0.999, quarter_w * 1.001])
    settled, never = left_after_precharge_v(resistance_ohm=100.0, voltage_v=84.0, load_w=loads)
    assert settled > 42.0
    assert math.isnan(never)
    assert time_under_load_s(**CIRCUIT, voltage_v=84.0, load_w=loads[1], fraction=0.9) == math.inf


# The default start, 0.1: a load that the resistor carries from 9.9 % up but not from less.
def test_the_load_starts_at_a_tenth_unless_told():
    case = CIRCUIT | {"voltage_v": 84.0, "fraction": 0.7}
    told = time_under_load_s(**case, load_w=6.0, load_starts_fraction=0.1)
    assert time_under_load_s(**case, load_w=6.0) == pytest.approx(told, rel=1e-12)


def test_a_load_that_starts_too_low_stalls_where_it_starts():
    # Worked: at 10 % the resistor gives 0.09 V^2 / R = 6.35 W, at 50 % 17.6 W; 8 W passes only the second.
    case = CIRCUIT | {"voltage_v": 84.0, "load_w": 8.0, "fraction": 0.7}
    assert time_under_load_s(**case, load_starts_fraction=0.1) == math.inf
    assert math.isfinite(time_under_load_s(**case, load_starts_fraction=0.5))


def test_a_load_starts_at_a_tenth_where_nothing_is_said():
    case = CIRCUIT | {"voltage_v": 84.0, "load_w": 3.0, "fraction": 0.9}
    assert time_under_load_s(**case) == time_under_load_s(**case, load_starts_fraction=0.1)


def test_discharge_from_below_takes_no_time():
    times = time_to_volts_s(resistance_ohm=1e4, capacitance_f=1e-3, start_v=np.array([0.0, 58.8, 60.0, 120.0]))
    assert list(times[:3]) == [0.0, 0.0, 0.0]
    assert times[3] > 0.0
