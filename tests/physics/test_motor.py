import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.errors import RangeError
from bom.physics.motor import battery_a, line_peak_v, phase_a, ride_rms_a, shorted_bus_a

ANGLE = np.linspace(0.0, 2 * np.pi, 36_000, endpoint=False)


# Derived: with the bus shorted all three leads stand at one potential, so each phase drives its own amps, and
# the bus carries those that flow out of the motor. Their greatest sum is one phase's peak.
def test_bus_amps_from_three_phases():
    phases = [100.0 * np.sin(ANGLE - shift) for shift in (0.0, 2 * np.pi / 3, 4 * np.pi / 3)]
    bus_a = sum(np.maximum(wave, 0.0) for wave in phases)
    line_v = 0.05 * (phases[0] - phases[1])  # 0.05 ohm a phase, no inductance
    answer = shorted_bus_a(line_peak_v=float(line_v.max()), between_leads_ohm=0.08, lead_ohm=0.01)
    assert answer == pytest.approx(bus_a.max(), rel=1e-6)
    assert bus_a.min() == pytest.approx(answer * math.sqrt(3) / 2, rel=1e-6)


# Derived: at speed the amps near flux over inductance: 0.02 Wb a phase over 0.1 mH is 200 A, at any speed.
def test_at_speed_the_short_nears_flux_over_inductance():
    for hertz in (500.0, 1000.0, 2000.0):
        line_v = math.sqrt(3) * 2 * math.pi * hertz * 0.02
        case = {"line_peak_v": line_v, "between_leads_ohm": 0.02, "electrical_hz": hertz}
        assert shorted_bus_a(**case, phase_inductance_h=1e-4) == pytest.approx(200.0, rel=1e-3)
        assert shorted_bus_a(**case, phase_inductance_h=1e-4) < shorted_bus_a(**case)


@given(speed=st.floats(0.01, 2.0), inductance_h=st.floats(0.0, 1e-3))
def test_more_speed_never_feeds_a_short_less(speed, inductance_h):
    def short_a(fraction):
        volts_v = line_peak_v(full_speed_line_peak_v=84.0, speed_fraction=fraction)
        hertz = 400.0 * fraction
        return shorted_bus_a(
            line_peak_v=volts_v, between_leads_ohm=0.02, phase_inductance_h=inductance_h, electrical_hz=hertz
        )

    assert short_a(speed) >= short_a(speed / 2) * (1 - 1e-12)


def test_a_steady_ride_is_its_own_mean():
    assert ride_rms_a(segments=[(150.0, 10.0), (150.0, 500.0)]) == pytest.approx(150.0)
    assert ride_rms_a(segments=[(-150.0, 10.0), (150.0, 10.0)]) == pytest.approx(150.0)
    assert ride_rms_a(segments=[(2000.0, 1e6), (-2000.0, 0.0)]) == pytest.approx(2000.0)


@given(st.lists(st.tuples(st.floats(0.0, 500.0), st.floats(1.0, 1000.0)), min_size=1, max_size=6))
def test_ride_lies_between_mean_and_peak(segments):
    amps, seconds = np.array(segments).T
    answer = ride_rms_a(segments=segments)
    assert np.average(amps, weights=seconds) - 1e-6 <= answer <= amps.max() + 1e-6


def test_an_unknown_segment_leaves_the_ride_unknown():
    assert math.isnan(ride_rms_a(segments=[(100.0, 10.0), (math.nan, 5.0)]))
    assert math.isnan(ride_rms_a(segments=[(100.0, 10.0), (50.0, math.nan)]))


@pytest.mark.parametrize(
    ("segments", "fault"),
    [
        ([(2000.1, 1.0)], "amps = 2000.1: the most"),
        ([(-2000.1, 1.0)], "amps = -2000.1: the least"),
        ([(1.0, 1000001.0)], "seconds = 1e\\+06: the most"),
        ([(1.0, -1e-9)], "seconds = -1e-09: the least"),
        ([(1.0, 0.0)], "last 0 s"),
        ([], "last 0 s"),
    ],
)
def test_rides_that_cannot_be_read(segments, fault):
    with pytest.raises(RangeError, match=fault):
        ride_rms_a(segments=segments)


@given(amps=st.floats(1.0, 500.0), line_v=st.floats(1.0, 59.0), factor=st.floats(0.1, 1.0), share=st.floats(0.5, 1.0))
def test_battery_and_phase_amps_are_each_others_converse(amps, line_v, factor, share):
    drive = {"bus_v": 84.0, "line_v": line_v, "power_factor": factor, "efficiency": share}
    phases = phase_a(battery_a=amps, **drive)
    if phases <= 2000.0:
        assert battery_a(phase_a=phases, **drive) == pytest.approx(amps)


def test_no_more_volts_than_the_bus_makes():
    assert battery_a(phase_a=100.0, bus_v=100.0, line_v=81.64) > 0.0
    for formula in (lambda **drive: battery_a(phase_a=100.0, **drive), lambda **drive: phase_a(battery_a=9.0, **drive)):
        with pytest.raises(RangeError, match=r"line_v = 81.7 is above what bus_v can make = 81.6497"):
            formula(bus_v=100.0, line_v=81.7)
