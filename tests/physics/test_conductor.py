import pytest

from bom.errors import RangeError
from bom.physics.conductor import awg_area_mm2, hot_resistance_ohm


@pytest.mark.parametrize("gauge", ["27", "0", "5/0", "0/0", "", "14 AWG", "-1", "2.5"])
def test_other_gauges_are_refused(gauge):
    with pytest.raises(RangeError, match="gauge"):
        awg_area_mm2(gauge=gauge)


def test_three_gauges_halve_the_area_or_nearly():
    assert awg_area_mm2(gauge="13") / awg_area_mm2(gauge="10") == pytest.approx(0.5, abs=0.002)
    assert awg_area_mm2(gauge="2/0") / awg_area_mm2(gauge="1/0") == pytest.approx(1.261, abs=0.001)


def test_length_and_resistance_are_not_interchangeable():
    with pytest.raises(RangeError, match="length_m = 240"):
        hot_resistance_ohm(resistance_20_mohm_per_m=2.0, length_m=240.0, temperature_c=20.0)


def test_no_length_has_no_resistance():
    assert hot_resistance_ohm(resistance_20_mohm_per_m=7.6, length_m=0.0, temperature_c=90.0) == 0.0
