"""Voltage class, and isolation between the traction circuit and the frame."""

from typing import Any

import numpy as np

from bom.errors import RangeError
from bom.physics.ranges import Answer, Quantity, check_order, check_range

LOW_VOLTAGE_LIMIT_V = 60.0
COMBINED_BUS_OHM_PER_V = 500.0
DC_BUS_OHM_PER_V = 100.0


def is_above_low_voltage(*, voltage_v: Quantity) -> Any:
    """Whether a DC circuit is a high-voltage bus: strictly above 60.0 V.

    voltage_v  0 to 1500   the highest the bus can reach, not the nominal name
    returns    bool; an array of bool for an array

    Raises RangeError outside that span, and for NaN: an unknown voltage has no class.
    Leaves out AC parts of the circuit, whose own limit is 30 V rms: see `phase`.
    Source: UN R136 paragraph 2 ("high voltage"), from memory.
    """
    check_range("voltage_v", voltage_v, low=0.0, high=1500.0)
    if np.any(np.isnan(voltage_v)):
        raise RangeError("voltage_v = nan: an unknown voltage has no class")
    return voltage_v > LOW_VOLTAGE_LIMIT_V


def floor_ohm(*, working_voltage_v: Quantity, combined_bus: bool = True) -> Answer:
    """Least isolation resistance between a high-voltage bus and the frame.

    500 ohm/V with the motor drive joined to the bus, 100 ohm/V for DC alone

    working_voltage_v  0 to 1500
    combined_bus       False only for a DC bus alone, or where double insulation or a robust housing is
                       declared for every AC part
    returns            ohm

    Raises RangeError outside that span.
    Leaves out circuits at or below 60 V, for which no floor is printed (measure them all the same).
    Source: UN R136 5.1.3.1 and 5.1.3.2, read second-hand on a public page.
    """
    check_range("working_voltage_v", working_voltage_v, low=0.0, high=1500.0)
    return working_voltage_v * (COMBINED_BUS_OHM_PER_V if combined_bus else DC_BUS_OHM_PER_V)


def measured_ohm(
    *,
    known_resistance_ohm: Quantity,
    pack_v: Quantity,
    larger_v: Quantity,
    larger_with_resistor_v: Quantity,
) -> Answer:
    """Isolation resistance from two voltage readings.

    Ri = R0 * (Vb / V1' - Vb / V1)

    known_resistance_ohm    1000 to 1e7   R0, joined between the pole that reads larger_v and the frame
    pack_v                  1 to 1500     Vb, across the pack
    larger_v                0.1 to 1500   V1, the larger of the two readings from a pole to the frame; no
                                          more than pack_v
    larger_with_resistor_v  0.1 to 1500   V1', the same reading with R0 in place; no more than larger_v
    returns                 ohm: the resistance of the *other* pole, which is the lower one

    Raises RangeError outside those spans.
    Leaves out the meter's own resistance, which reads low and so is safe.
    Source: UN R136 Annex (isolation measured from the vehicle's own supply), from memory.
    """
    check_range("known_resistance_ohm", known_resistance_ohm, low=1e3, high=1e7)
    check_range("pack_v", pack_v, low=1.0, high=1500.0)
    check_range("larger_v", larger_v, low=0.1, high=1500.0)
    check_range("larger_with_resistor_v", larger_with_resistor_v, low=0.1, high=1500.0)
    check_order("larger_v", larger_v, "pack_v", pack_v)
    check_order("larger_with_resistor_v", larger_with_resistor_v, "larger_v", larger_v)
    return known_resistance_ohm * (pack_v / larger_with_resistor_v - pack_v / larger_v)
