"""Published: opening times of fuses, read as bounds."""

import math

import pytest

from bom.physics.fuse import earliest_s, latest_s, rerating_fraction, surely_opens_multiple

NAN = math.nan
# Published: ISO 8820-3 as on makers' sheets; read second-hand on a public page (medium blade, 10 A).
MEDIUM_BLADE = [(1.1, 360000, NAN), (1.35, 0.75, 600), (1.6, 0.25, 50), (2.0, 0.15, 5), (3.5, 0.08, 0.5)]
# Published: ISO 8820-3 / SAE J1888 as on a maker's sheet; read second-hand on a public page.
LARGE_BLADE = [(1.0, 360000, NAN), (1.35, 60, 1800), (2.0, 2, 50), (3.5, 0.2, 7), (6.0, 0.04, 1)]
# Published: IEC 60269-6 Table 101, up to 63 A; 1.45 read second-hand on a public page, 1.13 from memory.
PHOTOVOLTAIC = [(1.13, 3600, NAN), (1.45, NAN, 3600)]


# Worked: 18 A through a 10 A blade lies between 1.6 and 2.0: 0.15 s at the soonest, 50 s at the latest.
def test_stall_current_between_two_points():
    assert earliest_s(multiple=1.8, points=MEDIUM_BLADE) == 0.15
    assert latest_s(multiple=1.8, points=MEDIUM_BLADE) == 50


# Worked: 27 A through a 20 A blade may last 600 s, and just less for ever.
def test_a_blade_may_carry_a_third_more():
    assert latest_s(multiple=1.35, points=MEDIUM_BLADE) == 600
    assert latest_s(multiple=1.34, points=MEDIUM_BLADE) == math.inf


@pytest.mark.parametrize(
    ("points", "within_s", "multiple"),
    [
        (MEDIUM_BLADE, 5.0, 2.0),
        (LARGE_BLADE, 5.0, 6.0),
        (LARGE_BLADE, 50.0, 2.0),
        (PHOTOVOLTAIC, 3600.0, 1.45),
    ],
)
def test_multiple_that_surely_opens(points, within_s, multiple):
    assert surely_opens_multiple(within_s=within_s, points=points) == multiple


# Published: a maker's re-rating curve of a 40 A large blade; read second-hand on a public page.
@pytest.mark.parametrize(("ambient_c", "amps"), [(20, 40), (65, 34), (85, 30), (110, 25), (125, 22)])
def test_rerating_of_a_large_blade(ambient_c, amps):
    points = [(20, 1.0), (65, 0.85), (85, 0.75), (110, 0.625), (125, 0.55)]
    assert 40 * rerating_fraction(ambient_c=ambient_c, points=points) == pytest.approx(amps)
