"""What rushes in at closing: into capacitors, cold filaments and coils."""

from typing import NamedTuple

import numpy as np

from bom.physics.precharge import stored_energy_j
from bom.physics.ranges import Answer, Quantity, check_range, known_only

_SETTLED_SHARE = 0.1


class CapacitorRush(NamedTuple):
    """Amps at the peak, s to the peak, s in which its slowest part falls to 1/e, J in the resistance."""

    peak_a: Answer
    peak_s: Answer
    time_constant_s: Answer
    heat_j: Answer


class FilamentRush(NamedTuple):
    """Amps at the peak, s until within a tenth of running, A2s and J taken until then."""

    peak_a: Answer
    settled_s: Answer
    let_through_a2s: Answer
    energy_j: Answer


class CoilPull(NamedTuple):
    """Time until the pull-in amps, and J that the coil then stores."""

    time_s: Answer
    energy_j: Answer


def capacitor_rush(
    *, voltage_v: Quantity, resistance_ohm: Quantity, capacitance_f: Quantity, inductance_h: Quantity = 0.0
) -> CapacitorRush:
    """Rush into empty capacitors when a pack is joined to them without precharge.

    With w = 1 / sqrt(L C) and z = R / 2 * sqrt(C / L): peak = V * sqrt(C / L) * exp(-z * w * t) at
    w * t = arccos(z) / sqrt(1 - z^2), or arccosh(z) / sqrt(z^2 - 1) where z > 1. Without L: V / R at once.

    voltage_v       0 to 1000      pack volts less bus volts
    resistance_ohm  1e-4 to 1e6    pack, wires and capacitors together
    capacitance_f   1e-7 to 0.5
    inductance_h    0 to 0.01      of the loop; about 1 uH a metre of pair
    returns         (peak_a, peak_s, time_constant_s, heat_j); time_constant_s is R * C without inductance and
                    2 * L / R where it rings

    Raises RangeError outside those spans.
    Leaves out the pack's own slow volts, contact bounce, and a contactor that welds at the first touch.
    Source: circuit theory (series R, L and C on a step of volts).
    """
    check_range("resistance_ohm", resistance_ohm, low=1e-4, high=1e6)
    check_range("inductance_h", inductance_h, low=0.0, high=0.01)
    heat_j = stored_energy_j(capacitance_f=capacitance_f, voltage_v=voltage_v)
    given = (voltage_v, resistance_ohm, capacitance_f, inductance_h)
    volts, ohms, farads, henries = np.broadcast_arrays(*(np.asarray(value, dtype=float) for value in given))
    with np.errstate(divide="ignore", invalid="ignore"):
        period_s = np.sqrt(henries * farads)
        damping = ohms / 2.0 * np.sqrt(farads / henries)
        angle = _peak_angle(damping)
        peak_a = volts * np.sqrt(farads / henries) * np.exp(-damping * angle)
        slowest_s = period_s * np.where(damping >= 1.0, damping + np.sqrt(np.square(damping) - 1.0), 1.0 / damping)
    stiff = henries == 0.0
    return CapacitorRush(
        known_only(np.where(stiff, volts / ohms, peak_a), *given),
        known_only(np.where(stiff, 0.0, period_s * angle), *given),
        known_only(np.where(stiff, ohms * farads, slowest_s), *given),
        known_only(heat_j, *given),
    )


def _peak_angle(damping: Answer) -> Answer:
    """Angle w * t of the peak; both forms are one when taken as complex numbers, with 1 as their limit."""
    ratio = np.arccos(damping + 0j) / np.sqrt(1.0 - np.square(damping) + 0j)
    return np.where(damping == 1.0, 1.0, np.abs(ratio))


def filament_rush(
    *, voltage_v: Quantity, running_a: Quantity, cold_multiple: Quantity, time_constant_s: Quantity
) -> FilamentRush:
    """Rush into a cold filament from a source that holds its volts.

    i = I * (1 + (m - 1) * exp(-t / T)); settled when i = 1.1 * I

    voltage_v        0 to 40
    running_a        0 to 100      I
    cold_multiple    1 to 20       m, usually 10
    time_constant_s  1e-4 to 0.1   T, 1 to 10 ms for vehicle lamps
    returns          (peak_a, settled_s, let_through_a2s, energy_j), the last two from closing until settled

    Raises RangeError outside those spans.
    Leaves out wire and source resistance, which lower the peak and stretch the time.
    Source: derived from the form; multiple and time from lamp and relay practice, from memory.
    """
    check_range("voltage_v", voltage_v, low=0.0, high=40.0)
    check_range("running_a", running_a, low=0.0, high=100.0)
    check_range("cold_multiple", cold_multiple, low=1.0, high=20.0)
    check_range("time_constant_s", time_constant_s, low=1e-4, high=0.1)
    given = (voltage_v, running_a, cold_multiple, time_constant_s)
    excess = np.asarray(cold_multiple) - 1.0
    with np.errstate(divide="ignore"):
        constants = np.maximum(np.log(excess / _SETTLED_SHARE), 0.0)
    gone = -np.expm1(-constants)
    gone_twice = -np.expm1(-2.0 * constants)
    mean_square = constants + 2.0 * excess * gone + np.square(excess) * gone_twice / 2.0
    return FilamentRush(
        known_only(running_a * cold_multiple, *given),
        known_only(time_constant_s * constants, *given),
        known_only(np.square(running_a) * time_constant_s * mean_square, *given),
        known_only(voltage_v * running_a * time_constant_s * (constants + excess * gone), *given),
    )


