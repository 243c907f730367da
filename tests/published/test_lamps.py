"""Published: filament lamps."""

import pytest

from bom.errors import RangeError
from bom.physics.lamp import LED_HIGH_V, LED_LOW_V, SIGNAL_TEST_V, flux_ratio, life_ratio, power_at_v, upper_watts
from bom.physics.lamp_categories import category_watts


# Published: UN R37 03 series category sheets, greatest watts at test volts; each row says how it was seen.
# Categories of the same printed watts differ (55 W: H7 58 W, H4 68 W; 21 W: all alike): the greatest is
# followed, for a lamp's category is not always known. The amps printed beside them are watts over test volts.
def test_no_category_takes_more(agrees, lamps_r37_row, read_table):
    row = lamps_r37_row
    printed_w, nominal_v = float(row["printed_w"]), float(row["nominal_v"])
    test_v, greatest_w = float(row["test_v"]), float(row["value"])
    drawn_w = power_at_v(test_w=greatest_w, test_v=test_v, voltage_v=test_v)
    assert agrees(drawn_w / test_v, row["amps_a"])
    if nominal_v == 24.0:
        with pytest.raises(RangeError, match="this table takes 6 and 12"):
            upper_watts(printed_w=printed_w, nominal_v=nominal_v)
        return
    upper = upper_watts(printed_w=printed_w, nominal_v=nominal_v)
    alike = [
        float(other["value"])
        for other in read_table("lamps_r37")
        if (other["printed_w"], other["nominal_v"]) == (row["printed_w"], row["nominal_v"])
    ]
    assert upper.watts == max(alike)
    assert upper.source.split(", ")[1].startswith("UN R37")
    assert power_at_v(test_w=upper.watts, test_v=upper.test_v, voltage_v=test_v) >= greatest_w * 0.9999


# Published: the same sheets, each category by itself: a lamp whose category is printed counts by its own watts.
def test_a_category_takes_its_own_watts(lamps_r37_row):
    row = lamps_r37_row
    if row["nominal_v"] != "12":
        return
    upper = category_watts(category=row["category"], printed_w=float(row["printed_w"]))
    assert (upper.watts, upper.test_v) == (float(row["value"]), float(row["test_v"]))
    assert upper.source.endswith(row["seen"])


# Published: UN R128, W5W and WY5W LED light sources take 2 W at most on 12 V; read second-hand on a public page (an
# equivalence report). The test volts are those of signalling lamps.
@pytest.mark.parametrize("category", ["W5W/LED", "WY5W/LED"])
def test_led_light_sources_take_two_watts(category):
    upper = category_watts(category=category, printed_w=1.0)
    assert (upper.watts, upper.test_v) == (2.0, 13.5)


# Trade: lamps of trade numbers and marked watts; design amps are watts over design volts, to 2 % as both are rounded.
def test_trade_lamps(lamps_other_row):
    row = lamps_other_row
    design_v = float(row["volts_v"])
    amps = power_at_v(test_w=float(row["watts_w"]), test_v=design_v, voltage_v=design_v) / design_v
    assert amps == pytest.approx(float(row["value"]), rel=0.02)


# Worked: amps at test volts.
@pytest.mark.parametrize(
    ("printed_w", "nominal_v", "amps"),
    [
        (60, 12, "5.682"),
        (55, 12, "5.152"),
        (21, 12, "1.963"),
        (21, 6, "4.089"),
        (25, 6, "3.889"),
        (5, 12, "0.489"),
    ],
)
def test_amps_at_test_volts(agrees, printed_w, nominal_v, amps):
    upper = upper_watts(printed_w=printed_w, nominal_v=nominal_v)
    watts = power_at_v(test_w=upper.watts, test_v=upper.test_v, voltage_v=upper.test_v)
    assert agrees(watts / upper.test_v, amps)


# Published: a lamp terminology page: 13.5 V to 14.4 V leaves 0.46 of the life; read second-hand.
def test_life_at_a_high_rail(agrees):
    assert agrees(life_ratio(voltage_v=14.4, test_v=13.5), "0.46")


# Worked: (14.4 / 13.5)^3.4 = exp(3.4 x 0.064539), and 26.5 W x exp(1.6 x 0.064539).
def test_light_and_power_at_a_high_rail(agrees):
    assert agrees(flux_ratio(voltage_v=14.4, test_v=13.5), "1.2454")
    assert agrees(power_at_v(test_w=26.5, test_v=13.5, voltage_v=14.4), "29.38")


# Published: UN R128 Annex 4, LED light sources for 12 V run from 9 to 16 V; UN R7 and R50 test signalling lamps at
# 13.5 V; both read second-hand on a public page.
def test_windows_of_light_sources():
    assert (LED_LOW_V, LED_HIGH_V, SIGNAL_TEST_V) == (9.0, 16.0, 13.5)


# Published: SAE trade numbers 1157 and 1073 (US and Japanese bikes), from memory: 26.9 W and 23.0 W at 12.8 V, the
# tail's 8.3 W at 14.0 V. They have no UN category; what a circuit is sized by covers them all the same.
@pytest.mark.parametrize(
    ("printed_w", "design_w", "design_v"), [(27.0, 26.9, 12.8), (23.0, 23.0, 12.8), (8.0, 8.3, 14.0)]
)
def test_lamps_without_a_category_are_covered(printed_w, design_w, design_v):
    upper = upper_watts(printed_w=printed_w, nominal_v=12)
    sized_w = power_at_v(test_w=upper.watts, test_v=upper.test_v, voltage_v=13.5)
    assert sized_w >= power_at_v(test_w=design_w, test_v=design_v, voltage_v=13.5)
