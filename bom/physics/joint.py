"""Volts, heat and the hottest spot of a joint: crimp, terminal, plug contact, blade fuse."""

import numpy as np

from bom.errors import RangeError
from bom.physics.air import ZERO_C_IN_KELVIN
from bom.physics.joint_limits import BLADE_FUSE_DROP_V, JOINT_LIMITS
from bom.physics.ranges import Answer, Quantity, check_range

LORENZ_V2_PER_K2 = 2.44e-8


def joint_drop_v(*, current_a: Quantity, resistance_ohm: Quantity) -> Answer:
    """Volts lost in a joint.

    V = I * R

    current_a       0 to 100 000   rms or DC
    resistance_ohm  0 to 1
    returns         V

    Raises RangeError outside those spans.
    Leaves out that a joint which heats and oxidises climbs from any first figure.
    Source: Ohm's law.
    """
    check_range("current_a", current_a, low=0.0, high=100_000.0)
    check_range("resistance_ohm", resistance_ohm, low=0.0, high=1.0)
    return current_a * resistance_ohm


def joint_heat_w(*, current_a: Quantity, resistance_ohm: Quantity) -> Answer:
    """Heat made in a joint.

    P = I^2 * R

    current_a       0 to 100 000   rms or DC
    resistance_ohm  0 to 1
    returns         W; how many kelvin that makes depends on the part, and no standard gives it in general

    Raises RangeError outside those spans.
    Leaves out where the heat goes.
    Source: Joule's law.
    """
    return current_a * joint_drop_v(current_a=current_a, resistance_ohm=resistance_ohm)


def contact_spot_c(*, drop_v: Quantity, body_c: Quantity) -> Answer:
    """Temperature of the hottest spot inside a contact, where the metals touch.

    Ts = sqrt(Tb^2 + V^2 / (4 * 2.44e-8)), in kelvin

    drop_v   0 to 0.5    volts across the contact itself, without wire and barrel
    body_c   -40 to 250  the metal about the contact
    returns  C; tin melts at 232, copper softens from about 190 and melts at 1083

    Raises RangeError outside those spans.
    Leaves out oxide and other films, and the body's own rise over the air.
    Source: voltage-temperature relation of contacts (Kohlrausch, as in Holm, Electric Contacts, 4th edition
    1967), with the theoretical Lorenz number; from memory.
    """
    check_range("drop_v", drop_v, low=0.0, high=0.5)
    check_range("body_c", body_c, low=-40.0, high=250.0)
    body_k = body_c + ZERO_C_IN_KELVIN
    return np.sqrt(np.square(body_k) + np.square(drop_v) / (4.0 * LORENZ_V2_PER_K2)) - ZERO_C_IN_KELVIN


def greatest_joint_ohm(*, kind: str, area_mm2: Quantity) -> Answer:
    """Greatest resistance that a sound joint of a kind may have when new.

    Test limit over test current, of the next smaller listed wire

    kind      "terminal block" or "plug contact"
    area_mm2  0.2 to 240   wire, nominal; from 0.33 for a plug contact
    returns   ohm

    Raises RangeError outside those spans and for any other kind.
    Leaves out age: the tests allow half as much again, or more, at their end.
    Source: `joint_limits.JOINT_LIMITS`.
    """
    if kind not in JOINT_LIMITS:
        raise RangeError(f'kind = "{kind}": this formula takes {", ".join(sorted(JOINT_LIMITS))}')
    limit = JOINT_LIMITS[kind]
    check_range("area_mm2", area_mm2, low=limit.rows[0].area_mm2, high=240.0)
    row = np.searchsorted([row.area_mm2 for row in limit.rows], area_mm2, side="right") - 1
    greatest = np.array([row.drop_v / row.test_a for row in limit.rows])
    return np.where(np.isnan(area_mm2), np.nan, greatest[row])[()]


def least_joint_ohm(*, kind: str, area_mm2: Quantity) -> Answer:
    """Least resistance to count on for a sound joint of a kind: for the greatest fault, not for heat.

    A share of `greatest_joint_ohm`, the kind's own

    kind, area_mm2  as `greatest_joint_ohm`
    returns         ohm; 0 where nobody publishes a least

    Raises RangeError as `greatest_joint_ohm`.
    Leaves out what `greatest_joint_ohm` leaves out.
    Source: `joint_limits.JOINT_LIMITS`.
    """
    greatest = greatest_joint_ohm(kind=kind, area_mm2=area_mm2)
    return JOINT_LIMITS[kind].least_share * greatest


def blade_fuse_span_ohm(*, rated_a: Quantity) -> tuple[Answer, Answer]:
    """Lowest and highest resistance of a whole blade fuse, cold and at its rating.

    0.059 / rating and 0.15 / rating

    rated_a  5 to 40
    returns  (lowest, highest) ohm

    Raises RangeError outside that span.
    Leaves out its clips.
    Source: `joint_limits.BLADE_FUSE_DROP_V`.
    """
    check_range("rated_a", rated_a, low=5.0, high=40.0)
    return BLADE_FUSE_DROP_V[0] / rated_a, BLADE_FUSE_DROP_V[1] / rated_a