def limited_rush_s(
    *,
    voltage_v: Quantity,
    running_a: Quantity,
    cold_multiple: Quantity,
    time_constant_s: Quantity,
    limit_a: Quantity,
    reached_v: Quantity,
) -> Answer:
    """Time until a cold filament fed by a steady current has warmed to some volts.

    1 + (m - 1) * u = (I_limit / I) * (V / V_reached)
    t = T * (I / I_limit)^2 * (ln(1 / u) + 2 * (m - 1) * (1 - u) + (m - 1)^2 * (1 - u^2) / 2)

    voltage_v        0.1 to 40     V, at which it runs at running_a
    running_a        0.01 to 100   I
    cold_multiple    1 to 20       m, usually 10
    time_constant_s  1e-4 to 0.1   T, 1 to 10 ms for vehicle lamps
    limit_a          0.001 to 1000 I_limit, what is left of the supply's limit for this filament
    reached_v        0.1 to 40     V_reached
    returns          s; 0 where it stands there cold, inf where the current never brings it there

    Raises RangeError outside those spans.
    Leaves out what the filament loses meanwhile; the time is an estimate.
    Source: derived from the form of filament_rush, its warming taken in proportion to the power it gets.
    """
    check_range("voltage_v", voltage_v, low=0.1, high=40.0)
    check_range("running_a", running_a, low=0.01, high=100.0)
    check_range("cold_multiple", cold_multiple, low=1.0, high=20.0)
    check_range("time_constant_s", time_constant_s, low=1e-4, high=0.1)
    check_range("limit_a", limit_a, low=0.001, high=1000.0)
    check_range("reached_v", reached_v, low=0.1, high=40.0)
    given = (voltage_v, running_a, cold_multiple, time_constant_s, limit_a, reached_v)
    excess, share = np.asarray(cold_multiple) - 1.0, np.asarray(limit_a) / running_a
    warmth = share * voltage_v / np.asarray(reached_v) - 1.0  # (m - 1) * u
    with np.errstate(divide="ignore", invalid="ignore"):
        left = np.clip(warmth / excess, 0.0, 1.0)  # numerics: outside it another answer stands below
        constants = -np.log(left) + 2.0 * excess * (1.0 - left) + np.square(excess) * (1.0 - np.square(left)) / 2.0
    time_s = np.where(warmth >= excess, 0.0, np.where(warmth <= 0.0, np.inf, constants * time_constant_s / share**2))
    return known_only(time_s, *given)


def coil_pull(
    *, voltage_v: Quantity, resistance_ohm: Quantity, inductance_h: Quantity, pull_in_a: Quantity
) -> CoilPull:
    """How long a coil takes to reach its pull-in amps, and what it stores there.

    t = -(L / R) * ln(1 - I * R / V);  E = L * I^2 / 2

    voltage_v       0.1 to 1000    at the coil, the source's sag taken off
    resistance_ohm  0.1 to 1e5     hot
    inductance_h    1e-6 to 100    armature open
    pull_in_a       0 to 100       I
    returns         (time_s, energy_j); time is inf where V / R does not pass I, and energy that of V / R

    Raises RangeError outside those spans.
    Leaves out the armature's flight and its rising inductance, which both add time.
    Source: circuit theory.
    """
    check_range("voltage_v", voltage_v, low=0.1, high=1000.0)
    check_range("resistance_ohm", resistance_ohm, low=0.1, high=1e5)
    check_range("inductance_h", inductance_h, low=1e-6, high=100.0)
    check_range("pull_in_a", pull_in_a, low=0.0, high=100.0)
    given = (voltage_v, resistance_ohm, inductance_h, pull_in_a)
    share = np.minimum(pull_in_a * np.asarray(resistance_ohm) / voltage_v, 1.0)
    with np.errstate(divide="ignore"):
        time_s = -inductance_h / resistance_ohm * np.log1p(-share)
    reached_a = np.minimum(pull_in_a, voltage_v / np.asarray(resistance_ohm))
    return CoilPull(known_only(time_s, *given), known_only(inductance_h * np.square(reached_a) / 2.0, *given))
