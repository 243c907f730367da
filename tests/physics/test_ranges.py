import numpy as np
import pytest

from bom.errors import RangeError
from bom.physics.ranges import check_order, check_range


def test_both_limits_are_inside():
    check_range("length_m", np.array([0.0, 100.0, np.nan]), low=0.0, high=100.0)


def test_the_message_names_argument_limit_and_value():
    with pytest.raises(RangeError, match=r"^length_m = 101: the most this formula takes is 100$"):
        check_range("length_m", np.array([3.0, np.nan, 101.0]), low=0.0, high=100.0)
    with pytest.raises(RangeError, match=r"^length_m = -1: the least this formula takes is 0$"):
        check_range("length_m", -1.0, low=0.0, high=100.0)


def test_order_names_the_first_wrong_pair():
    check_order("conductor_mm", 2.0, "outside_mm", np.array([2.0, np.nan]))
    message = r"^conductor_mm = 2 is above outside_mm = 1: conductor_mm must be no more than outside_mm$"
    with pytest.raises(RangeError, match=message):
        check_order("conductor_mm", 2.0, "outside_mm", np.array([3.0, 1.0]))
