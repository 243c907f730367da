"""Published: filament lamps."""

import pytest

from bom.physics.lamp import flux_ratio, life_ratio, power_at_v, upper_watts

# Published: UN R37 03 series category sheets: category, printed W, nominal V, test V, greatest W. From memory
# but for PY21/5W (read second-hand on a public page) and H1, HS1 (volts read so, greatest watts from memory).
CATEGORIES = [
    ("W3W", 3, 12, 13.5, 3.45),
    ("W3W", 3, 6, 6.75, 3.45),
    ("T4W", 4, 12, 13.5, 4.4),
    ("P21/4W minor", 4, 12, 13.5, 5.5),
    ("T4W", 4, 6, 6.75, 4.4),
    ("R5W", 5, 12, 13.5, 5.5),
    ("PY21/5W minor", 5, 12, 13.5, 6.6),
    ("P21/5W minor", 5, 6, 6.75, 6.6),
    ("H6W", 6, 12, 13.5, 7.35),
    ("P27/7W minor", 7, 12, 13.5, 8.5),
    ("R10W", 10, 12, 13.5, 11.0),
    ("R10W", 10, 6, 6.75, 11.0),
    ("HS2", 15, 12, 13.5, 15.9),
    ("HS2", 15, 6, 6.75, 15.9),
    ("W16W", 16, 12, 13.5, 21.35),
    ("PY21/5W major", 21, 12, 13.5, 26.5),
    ("P21W", 21, 6, 6.75, 27.6),
    ("S1", 25, 12, 13.5, 26.25),
    ("S1", 25, 6, 6.75, 26.25),
    ("P27/7W major", 27, 12, 13.5, 32.1),
    ("HS1", 35, 12, 13.2, 36.75),
    ("S2", 35, 12, 13.5, 36.75),
    ("H8", 35, 12, 13.2, 43.0),
    ("HS1", 35, 6, 6.3, 36.75),
    ("R2 minor", 40, 12, 13.2, 51.0),
    ("R2 minor", 40, 6, 6.3, 47.0),
    ("R2 major", 45, 12, 13.2, 57.0),
    ("R2 major", 45, 6, 6.3, 53.0),
    ("H7", 55, 12, 13.2, 58.0),
    ("H4 minor", 55, 12, 13.2, 68.0),
    ("H1", 55, 6, 6.3, 63.0),
    ("H4 major", 60, 12, 13.2, 75.0),
]
GREATEST: dict[tuple[int, int], float] = {}
for _, _printed, _nominal, _, _upper in CATEGORIES:
    GREATEST[_printed, _nominal] = max(GREATEST.get((_printed, _nominal), 0.0), _upper)


@pytest.mark.parametrize(("category", "printed_w", "nominal_v", "test_v", "greatest_w"), CATEGORIES)
def test_no_category_takes_more(category, printed_w, nominal_v, test_v, greatest_w):
    upper = upper_watts(printed_w=printed_w, nominal_v=nominal_v)
    assert upper.watts == GREATEST[printed_w, nominal_v]
    assert not upper.source.startswith("assumed")
    at_its_volts = power_at_v(test_w=upper.watts, test_v=upper.test_v, voltage_v=test_v)
    assert at_its_volts >= greatest_w * 0.9999


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
