"""Charging a controller's capacitors through a resistor before the contactor closes."""

import numpy as np

from bom.physics.ranges import Answer, Quantity, check_range


def _check_circuit(*, resistance_ohm: Quantity, capacitance_f: Quantity) -> None:
    check_range("resistance_ohm", resistance_ohm, low=0.1, high=1e6)
    check_range("capacitance_f", capacitance_f, low=1e-7, high=0.5)


def stored_energy_j(*, capacitance_f: Quantity, voltage_v: Quantity) -> Answer:
    """Energy in a charged capacitor, which is also the heat that its precharge resistor takes.

    E = C * V^2 / 2

    capacitance_f  1e-7 to 0.5
    voltage_v      0 to 1000
    returns        J

    Raises RangeError outside those spans.
    Leaves out what a load draws through the resistor meanwhile.
    Source: circuit theory.
    """
    check_range("capacitance_f", capacitance_f, low=1e-7, high=0.5)
    check_range("voltage_v", voltage_v, low=0.0, high=1000.0)
    return capacitance_f * np.square(voltage_v) / 2


def worst_power_w(*, resistance_ohm: Quantity, voltage_v: Quantity) -> Answer:
    """Power in the resistor at the first moment, and for ever when the bus is shorted.

    P = V^2 / R

    resistance_ohm  0.1 to 1e6
    voltage_v       0 to 1000
    returns         W

    Raises RangeError outside those spans.
    Leaves out nothing that would raise it.
    Source: Ohm's law.
    """
    check_range("resistance_ohm", resistance_ohm, low=0.1, high=1e6)
    check_range("voltage_v", voltage_v, low=0.0, high=1000.0)
    return np.square(voltage_v) / resistance_ohm


def time_to_fraction_s(*, resistance_ohm: Quantity, capacitance_f: Quantity, fraction: Quantity) -> Answer:
    """Time for the bus to reach a fraction of pack volts with nothing else on it.

    t = -R * C * ln(1 - q)

    resistance_ohm  0.1 to 1e6
    capacitance_f   1e-7 to 0.5
    fraction        0 to 0.999
    returns         s

    Raises RangeError outside those spans.
    Leaves out any load on the bus: see `time_under_load_s`.
    Source: circuit theory.
    """
    _check_circuit(resistance_ohm=resistance_ohm, capacitance_f=capacitance_f)
    check_range("fraction", fraction, low=0.0, high=0.999)
    return -resistance_ohm * capacitance_f * np.log1p(-np.asarray(fraction))


def greatest_load_w(*, resistance_ohm: Quantity, voltage_v: Quantity, fraction: Quantity) -> Answer:
    """Constant-power load above which the bus never rises past a fraction of pack volts.

    P = q * (1 - q) * V^2 / R

    resistance_ohm  0.1 to 1e6
    voltage_v       0 to 1000
    fraction        0.5 to 0.999   below one half the bus would have to pass harder points on its way
    returns         W; below it the bus may arrive, though later than without a load

    Raises RangeError outside those spans.
    Leaves out where the load starts: see `time_under_load_s`.
    Source: derived (what the resistor passes at q, times the bus volts there).
    """
    check_range("fraction", fraction, low=0.5, high=0.999)
    return fraction * (1.0 - fraction) * worst_power_w(resistance_ohm=resistance_ohm, voltage_v=voltage_v)


def left_after_precharge_v(*, resistance_ohm: Quantity, voltage_v: Quantity, load_w: Quantity) -> Answer:
    """Bus volts at which a precharge ends for good while a constant-power load sits on the bus.

    (V + sqrt(V^2 - 4 * R * P)) / 2

    resistance_ohm  0.1 to 1e6
    voltage_v       0 to 1000   pack volts
    load_w          0 to 1e6
    returns         V; NaN where V^2 < 4 * R * P: the bus never settles, and nothing may be closed on it. Pack
                    volts less this is the step that the contactor still closes on.

    Raises RangeError outside those spans.
    Leaves out how long that takes, and whether the load lets the bus past its own start: see
    `time_under_load_s`.
    Source: derived (what the resistor passes equals what the load draws; the higher root is the stable one).
    """
    check_range("resistance_ohm", resistance_ohm, low=0.1, high=1e6)
    check_range("voltage_v", voltage_v, low=0.0, high=1000.0)
    check_range("load_w", load_w, low=0.0, high=1e6)
    under_root = np.square(voltage_v) - 4.0 * resistance_ohm * load_w
    settled = (voltage_v + np.sqrt(np.maximum(under_root, 0.0))) / 2.0
    return np.where(under_root < 0.0, np.nan, settled)[()]


def time_under_load_s(
    *,
    resistance_ohm: Quantity,
    capacitance_f: Quantity,
    voltage_v: Quantity,
    load_w: Quantity,
    fraction: Quantity,
    load_starts_fraction: Quantity = 0.1,
) -> Answer:
    """Time for the bus to reach a fraction of pack volts while a constant-power load sits on it.

    With u = bus volts / pack volts and p = P * R / V^2:  R * C * du/dt = 1 - u - p / u above the start of
    the load, 1 - u below. Integrated in closed form over the roots of u - u^2 = p.

    resistance_ohm        0.1 to 1e6
    capacitance_f         1e-7 to 0.5
    voltage_v             1 to 1000
    load_w                0 to 1e6
    fraction              0 to 0.999
    load_starts_fraction  0.01 to 1   bus volts, over pack volts, from which the load draws its power
    returns               s; inf when the bus stalls below the fraction

    Raises RangeError outside those spans.
    Leaves out loads that are not of constant power, and a converter that tries, fails and tries again.
    Source: derived. The default start is an assumption (a converter's lock-out is usually higher).
    """
    _check_circuit(resistance_ohm=resistance_ohm, capacitance_f=capacitance_f)
    check_range("voltage_v", voltage_v, low=1.0, high=1000.0)
    check_range("load_w", load_w, low=0.0, high=1e6)
    check_range("fraction", fraction, low=0.0, high=0.999)
    check_range("load_starts_fraction", load_starts_fraction, low=0.01, high=1.0)
    start = np.minimum(load_starts_fraction, fraction)
    share = load_w * resistance_ohm / np.square(voltage_v)
    time_constants = -np.log1p(-start) + _loaded_time_constants(start=start, end=fraction, share=share)
    return (resistance_ohm * capacitance_f * time_constants)[()]


def _loaded_time_constants(*, start: Quantity, end: Quantity, share: Quantity) -> Answer:
    """Rise from start to end under load, in units of RC; inf when the load takes all the resistor gives."""
    spread = np.sqrt(np.maximum(1.0 - 4.0 * share, 0.0))
    lower_root, upper_root = (1.0 - spread) / 2, (1.0 + spread) / 2
    rises = (spread > 0.0) & (start > lower_root) & (end < upper_root)
    with np.errstate(divide="ignore", invalid="ignore"):
        below = lower_root * np.log((end - lower_root) / (start - lower_root))
        above = upper_root * np.log((upper_root - end) / (upper_root - start))
        answer = np.where(rises, (below - above) / spread, np.inf)
    no_rise_asked = np.where(end <= start, 0.0, answer)
    return np.where(np.isnan(start + end + share), np.nan, no_rise_asked)
