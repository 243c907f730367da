"""Networks solved here and by a public circuit simulator, which shares no line of code with the project.

Published: every expected value is what ngspice prints, run first hand in the test itself. Skipped without it.
"""

import math
import random
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from bom.circuit.network import Network
from bom.circuit.solve import solve
from bom.physics.discharge import time_to_volts_s
from bom.physics.pack import highest_fault_a
from bom.physics.precharge import time_to_fraction_s, time_under_load_s

NAMED = tomllib.loads((Path(__file__).parent / "networks.toml").read_text(encoding="utf-8"))
RANDOM = tuple(range(120))
RELATIVE, FLOOR_V = 0.001, 1e-6

Simulated = Callable[[dict[str, Network]], dict[str, dict[str, float]]]
Measured = Callable[..., dict[str, float]]


def random_network(number: int) -> str:
    """Write a tree of 5 to 60 points with loops, a second source, draws and converters, far from collapse."""
    chance = random.Random(number)
    count = chance.randint(5, 60)
    volts = chance.uniform(12, 110)
    lines = [f"source pack n0 n1 {volts} {chance.uniform(0.005, 0.2)}"]
    for k in range(2, count):
        lines.append(f"wire w{k} n{k} n{chance.randrange(k)} {10 ** chance.uniform(-4, -1.5)}")
    for k in range(chance.randint(0, count // 4)):
        a, b = chance.sample(range(2, count), 2)
        lines.append(f"wire loop{k} n{a} n{b} {10 ** chance.uniform(-4, 0)}")
    # The wires from n0 and from n1 are two trees; what lies between them takes power, or leaks.
    tree = {0: 0, 1: 1}
    for line in lines[1 : count - 1]:
        _, _, here, there, _ = line.split()
        tree[int(here[1:])] = tree[int(there[1:])]
    plus, minus = ([f"n{k}" for k, root in tree.items() if root == side] for side in (0, 1))
    lines = [line for line in lines if not _bridges(line, tree)]
    for k in range(chance.randint(1, 12)):
        a, b = chance.choice(plus), chance.choice(minus)
        watts = volts**2 / 100 * chance.uniform(-0.1, 0.3)
        kind, amount = chance.choice((("watts", watts), ("amps", watts / volts)))
        lines.append(f"{kind} d{k} {a} {b} {amount} {volts / 4}")
        lines.append(f"wire load{k} {a} {b} {10 ** chance.uniform(0.5, 6.5)}")
    if chance.random() < 0.5:
        lines.append(f"source other {chance.choice(plus)} {chance.choice(minus)} {volts * 0.97} {0.1}")
    for k in range(chance.randint(0, 2)):
        a, b = chance.choice(plus), chance.choice(minus)
        back = chance.choice((b, f"x{k}"))  # common minus, or isolated
        lines.append(
            f"converter c{k} {a} {b} o{k} {back} {chance.uniform(5, 14)} {chance.uniform(1, 6)} constant"
            f" {chance.uniform(0.005, 0.05)} {chance.uniform(0.8, 0.97)} {chance.uniform(0, 3)} {volts / 4}"
        )
        lines += [f"wire lead{k} o{k} p{k} 0.03", f"wire lamp{k} p{k} {back} {chance.uniform(1, 12)}"]
    return "\n".join(lines)


def _bridges(line: str, tree: dict[int, int]) -> bool:
    kind, _, a, b, *_ = line.split()
    return kind == "wire" and tree[int(a[1:])] != tree[int(b[1:])]


@pytest.fixture(scope="module")
def networks(network_of: Callable[[str], Network]) -> dict[str, Network]:
    texts = NAMED | {f"random {number}": random_network(number) for number in RANDOM}
    return {name: network_of(text) for name, text in texts.items()}


@pytest.fixture(scope="module")
def answers(simulated: Simulated, networks: dict[str, Network]) -> dict[str, dict[str, float]]:
    return simulated(networks)


@pytest.mark.parametrize("name", [*NAMED, *(f"random {number}" for number in RANDOM)])
def test_every_point_has_the_volts_that_the_simulator_finds(name, networks, answers, grounds):
    solution = solve(networks[name])
    ground = grounds(networks[name])
    assert solution.settled
    assert set(answers[name]) == set(solution.compiled.points)
    ours = {point: solution.at(point, ground[point]) for point in answers[name]}
    assert ours == pytest.approx(answers[name], rel=RELATIVE, abs=FLOOR_V)


def test_enough_networks_are_compared():
    assert len(NAMED) >= 40
    assert len(NAMED) + len(RANDOM) >= 100


# Over time: the simulator steps through what the physics has in closed form.


@pytest.mark.parametrize("fraction", [0.5, 0.9, 0.95, 0.99])
@pytest.mark.parametrize(("pack_v", "ohm", "farad"), [(72.0, 68.0, 2.2e-3), (105.0, 100.0, 680e-6), (48.0, 10.0, 0.01)])
def test_precharge_reaches_a_fraction(measured: Measured, pack_v, ohm, farad, fraction):
    step_s = ohm * farad / 500
    elements = [f"V1 p 0 {pack_v}", f"R1 p b {ohm}", f"C1 b 0 {farad} ic=0"]
    found = measured(elements, f"{step_s} {1500 * 2 * step_s} 0 {step_s}", [f"t when v(b)={fraction * pack_v}"])
    ours = time_to_fraction_s(resistance_ohm=ohm, capacitance_f=farad, fraction=fraction)
    assert ours == pytest.approx(found["t"], rel=0.001)


@pytest.mark.parametrize(
    ("pack_v", "ohm", "farad", "load_w", "start", "fraction"),
    [
        (84.0, 100.0, 1e-3, 0.5, 0.1, 0.95),
        (84.0, 100.0, 1e-3, 3.0, 0.1, 0.95),
        (84.0, 100.0, 1e-3, 10.0, 0.5, 0.80),
        (72.0, 47.0, 2e-3, 4.0, 0.3, 0.95),
        (48.0, 22.0, 5e-3, 12.0, 0.6, 0.85),
        (105.0, 150.0, 5e-4, 8.0, 0.25, 0.85),
    ],
)
def test_precharge_under_a_load(measured: Measured, pack_v, ohm, farad, load_w, start, fraction):
    start_v = start * pack_v
    step_s = ohm * farad / 2000
    load = f"BL b 0 I = V(b) >= {start_v} ? {load_w}/V(b) : 0"
    elements = [f"V1 p 0 {pack_v}", f"R1 p b {ohm}", f"C1 b 0 {farad} ic=0", load]
    found = measured(elements, f"{step_s} {16000 * step_s} 0 {step_s}", [f"t when v(b)={fraction * pack_v}"])
    ours = time_under_load_s(
        resistance_ohm=ohm,
        capacitance_f=farad,
        voltage_v=pack_v,
        load_w=load_w,
        fraction=fraction,
        load_starts_fraction=start,
    )
    assert ours == pytest.approx(found["t"], rel=0.001)


def test_precharge_that_stalls_rests_below_the_start_of_its_load(measured: Measured):
    # Worked: at 8.4 V of 84 V, 100 ohm passes 6.35 W, less than the load's 8 W. As a resistor of 8.4^2 / 8 = 8.82 ohm
    # below its start the load holds the bus at 84 x 8.82 / 108.82 = 6.808 V.
    load = "BL b 0 I = V(b) >= 8.4 ? 8/V(b) : 8*V(b)/70.56"
    elements = ["V1 p 0 84", "R1 p b 100", "C1 b 0 1e-3 ic=0", load]
    found = measured(elements, "1e-3 2 0 1e-3", ["end find v(b) at=1.9"])
    assert found["end"] == pytest.approx(6.808, abs=0.0005)
    case = {"resistance_ohm": 100.0, "capacitance_f": 1e-3, "voltage_v": 84.0, "load_w": 8.0}
    assert time_under_load_s(**case, fraction=0.5, load_starts_fraction=0.1) == math.inf


def test_discharge_through_a_bleeder(measured: Measured):
    elements = ["C1 b 0 2.2e-3 ic=105", "R1 b 0 4700"]
    found = measured(elements, "0.01 20 0 0.01", ["t when v(b)=60"])
    ours = time_to_volts_s(resistance_ohm=4700.0, capacitance_f=2.2e-3, start_v=105.0, end_v=60.0)
    assert ours == pytest.approx(found["t"], rel=0.001)


@pytest.mark.parametrize(("pack_v", "ohm", "henry"), [(84.0, 0.03, 3e-6), (58.8, 0.05, 1e-5), (105.0, 0.02, 2e-6)])
def test_short_circuit_ends_at_the_fault_amps(measured: Measured, pack_v, ohm, henry):
    """After ten time constants the fault stands at V / R; the pack's own ohms are counted at 0.9 of the printed."""
    tau_s = henry / (0.9 * ohm)
    elements = [f"V1 p 0 {pack_v}", f"R1 p a {0.9 * ohm}", f"L1 a s {henry} ic=0", "VS s 0 0"]
    measures = [f"end find i(VS) at={14 * tau_s}", f"t when i(VS)={pack_v / (0.9 * ohm) * (1 - math.exp(-1))}"]
    found = measured(elements, f"{tau_s / 200} {15 * tau_s} 0 {tau_s / 200}", measures)
    assert highest_fault_a(full_charge_v=pack_v, pack_resistance_ohm=ohm) == pytest.approx(found["end"], rel=0.001)
    assert tau_s == pytest.approx(found["t"], rel=0.001)
