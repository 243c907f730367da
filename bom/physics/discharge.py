"""Time for a controller's capacitors to fall to safe volts after the contactor opens."""

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_range


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
