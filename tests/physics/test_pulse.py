import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.errors import RangeError
from bom.physics.pulse import allowed_share, pulse_a2s, ramp_a2s

TIME = np.linspace(0.0, 1.0, 200_001)
WAVES = {
    "rectangle": np.ones_like(TIME),
    "half sine": np.sin(np.pi * TIME),
    "triangle": 1 - np.abs(2 * TIME - 1),
    "parabola": np.square(TIME),
}


def area(values, times):
    return float(np.sum((values[1:] + values[:-1]) / 2 * np.diff(times)))


# The chart's shares against the waves themselves, summed.
@pytest.mark.parametrize("shape", sorted(WAVES))
def test_each_shape_from_its_wave(shape):
    summed = area(np.square(40.0 * WAVES[shape]), TIME * 0.02)
    assert pulse_a2s(shape=shape, peak_a=40.0, time_s=0.02) == pytest.approx(summed, rel=1e-6)


def test_a_dying_pulse_from_its_wave():
    times = np.linspace(0.0, 0.4, 400_001)
    summed = area(np.square(40.0 * np.exp(-times / 0.02)), times)
    assert pulse_a2s(shape="exponential", peak_a=40.0, time_s=0.02) == pytest.approx(summed, rel=1e-5)


@given(start_a=st.floats(0.0, 1e4), end_a=st.floats(0.0, 1e4))
def test_a_ramp_lies_between_its_ends_and_runs_both_ways(start_a, end_a):
    answer = ramp_a2s(start_a=start_a, end_a=end_a, time_s=2.0)
    assert min(start_a, end_a) ** 2 * 2.0 * (1 - 1e-9) <= answer <= max(start_a, end_a) ** 2 * 2.0 * (1 + 1e-9)
    assert answer == pytest.approx(ramp_a2s(start_a=end_a, end_a=start_a, time_s=2.0))


def test_a_ramp_from_nothing_is_a_triangle_and_a_level_one_a_rectangle():
    for shape, start_a in (("triangle", 0.0), ("rectangle", 40.0)):
        ramp = ramp_a2s(start_a=start_a, end_a=40.0, time_s=0.02)
        assert ramp == pytest.approx(pulse_a2s(shape=shape, peak_a=40.0, time_s=0.02))


def test_more_pulses_never_allow_more():
    counts = np.array([1, 100, 101, 1000, 1001, 10_000, 10_001, 100_000], dtype=float)
    shares = allowed_share(pulses=counts)
    assert np.all(np.diff(shares) <= 0.0)
    assert shares.tolist() == [0.48, 0.48, 0.38, 0.38, 0.29, 0.29, 0.22, 0.22]


def test_a_shape_that_the_chart_lacks():
    with pytest.raises(RangeError, match="shape = sawtooth: this chart takes rectangle, half sine"):
        pulse_a2s(shape="sawtooth", peak_a=1.0, time_s=1.0)
