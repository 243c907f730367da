import numpy as np
import pytest

from bom.errors import RangeError
from bom.physics.joint import (
    blade_fuse_span_ohm,
    contact_spot_c,
    greatest_joint_ohm,
    joint_drop_v,
    joint_heat_w,
    least_joint_ohm,
)
from bom.physics.joint_limits import JOINT_LIMITS


# Worked: 150 A through 0.2 mohm: 0.03 V and 4.5 W.
def test_worked_drop_and_heat():
    assert joint_drop_v(current_a=150.0, resistance_ohm=2e-4) == pytest.approx(0.03)
    assert joint_heat_w(current_a=150.0, resistance_ohm=2e-4) == pytest.approx(4.5)


def test_between_two_wires_the_smaller_one_counts():
    assert greatest_joint_ohm(kind="plug contact", area_mm2=6.0) == greatest_joint_ohm(
        kind="plug contact", area_mm2=3.31
    )
    column = greatest_joint_ohm(kind="terminal block", area_mm2=np.array([2.5, 3.9, 4.0]))
    assert column[0] == column[1] > column[2]


def test_a_bigger_wire_never_has_the_worse_joint():
    for limit in JOINT_LIMITS.values():
        ohms = [row.drop_v / row.test_a for row in limit.rows]
        assert ohms == sorted(ohms, reverse=True)


def test_other_kinds_are_refused():
    with pytest.raises(RangeError, match='kind = "glue": this formula takes plug contact, terminal block'):
        least_joint_ohm(kind="glue", area_mm2=2.5)


@pytest.mark.parametrize("rated_a", [4.9, 40.1])
def test_blade_fuses_outside_their_range_are_refused(rated_a):
    with pytest.raises(RangeError, match="rated_a"):
        blade_fuse_span_ohm(rated_a=rated_a)


def test_no_volts_make_no_heat():
    assert contact_spot_c(drop_v=0.0, body_c=60.0) == pytest.approx(60.0)
