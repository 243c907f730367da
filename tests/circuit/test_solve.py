"""The network solver against circuits that can be worked by hand. Worked throughout: the working is shown."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from bom.circuit.compiled import Compiled
from bom.circuit.network import Network
from bom.circuit.solve import Solution, solve, solve_compiled

Solved = Callable[[str], Solution]


@pytest.fixture(scope="session")
def solved(network_of: Callable[[str], Network]) -> Solved:
    return lambda text: solve(network_of(text))


@pytest.mark.parametrize(("upper_ohm", "lower_ohm", "tap_v"), [(1, 1, 6), (3, 1, 3), (1000, 2000, 8), (1e-3, 3e-3, 9)])
def test_divider(solved, upper_ohm, lower_ohm, tap_v):
    # V = 12 x lower / (upper + lower); the source's own ohms are a millionth of the lower wire's.
    lines = f"source s P M 12 {lower_ohm * 1e-6}\nwire u P T {upper_ohm}\nwire l T M {lower_ohm}"
    assert solved(lines).at("T", "M") == pytest.approx(tap_v, rel=2e-6)


# Thevenin: 10 (220/320 - R/(150 + R)) behind 68.75 + 150 R/(150 + R), into 47 ohm. R = 330 balances: 100/220 = 150/330.
# R = 300: 0.2083333 V behind 168.75 ohm, 0.2083333 x 47 / 215.75 = 0.0453843 V.
@pytest.mark.parametrize(("unknown_ohm", "meter_v"), [(330, 0.0), (300, 0.0453843)])
def test_wheatstone_bridge(solved, unknown_ohm, meter_v):
    lines = f"""
    source s P M 10 1e-6
    wire a P A 100
    wire b P B 150
    wire c A M 220
    wire d B M {unknown_ohm}
    wire meter A B 47
    """
    assert solved(lines).at("A", "B") == pytest.approx(meter_v, abs=5e-8)


def test_two_batteries_in_parallel(solved):
    # V = (53/0.05 + 51.5/0.02) / (1/0.05 + 1/0.02 + 1/3) = 3635 / 70.3333 = 51.682464 V
    solution = solved("source one P M 53 0.05\nsource two P M 51.5 0.02\nwire load P M 3")
    assert solution.at("P", "M") == pytest.approx(51.682464, abs=5e-7)
    # One gives (53 - 51.682464) / 0.05 = 26.35072 A, the load takes 17.227488 A, the other is charged with the rest.
    assert solution.amps["one"] == pytest.approx(26.35072, abs=5e-5)
    assert solution.amps["two"] == pytest.approx(-9.12323, abs=5e-5)
    assert solution.amps["load"] == pytest.approx(17.227488, abs=5e-6)


@pytest.mark.parametrize("share", [-3.0, -1.0, -0.1, 0.0, 0.1, 0.5, 0.75, 0.9, 0.95, 0.99, 0.999])
@pytest.mark.parametrize(("source_v", "source_ohm"), [(48.0, 1.0), (72.0, 0.05), (105.0, 0.2), (12.6, 0.01)])
def test_constant_power_is_the_upper_root(solved, source_v, source_ohm, share):
    # I = (E - V) / R and P = V I give V = (E + sqrt(E^2 - 4 P R)) / 2; the most is P = E^2 / 4R.
    watts = share * source_v**2 / (4 * source_ohm)
    upper_v = (source_v + math.sqrt(source_v**2 - 4 * watts * source_ohm)) / 2
    solution = solved(f"source s P M {source_v} {source_ohm}\nwatts load P M {watts} {source_v / 10}")
    assert solution.settled
    assert solution.let_go == ()
    assert solution.at("P", "M") == pytest.approx(upper_v, rel=1e-6)
    assert solution.amps["load"] * solution.at("P", "M") == pytest.approx(watts, rel=1e-6)


@pytest.mark.parametrize("share", [1.0, 1 + 1e-9, 1.0001, 1.001, 1.01, 1.1, 1.5, 2.0, 4.0, 4 + 4e-9, 50.0, 1e4])
@pytest.mark.parametrize("least_v", [0.5, 5.0, 12.0, 23.9])
def test_past_collapse_the_draw_lets_go(solved, share, least_v):
    # Past 48^2 / 4 = 576 W nothing holds; as a resistor of least^2 / P it stands at 48 R / (1 + R), below its least.
    low_ohm = least_v**2 / (share * 576)
    solution = solved(f"source s P M 48 1\nwatts load P M {share * 576} {least_v}")
    assert solution.settled
    assert solution.let_go == ("load",)
    assert solution.at("P", "M") == pytest.approx(48 * low_ohm / (1 + low_ohm), rel=1e-6)


def test_of_two_draws_the_heavy_one_lets_go(solved):
    # 96^2 / 0.4 = 23 040 W at most. As 40^2 / 30 000 = 0.05333 ohm the controller leaves about 33.4 V, more than the
    # heater's least: it keeps on.
    solution = solved("source s P M 96 0.1\nwatts controller P M 30000 40\nwatts heater P M 200 20")
    assert solution.settled
    assert solution.let_go == ("controller",)
    assert solution.amps["heater"] * solution.at("P", "M") == pytest.approx(200, rel=1e-6)
    assert 33.0 < solution.at("P", "M") < 33.4


@pytest.mark.parametrize(("amps", "expected_v"), [(0.5, 11.0), (1.49, 9.02), (2.0, 8.307692)])
def test_constant_current(solved, amps, expected_v):
    # 12 - 2 I, down to its least of 9 V; 2 A would leave 8 V, so it is 9 / 2 = 4.5 ohm: 12 x 4.5 / 6.5 = 8.307692 V.
    assert solved(f"source s P M 12 2\namps load P M {amps} 9").at("P", "M") == pytest.approx(expected_v, rel=1e-6)


CONVERTER = "source pack P M 72 0.5\nconverter dc P M A B 13.5 {limit} {keeps} 0.01 0.9 2 {lowest}\nwire load A B {ohm}"


def test_converter_holds(solved):
    # 13.5 x 2.69 / 2.70 = 13.45 V and 5 A; takes 67.25 / 0.9 + 2 = 76.7222 W: 36 + sqrt(1296 - 76.7222 x 0.5).
    solution = solved(CONVERTER.format(limit=20, keeps="hiccup", lowest=40, ohm=2.69))
    assert solution.let_go == solution.limiting == ()
    assert solution.at("A", "B") == pytest.approx(13.45, rel=1e-6)
    assert solution.amps["dc"] == pytest.approx(5.0, rel=1e-6)
    assert solution.at("P", "M") == pytest.approx(36 + math.sqrt(1296 - 76.722222 * 0.5), rel=1e-7)


def test_converter_limits_at_constant_current(solved):
    # 4 A into 2.69 ohm: 10.76 V, 43.04 W; takes 43.04 / 0.9 + 2 = 49.8222 W.
    solution = solved(CONVERTER.format(limit=4, keeps="constant", lowest=40, ohm=2.69))
    assert solution.limiting == ("dc",)
    assert solution.let_go == ()
    assert solution.at("A", "B") == pytest.approx(10.76, rel=1e-6)
    assert solution.at("P", "M") == pytest.approx(36 + math.sqrt(1296 - 49.822222 * 0.5), rel=1e-7)


def test_converter_at_its_very_limit_holds(solved):
    solution = solved(CONVERTER.format(limit=5.0001, keeps="hiccup", lowest=40, ohm=2.69))
    assert solution.let_go == solution.limiting == ()


@pytest.mark.parametrize(("limit", "keeps", "lowest"), [(4, "hiccup", 40), (20, "constant", 71.99)])
def test_converter_lets_go(solved, limit, keeps, lowest):
    """It hiccups past its limit; or its input, sagged below 71.5 V under its own load, is too low."""
    solution = solved(CONVERTER.format(limit=limit, keeps=keeps, lowest=lowest, ohm=2.69))
    assert solution.settled
    assert solution.let_go == ("dc",)
    assert solution.limiting == ()
    assert solution.at("A", "B") == pytest.approx(0.0, abs=1e-6)
    assert solution.at("P", "M") == pytest.approx(72.0, abs=1e-6)


def test_limit_comes_before_the_sag_that_it_prevents(solved):
    # Without its limit the short would ask 2.5 kW of a pack that gives 48^2 / 3.2 = 720 W. At 10 A: 0.5 V, 5 W.
    solution = solved(
        "source pack P M 48 0.8\nconverter dc P M A B 13.5 10 constant 0.01 0.9 2 30\nwire heavy A B 0.05"
    )
    assert solution.limiting == ("dc",)
    assert solution.let_go == ()
    assert solution.at("A", "B") == pytest.approx(0.5, rel=1e-6)


def test_converter_holds_again_when_what_overloaded_it_has_gone(solved):
    # The second converter asks too much; the first limits, the rail falls, the second lets go. Then the first feeds
    # 5 ohm alone: 13.5 x 5 / 5.01 = 13.473 V, not 10 A x 5 ohm = 50 V.
    solution = solved("""
    source pack P M 72 0.05
    converter first P M A B 13.5 10 constant 0.01 0.9 1 40
    converter second A B C D 5 60 constant 0.01 0.9 1 11
    wire big C D 0.1
    wire lamp A B 5
    """)
    assert solution.settled
    assert solution.let_go == ("second",)
    assert solution.limiting == ()
    assert solution.at("A", "B") == pytest.approx(13.5 * 5 / 5.01, rel=1e-6)


def test_converter_takes_nothing_back(solved):
    # The battery alone feeds the lamp: 13.9 x 20 / 20.03; the converter stands by at its 2 W.
    solution = solved("""
    source pack P M 72 0.05
    converter dc P M A B 13.2 20 constant 0.01 0.9 2 40
    source buffer A B 13.9 0.03
    wire lamp A B 20
    """)
    assert solution.at("A", "B") == pytest.approx(13.9 * 20 / 20.03, rel=1e-6)
    assert solution.amps["dc"] == 0.0
    assert solution.amps["pack"] == pytest.approx(2 / 72, rel=1e-3)
    assert solution.let_go == solution.limiting == ()


def test_what_an_overloaded_rail_lets_go(solved):
    # 104.8 W at 12.3 V would be 8.5 A, over the limit of 8; at fewer volts it would be more. As 3^2 / 104.8 =
    # 0.0859 ohm the lamp leaves 8 x 0.0859 = 0.687 V, and the pack knows nothing of it.
    solution = solved("""
    source pack P M 24 0.01
    converter dc P M A B 12.4 8 constant 0.006 0.95 4 7
    watts lamp A B 104.8 3
    watts motor P M 2000 12
    """)
    assert solution.settled
    assert solution.let_go == ("lamp",)
    assert solution.limiting == ("dc",)
    assert solution.at("A", "B") == pytest.approx(8 * 9 / 104.8, rel=1e-6)
    assert solution.amps["motor"] * solution.at("P", "M") == pytest.approx(2000, rel=1e-6)


@pytest.mark.parametrize(("least_v", "expected_v"), [(20.0, 29.014696), (40.0, 26.400825)])
def test_regeneration_onto_a_sagged_bus(solved, least_v, expected_v):
    # The rest of the bike leaves 48 x 1 / 2 = 24 V behind 0.5 ohm. Feeding 291 W: V = (24 + sqrt(576 + 582)) / 2
    # = 29.014696 V. With a least of 40 V it feeds 291 x V / 1600: V = 24 / (1 - 0.0909375) = 26.400825 V.
    lines = f"source s P M 48 1\nwire load P M 1\nwatts controller P M -291 {least_v}"
    solution = solved(lines)
    assert solution.settled
    assert solution.let_go == ()
    assert solution.at("P", "M") == pytest.approx(expected_v, rel=1e-6)


def test_islands_count_from_their_own_reference(solved):
    solution = solved("""
    reference M
    reference B
    source pack P M 72 0.01
    wire load P M 10
    source torch A B 4.5 0.1
    wire bulb A B 9
    """)
    assert solution.volts[solution.compiled.index["M"]] == pytest.approx(0.0, abs=1e-12)
    assert solution.volts[solution.compiled.index["B"]] == pytest.approx(0.0, abs=1e-12)
    assert math.isnan(solution.at("P", "A"))
    assert math.isnan(solution.at("M", "B"))
    assert solution.at("A", "B") == pytest.approx(4.5 * 9 / 9.1, rel=1e-9)


def test_converter_keeps_islands_apart_and_a_wire_joins_them(solved):
    lines = CONVERTER.format(limit=20, keeps="constant", lowest=40, ohm=2.69)
    assert math.isnan(solved(lines).at("A", "M"))
    # One joint carries nothing: the volts across it are those of the output.
    assert solved(lines + "\nwire bond B M 0.001").at("A", "M") == pytest.approx(13.45, rel=1e-6)


def test_nothing_at_all_and_nothing_alive(solved):
    assert solved("").amps == {}
    dead = solved("wire a P M 1\nwatts load P M 100 10\namps regeneration P M -5 10")
    assert dead.settled
    assert dead.let_go == ("load",)
    assert dead.amps == {"a": 0.0, "load": 0.0, "regeneration": 0.0}


def test_the_same_network_gives_the_same_figures(solved):
    lines = "source s P M 96 0.1\nwire f P A 0.02\nwatts c A M 9000 40\nwatts h A M 200 20\nwire r A M 7"
    first, second = solved(lines), solved(lines)
    assert np.array_equal(first.volts, second.volts)
    assert list(first.amps.items()) == list(second.amps.items())


def test_the_very_point_of_collapse_is_no_error(solved):
    # At 48 V the tangent of 48^2 = 2304 W is -1 ohm, beside the source's own 1 ohm: with the solver's leak of 1 nS
    # counted in, these watts make the matrix exactly singular.
    solution = solved("source s P M 48 1\nwatts load P M 2303.999997696 1")
    assert solution.settled
    assert solution.let_go == ("load",)


def test_nothing_feeds_back_into_volts_the_wrong_way_round(solved):
    solution = solved("source s M P 20 1\namps motor P M -5 9\nwatts controller P M -50 9")
    assert solution.settled
    assert solution.at("P", "M") == pytest.approx(-20.0, rel=1e-6)
    assert solution.amps["motor"] == solution.amps["controller"] == 0.0


def test_what_swings_from_round_to_round_settles(solved):
    """Two converters lift each other's returns: whole steps go to and fro for ever. One has no input and lets go."""
    solution = solved("""
    wire a M1 M0 0.129
    wire b M2 M1 0.00767
    wire c M3 M0 0.109
    wire d L3 L0 0.000471
    source pack P M0 13 0.0174
    source buffer L0 M1 12.39 0.05
    converter one P1 M1 L0 M1 12.83 15.1 constant 0.0493 0.998 0.005 6.5
    converter two P M2 L3 M3 14.76 10.98 hiccup 0.0037 0.718 4.8 6.5
    """)
    assert solution.settled
    assert solution.let_go == ("one",)
    # Kirchhoff at M0: what leaves through a and c is what the pack brings.
    assert solution.amps["a"] + solution.amps["c"] == pytest.approx(solution.amps["pack"], rel=1e-6)


@pytest.mark.parametrize("start_v", [0.0, 1.0, 10.0, 24.0, 36.0, 48.0, 100.0])
def test_any_start_ends_at_the_upper_answer(network_of, start_v):
    # 500 W of at most 576 W: 24 + sqrt(576 - 500) = 32.717798 V; a start below the least of 12 V does not stay there.
    compiled = Compiled(network_of("reference M\nsource s P M 48 1\nwatts load P M 500 12"))
    solution = solve_compiled(compiled, np.array([0.0, start_v]))
    assert solution.let_go == ()
    assert solution.at("P", "M") == pytest.approx(32.717798, rel=1e-6)


def test_other_resistors_in_the_same_network(network_of):
    lines = "reference M\nsource s P M 48 1\nwire a P A {ohm}\nwatts load A M 300 12"
    compiled = Compiled(network_of(lines.format(ohm=0.5)))
    before = solve_compiled(compiled)
    other = solve_compiled(compiled.with_siemens(np.array([1 / 0.2])), before.volts)
    assert other.volts == pytest.approx(solve(network_of(lines.format(ohm=0.2))).volts, rel=1e-9)
    assert solve_compiled(compiled).volts == pytest.approx(before.volts, rel=1e-12)
