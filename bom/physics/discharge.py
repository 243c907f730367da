"""Time for a controller's capacitors to fall to safe volts after the contactor opens."""

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_range, known_only


def time_to_volts_s(
    *, resistance_ohm: Quantity, capacitance_f: Quantity, start_v: Quantity, end_v: Quantity = 60.0
) -> Answer:
    """Time for a capacitor to fall through a bleed resistor.

    t = R * C * ln(start / end)

    resistance_ohm  0.1 to 1e7
    capacitance_f   1e-7 to 0.5
    start_v         0 to 1000
    end_v           1 to 1000
    returns         s; 0 when it starts at or below end_v

    Raises RangeError outside those spans.
    Leaves out other drains (which help) and a turning motor that feeds the bus (which does not).
    Source: circuit theory; 60 V is the limit of UN R136, from memory.
    """
    check_range("resistance_ohm", resistance_ohm, low=0.1, high=1e7)
    check_range("capacitance_f", capacitance_f, low=1e-7, high=0.5)
    check_range("start_v", start_v, low=0.0, high=1000.0)
    check_range("end_v", end_v, low=1.0, high=1000.0)
    return resistance_ohm * capacitance_f * np.log(np.maximum(start_v / np.asarray(end_v), 1.0))


def harmless_capacitance_f(*, voltage_v: Quantity, energy_j: Quantity = 0.2) -> Answer:
    """Greatest capacitor that holds no more than a harmless charge.

    C = 2 * E / V^2

    voltage_v  1 to 1000
    energy_j   0.001 to 10
    returns    F

    Raises RangeError outside those spans.
    Leaves out the pull of the hand and a fall, which even a harmless charge may cause.
    Source: ISO 6469-4:2015 5.2.3 (below 0.2 J), read second-hand on a public page; older rules said 2 J.
    """
    check_range("voltage_v", voltage_v, low=1.0, high=1000.0)
    check_range("energy_j", energy_j, low=0.001, high=10.0)
    return 2.0 * energy_j / np.square(voltage_v)


def wait_s(
    *,
    resistance_ohm: Quantity,
    capacitance_f: Quantity,
    start_v: Quantity,
    motor_line_peak_v: Quantity,
    end_v: Quantity = 60.0,
) -> Answer:
    """Time to wait before the bus is touched, with a motor that may still turn.

    R * C * ln(start / end), and for ever while the turning motor's peak between leads is above end: the
    drive's diodes then keep the bus there

    resistance_ohm     0.1 to 1e7
    capacitance_f      1e-7 to 0.5
    start_v            0 to 1000
    motor_line_peak_v  0 to 1000   at the speed it keeps turning; 0 for a motor without magnets
    end_v              1 to 1000
    returns            s; inf while the motor holds the bus above end_v

    Raises RangeError outside those spans.
    Leaves out the volts lost in the diodes, and a drive that shorts the motor on purpose.
    Source: circuit theory (a six-diode bridge charges to the peak between leads).
    """
    check_range("motor_line_peak_v", motor_line_peak_v, low=0.0, high=1000.0)
    still_s = time_to_volts_s(resistance_ohm=resistance_ohm, capacitance_f=capacitance_f, start_v=start_v, end_v=end_v)
    held = np.where(np.asarray(motor_line_peak_v) > end_v, np.inf, still_s)
    return known_only(held, resistance_ohm, capacitance_f, start_v, motor_line_peak_v, end_v)


def safe_speed_fraction(*, full_speed_line_peak_v: Quantity, end_v: Quantity = 60.0) -> Answer:
    """Share of full speed at or below which a magnet motor cannot hold the bus above a limit.

    end / full-speed line peak, at most 1

    full_speed_line_peak_v  1 to 1000   back-EMF between two leads, peak, at full speed
    end_v                   1 to 1000
    returns                 ratio of full speed

    Raises RangeError outside those spans.
    Leaves out field weakening: a drive that weakens the field turns the motor faster than full speed here.
    Source: derived (back-EMF is in proportion to speed).
    """
    check_range("full_speed_line_peak_v", full_speed_line_peak_v, low=1.0, high=1000.0)
    check_range("end_v", end_v, low=1.0, high=1000.0)
    return np.minimum(end_v / full_speed_line_peak_v, 1.0)
