"""Volts between the motor leads of a three-phase drive."""

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_range


def line_rms_v(*, bus_v: Quantity) -> Answer:
    """Greatest sine voltage between two motor leads that a drive makes without over-modulation.

    V = bus / sqrt(2)

    bus_v    0 to 1500   highest bus voltage
    returns  V rms, fundamental only

    Raises RangeError outside that span.
    Leaves out switching: the leads jump between the bus rails, so the total rms is higher. Judge
    insulation by `greatest_line_rms_v`.
    Source: derived (space-vector modulation: the peak between lines is the bus voltage).
    """
    check_range("bus_v", bus_v, low=0.0, high=1500.0)
    return bus_v / np.sqrt(2.0)


def greatest_line_rms_v(*, bus_v: Quantity) -> Answer:
    """Greatest total rms voltage between two motor leads, all harmonics in: six-step drive.

    V = sqrt(2 / 3) * bus

    bus_v    0 to 1500   highest bus voltage, back-EMF included
    returns  V rms: what cable, connector and touch protection of the motor leads are judged by

    Raises RangeError outside that span.
    Leaves out spikes and reflections at the motor end of a long lead.
    Source: derived (a quasi-square wave that stands at the bus voltage for 120 degrees of each 180).
    """
    check_range("bus_v", bus_v, low=0.0, high=1500.0)
    return np.sqrt(2.0 / 3.0) * bus_v
