import numpy as np
import pytest

from bom.physics.phase import greatest_line_rms_v, line_rms_v

ANGLE = np.linspace(0.0, 2 * np.pi, 60_000, endpoint=False)


# Derived: each lead of a six-step drive stands at the upper rail for half a turn, 120 degrees apart.
def test_six_step_rms_from_its_wave():
    first, second = (np.mod(ANGLE - shift, 2 * np.pi) < np.pi for shift in (0.0, 2 * np.pi / 3))
    line_v = 60.0 * (first.astype(float) - second.astype(float))
    assert greatest_line_rms_v(bus_v=60.0) == pytest.approx(np.sqrt(np.mean(line_v**2)), rel=1e-3)


# Derived: a sine between two leads whose peak is the bus voltage.
def test_sine_rms_from_its_wave():
    assert line_rms_v(bus_v=60.0) == pytest.approx(np.sqrt(np.mean((60.0 * np.sin(ANGLE)) ** 2)))


def test_all_harmonics_are_more_than_the_sine():
    assert greatest_line_rms_v(bus_v=84.0) > line_rms_v(bus_v=84.0)
