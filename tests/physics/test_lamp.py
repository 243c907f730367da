import math

import pytest

from bom.errors import RangeError
from bom.physics.lamp import life_ratio, power_at_v, upper_watts
from bom.physics.lamp_categories import categories_of, category_watts


# 1.375 is the greatest ratio of the listed lamps: 5.5 W of a P21/4W's 4 W filament.
@pytest.mark.parametrize(("nominal_v", "test_v"), [(12, 13.2), (6, 6.3)])
def test_watts_that_are_not_listed_take_the_greatest_ratio(nominal_v, test_v):
    upper = upper_watts(printed_w=23.0, nominal_v=nominal_v)
    assert upper.watts == pytest.approx(23 * 1.375)
    assert upper.test_v == test_v
    assert upper.source.startswith("assumed")


def test_a_listed_lamp_says_how_it_was_seen():
    watts, test_v, source = upper_watts(printed_w=60, nominal_v=12)
    assert (watts, test_v) == (75.0, 13.2)
    assert "UN R37" in source
    assert "from memory" in source


def test_unknown_watts_stay_unknown():
    assert math.isnan(upper_watts(printed_w=math.nan, nominal_v=12).watts)


@pytest.mark.parametrize("nominal_v", [24, 9, math.nan])
def test_other_systems_are_refused(nominal_v):
    with pytest.raises(RangeError, match="takes 6 and 12"):
        upper_watts(printed_w=21, nominal_v=nominal_v)


@pytest.mark.parametrize("printed_w", [0.4, 131])
def test_other_watts_are_refused(printed_w):
    with pytest.raises(RangeError, match="printed_w"):
        upper_watts(printed_w=printed_w, nominal_v=12)


def test_a_six_volt_lamp_on_twelve_volts_has_no_power():
    with pytest.raises(RangeError, match=r"voltage_v / test_v = 2: the most this formula takes is 1\.3"):
        power_at_v(test_w=26.5, test_v=6.75, voltage_v=13.5)
    with pytest.raises(RangeError, match=r"voltage_v / test_v = 0\.6: the least this formula takes is 0\.7"):
        power_at_v(test_w=26.5, test_v=10.0, voltage_v=6.0)


@pytest.mark.parametrize("voltage_v", [7.9, 12.6])
def test_light_and_life_keep_a_narrower_range(voltage_v):
    with pytest.raises(RangeError, match="voltage_v / test_v"):
        life_ratio(voltage_v=voltage_v, test_v=10.0)


@pytest.mark.parametrize(("category", "printed_w"), [("P21W", 10.0), ("H99", 55.0), ("W5W", math.nan)])
def test_what_no_sheet_lists_is_refused(category, printed_w):
    with pytest.raises(RangeError, match="is listed under"):
        category_watts(category=category, printed_w=printed_w)


def test_categories_of_some_watts():
    """Published: UN R37 03 series, 10 W: R10W and RY10W; from memory."""
    assert categories_of(printed_w=10.0) == ("R10W", "RY10W")
    assert categories_of(printed_w=11.0) == ()
