"""Why a contact lets go of amps or does not. This explains; it grants no rating.

Printed DC ratings of real switches and relays lie 1.3 to 2.6 times below what `put_out_a` gives. Only a
part's own printed points say what it may break: see `breaking`.
"""

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_order, check_range

# Silver contacts, arc V = a + b L + (c + d L) / I, gap L in mm.
_FALL_V = 14.19
_FALL_V_PER_MM = 3.64
_POWER_W = 11.36
_POWER_W_PER_MM = 19.01

_LONG_ARC_V = 20.0
_LONG_ARC_V_PER_MM = 0.534
_LONG_ARC_EXPONENT = 0.12
_TRANSITION_A = 10.0
_TRANSITION_A_PER_MM = 0.2


def silver_arc_v(*, current_a: Quantity, gap_mm: Quantity) -> Answer:
    """Volts across a short, steady arc between silver contacts.

    V = a + b * L + (c + d * L) / I  with a = 14.19 V, b = 3.64 V/mm, c = 11.36 W, d = 19.01 W/mm

    current_a  0.4 to 20   below the least no steady arc stands
    gap_mm     0 to 10     L
    returns    V

    Raises RangeError outside those spans.
    Leaves out blow-out magnets, gas fillings, moving contacts and the bounce at closing.
    Source: the form of Ayrton 1902, silver by Guye and Zebrikoff 1907, from memory.
    """
    check_range("current_a", current_a, low=0.4, high=20.0)
    check_range("gap_mm", gap_mm, low=0.0, high=10.0)
    return _FALL_V + _FALL_V_PER_MM * gap_mm + (_POWER_W + _POWER_W_PER_MM * gap_mm) / current_a


def put_out_a(*, voltage_v: Quantity, gap_mm: Quantity, gaps: Quantity = 1.0) -> Answer:
    """Greatest resistive amps at which silver contacts put an arc out. It grants no rating.

    I = 4 E n (c + d L) / (E - n (a + b L))^2: no line of a resistive load then meets the arc's own curve

    voltage_v  1 to 300   E, the circuit's volts with the contacts open
    gap_mm     0 to 10    L, one gap when fully open
    gaps       1 to 4     n, contacts in series that open together
    returns    A; inf where the arc's falls alone hold the volts, so that no steady arc stands

    Raises RangeError outside those spans.
    Leaves out inductance, wear, heat, blow-out and every margin: printed ratings lie 1.3 to 2.6 times below.
    Source: derived from `silver_arc_v`.
    """
    check_range("voltage_v", voltage_v, low=1.0, high=300.0)
    check_range("gap_mm", gap_mm, low=0.0, high=10.0)
    check_range("gaps", gaps, low=1.0, high=4.0)
    spare_v = np.asarray(voltage_v - gaps * (_FALL_V + _FALL_V_PER_MM * gap_mm))
    power_w = gaps * (_POWER_W + _POWER_W_PER_MM * gap_mm)
    with np.errstate(divide="ignore", invalid="ignore"):
        steady = 4.0 * voltage_v * power_w / np.square(spare_v)
    return np.where(spare_v <= 0.0, np.inf, steady)[()]


def long_arc_v(*, current_a: Quantity, gap_mm: Quantity) -> Answer:
    """Volts across a long free-burning arc in air, as between two bars that a tool has bridged.

    V = (20 + 0.534 * G) * I ^ 0.12

    current_a  10 to 20000   and at least 10 + 0.2 * G, below which the volts rise as amps fall
    gap_mm     5 to 500      G
    returns    V

    Raises RangeError outside those spans.
    Leaves out walls, magnets and the arc's growth as it bows out.
    Source: Stokes and Oppenlander 1991 as quoted in arc-flash literature, read second-hand on a public page;
    spans and transition amps from memory.
    """
    check_range("current_a", current_a, low=10.0, high=20000.0)
    check_range("gap_mm", gap_mm, low=5.0, high=500.0)
    check_order("transition amps", _TRANSITION_A + _TRANSITION_A_PER_MM * gap_mm, "current_a", current_a)
    return (_LONG_ARC_V + _LONG_ARC_V_PER_MM * gap_mm) * np.power(current_a, _LONG_ARC_EXPONENT)
