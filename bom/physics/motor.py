"""The motor's side: back-EMF, what it feeds into a short, and amps of its leads."""

from collections.abc import Sequence

import numpy as np

from bom.errors import RangeError
from bom.physics.phase import greatest_line_rms_v
from bom.physics.ranges import Answer, Quantity, check_order, check_range


def line_peak_v(*, full_speed_line_peak_v: Quantity, speed_fraction: Quantity) -> Answer:
    """Back-EMF between two leads of a turning magnet motor, peak.

    V = full-speed peak * speed fraction

    full_speed_line_peak_v  0 to 1000
    speed_fraction          0 to 2      above 1 downhill, or with the field weakened
    returns                 V peak; the drive's diodes lift the bus to it

    Raises RangeError outside those spans.
    Leaves out magnets that are hot (a few percent less) and their spread from motor to motor.
    Source: Faraday's law (in proportion to speed).
    """
    check_range("full_speed_line_peak_v", full_speed_line_peak_v, low=0.0, high=1000.0)
    check_range("speed_fraction", speed_fraction, low=0.0, high=2.0)
    return full_speed_line_peak_v * speed_fraction


def shorted_bus_a(
    *,
    line_peak_v: Quantity,
    between_leads_ohm: Quantity,
    lead_ohm: Quantity = 0.0,
    phase_inductance_h: Quantity = 0.0,
    electrical_hz: Quantity = 0.0,
) -> Answer:
    """Amps that a turning magnet motor feeds into a shorted bus through the drive's diodes, peak, steady.

    I = (V / sqrt(3)) / sqrt(r^2 + (2 * pi * f * L)^2)  with r = between_leads / 2 + lead. The short joins all
    three leads, so the peak is that of one phase. At speed it nears flux / L, whatever the speed.

    line_peak_v         0 to 1000     back-EMF between two leads at this speed
    between_leads_ohm   1e-4 to 100   as an ohm-meter reads between two motor leads: two windings
    lead_ohm            0 to 1        one lead
    phase_inductance_h  0 to 0.1      of one winding; 0 where not known, which is the upper bound
    electrical_hz       0 to 5000     turns a second x pole pairs
    returns             A

    Raises RangeError outside those spans.
    Leaves out the first turn, when an inductive short may reach twice as much, the diodes' volts, and the
    short's own ohms.
    Source: circuit theory (symmetrical three-phase short circuit).
    """
    check_range("line_peak_v", line_peak_v, low=0.0, high=1000.0)
    check_range("between_leads_ohm", between_leads_ohm, low=1e-4, high=100.0)
    check_range("lead_ohm", lead_ohm, low=0.0, high=1.0)
    check_range("phase_inductance_h", phase_inductance_h, low=0.0, high=0.1)
    check_range("electrical_hz", electrical_hz, low=0.0, high=5000.0)
    reactance_ohm = 2.0 * np.pi * electrical_hz * phase_inductance_h
    return line_peak_v / np.sqrt(3.0) / np.hypot(between_leads_ohm / 2.0 + lead_ohm, reactance_ohm)


def ride_rms_a(*, segments: Sequence[tuple[float, float]]) -> float:
    """Steady amps that heat a wire as a ride does.

    sqrt(sum(I^2 * t) / sum(t))

    segments  (amps, seconds): amps -2000 to 2000 (braking counts as driving does), seconds 0 to 1e6
    returns   A; NaN where a segment is not known

    Raises RangeError outside those spans, and where the segments last no time.
    Leaves out heat that a wire keeps: sound only where the ride repeats faster than the wire warms.
    Source: Joule's law.
    """
    amps, seconds = np.array(segments, dtype=float).reshape(-1, 2).T
    check_range("amps", amps, low=-2000.0, high=2000.0)
    check_range("seconds", seconds, low=0.0, high=1e6)
    total_s = float(np.sum(seconds))
    if total_s == 0.0:
        raise RangeError("segments: they last 0 s in all; a ride takes time")
    return float(np.sqrt(np.sum(np.square(amps) * seconds) / total_s))


def _power_ratio(bus_v: Quantity, line_v: Quantity, power_factor: Quantity, efficiency: Quantity) -> Answer:
    """Battery amps for one amp rms in a motor lead, while driving."""
    check_range("bus_v", bus_v, low=1.0, high=1000.0)
    check_range("line_v", line_v, low=0.1, high=1000.0)
    check_range("power_factor", power_factor, low=0.05, high=1.0)
    check_range("efficiency", efficiency, low=0.3, high=1.0)
    check_order("line_v", line_v, "what bus_v can make", greatest_line_rms_v(bus_v=bus_v))
    return np.sqrt(3.0) * line_v * power_factor / (bus_v * efficiency)


def battery_a(
    *, phase_a: Quantity, bus_v: Quantity, line_v: Quantity, power_factor: Quantity = 1.0, efficiency: Quantity = 1.0
) -> Answer:
    """Battery amps behind the amps in each motor lead, by power.

    I = sqrt(3) * line * phase * power factor / (bus * efficiency)

    phase_a       0 to 2000   rms
    bus_v         1 to 1000
    line_v        0.1 to 1000   rms between leads; no more than the bus can make
    power_factor  0.05 to 1
    efficiency    0.3 to 1    of the drive
    returns       A; at low speed far fewer than in the leads

    Raises RangeError outside those spans.
    Leaves out braking, where the loss stands on the other side.
    Source: three-phase power, P = sqrt(3) * V * I * power factor.
    """
    check_range("phase_a", phase_a, low=0.0, high=2000.0)
    return phase_a * _power_ratio(bus_v, line_v, power_factor, efficiency)


def phase_a(
    *, battery_a: Quantity, bus_v: Quantity, line_v: Quantity, power_factor: Quantity = 1.0, efficiency: Quantity = 1.0
) -> Answer:
    """Amps in each motor lead that a battery current stands for, by power: the converse of `battery_a`.

    battery_a     0 to 2000
    bus_v         1 to 1000
    line_v        0.1 to 1000   rms between leads; no more than the bus can make
    power_factor  0.05 to 1
    efficiency    0.3 to 1    of the drive
    returns       A rms; a drive limits it at low speed, where this alone would give too many

    Raises RangeError outside those spans.
    Leaves out braking.
    Source: as `battery_a`.
    """
    check_range("battery_a", battery_a, low=0.0, high=2000.0)
    return battery_a / _power_ratio(bus_v, line_v, power_factor, efficiency)
