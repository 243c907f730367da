import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom.errors import RangeError
from bom.physics.adiabatic import k_factor, longest_s


def test_the_order_of_temperatures_matters():
    with pytest.raises(RangeError, match="start_c = 160 is above end_c = 70"):
        k_factor(start_c=160.0, end_c=70.0)


@pytest.mark.parametrize("temperature_c", [-40.1, 250.1])
def test_a_start_outside_its_range_is_refused(temperature_c):
    with pytest.raises(RangeError, match=r"start_c = .* this formula takes"):
        k_factor(start_c=temperature_c, end_c=300.0)


def test_an_end_outside_its_range_is_refused():
    with pytest.raises(RangeError, match=r"end_c = -40\.1: the least"):
        k_factor(start_c=-40.0, end_c=-40.1)


def test_no_rise_allowed_means_no_time():
    assert longest_s(area_mm2=25.0, current_a=1000.0, start_c=90.0, end_c=90.0) == 0.0


@given(current_a=st.floats(10.0, 50_000.0), more=st.floats(1.0, 2.0))
def test_more_current_never_lasts_longer(current_a, more):
    limits = {"area_mm2": 10.0, "start_c": 90.0, "end_c": 250.0}
    time_s = longest_s(current_a=current_a, **limits)
    assert 0.0 < longest_s(current_a=current_a * more, **limits) <= time_s <= 5.0


# Worked: hot to begin with, less is left: k from 85 C is 103.8, from 40 C 136.1 (to 160 C, by hand).
def test_a_cold_start_allows_more():
    assert k_factor(start_c=85.0, end_c=160.0) == pytest.approx(103.8, abs=0.05)
    assert k_factor(start_c=40.0, end_c=160.0) == pytest.approx(136.1, abs=0.05)
