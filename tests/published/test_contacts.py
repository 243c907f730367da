"""Published: what contacts break, by their printed points and by aircraft practice."""

import math

import pytest

from bom.errors import RangeError
from bom.physics.breaking import aviation_switch_a, breaks_a


def points_of(table, row):
    """Every printed point of the same contact with as many poles in series."""
    alike = [r for r in table if (r["contact"], r["poles_in_series"]) == (row["contact"], row["poles_in_series"])]
    return [(float(r["volts_v"]), float(r["value"]), float(r["time_constant_ms"])) for r in alike]


# Published: DC columns of makers' tables; a resistive column is read as 1 ms (below 1 ms in the contactors'
# own words), "L/R < 15 ms" as 15 ms. Asked at its own printed duty a contact breaks what is printed; asked a
# little above in volts or time constant, no more than that.
def test_every_printed_point(contact_ratings_row, read_table):
    row = contact_ratings_row
    points = points_of(read_table("contact_ratings"), row)
    duty = {"voltage_v": float(row["volts_v"]), "time_constant_ms": float(row["time_constant_ms"])}
    assert breaks_a(points=points, **duty) == float(row["value"])
    for name, value in duty.items():
        harder = breaks_a(points=points, **duty | {name: value * 1.01})
        assert math.isnan(harder) or harder <= float(row["value"])


SNAP_SWITCH = [(30, 6, 1), (30, 5, 7), (125, 0.5, 1), (125, 0.05, 7), (250, 0.25, 1), (250, 0.03, 7)]


# Worked from that switch: 84 V lies past its 30 V points, so its 125 V points count. It is marked 10 A at
# 250 V AC, a twentieth of which it breaks at 125 V DC, and a two-hundredth at 7 ms.
@pytest.mark.parametrize(
    ("voltage_v", "time_constant_ms", "amps"),
    [
        (12, 0, 6),
        (30, 1, 6),
        (30, 2, 5),
        (84, 1, 0.5),
        (84, 1.5, 0.05),
        (125, 7, 0.05),
        (126, 1, 0.25),
        (250, 5, 0.03),
    ],
)
def test_a_switch_on_pack_volts(voltage_v, time_constant_ms, amps):
    assert breaks_a(points=SNAP_SWITCH, voltage_v=voltage_v, time_constant_ms=time_constant_ms) == amps


@pytest.mark.parametrize(("voltage_v", "time_constant_ms"), [(251, 1), (30, 8), (84, 40)])
def test_past_its_points_nothing_is_known(voltage_v, time_constant_ms):
    assert math.isnan(breaks_a(points=SNAP_SWITCH, voltage_v=voltage_v, time_constant_ms=time_constant_ms))


# Published: an output relay of 2 A at 250 V AC: 2.0 A to 31 V and 0.2 A from 32 to 125 V, inductive loads
# "not rated" there; read second-hand on a public page.
def test_not_rated_is_not_known():
    points = [(31.0, 2.0, 1.0), (125.0, 0.2, 1.0)]
    assert breaks_a(points=points, voltage_v=31.5, time_constant_ms=1.0) == 0.2
    assert math.isnan(breaks_a(points=points, voltage_v=84.0, time_constant_ms=7.0))


# Published: IEC 60947-3 category DC-20, connect and disconnect at no load; read second-hand on a public page.
# A disconnector is known to break nothing, which is not the same as not known.
def test_a_disconnector_breaks_nothing():
    points = [(150.0, 0.0, 1.0)]
    assert breaks_a(points=points, voltage_v=84.0, time_constant_ms=1.0) == 0.0
    assert math.isnan(breaks_a(points=points, voltage_v=151.0, time_constant_ms=1.0))


# Published: IEC 60947-4-1 DC-3 (2.5 ms) and DC-5 (15 ms), IEC 60947-5-1 DC-13 (300 ms); read second-hand on a
# public page. A contactor proved at DC-3 is not thereby good for DC-5, nor a switch at DC-12 for DC-13.
@pytest.mark.parametrize(("proved_ms", "asked_ms"), [(1, 2.5), (2.5, 15), (1, 300), (15, 300)])
def test_a_lighter_category_proves_no_heavier_one(proved_ms, asked_ms):
    points = [(110.0, 30.0, float(proved_ms))]
    assert math.isnan(breaks_a(points=points, voltage_v=84.0, time_constant_ms=float(asked_ms)))
    assert breaks_a(points=points, voltage_v=84.0, time_constant_ms=float(proved_ms)) == 30.0


def test_points_with_a_blank_prove_nothing():
    blanks = [(math.nan, 5.0, 1.0), (100.0, math.nan, 1.0), (100.0, 5.0, math.nan)]
    assert math.isnan(breaks_a(points=blanks, voltage_v=48.0, time_constant_ms=1.0))
    assert breaks_a(points=[*blanks, (60.0, 3.0, 1.0)], voltage_v=48.0, time_constant_ms=1.0) == 3.0
    assert math.isnan(breaks_a(points=[], voltage_v=48.0, time_constant_ms=1.0))
    with pytest.raises(RangeError, match="zero or more"):
        breaks_a(points=[(48.0, -1.0, 1.0)], voltage_v=48.0, time_constant_ms=1.0)


# Published: nominal amps asked of a switch for 5 A of each load; the older edition names its row 24 V.
def test_aviation_factors(switch_factors_row):
    row = switch_factors_row
    answer = aviation_switch_a(running_a=5.0, system_v=float(row["system_v"]), load=row["load"])
    assert answer == pytest.approx(5.0 * float(row["value"]))


@pytest.mark.parametrize(("system_v", "load"), [(48.0, "lamp"), (84.0, "motor"), (28.5, "lamp"), (12.0, "horn")])
def test_aviation_factors_are_not_stretched(system_v, load):
    with pytest.raises(RangeError, match="printed for 12, 24 and 28 V and for heater, lamp, motor, relay coil"):
        aviation_switch_a(running_a=5.0, system_v=system_v, load=load)
