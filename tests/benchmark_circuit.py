"""Time the network solver on networks like a bike's loom, against a bare factorisation and solve in the same run.

Run: python tests/benchmark_circuit.py [repeats], with the project installed.
Machines differ and are shared; read the ratio, and the exponent with which time grows from 80 to 2 000 wires.
"""

import math
import random
import sys
import time
from collections.abc import Callable

import numpy as np
from scipy.sparse import csc_array
from scipy.sparse.linalg import splu

from bom.circuit.compiled import Compiled
from bom.circuit.modes import first_modes
from bom.circuit.network import Converter, Draw, Network, Resistor, Source
from bom.circuit.solve import solve

WIRES = (80, 250, 800, 2000)
STATES = 9


def loom(wires: int, state: int) -> Network:
    """Make a pack with posts, fuse, taps and a converter, and a 12 V tree of branches with lamps and a few loops."""
    chance = random.Random(wires)
    resistors = [
        Resistor("post", "cells", "post", 1e-4),
        Resistor("main fuse", "post", "bus", 4e-4),
        Resistor("tap fuse", "bus", "tap", 5e-3),
        Resistor("return", "minus", "cells minus", 1e-4),
    ]
    rail, back, lamps = ["rail"], ["earth"], []
    while len(resistors) < wires:
        number = len(resistors)
        side, name = (rail, "r") if chance.random() < 0.6 else (back, "e")
        # Most wires go on from one of the last points: a loom has branches, not one star.
        start = side[-1 - min(int(chance.expovariate(0.3)), len(side) - 1)]
        resistors.append(Resistor(f"w{number}", start, f"{name}{number}", 10 ** chance.uniform(-3, -1.5)))
        side.append(f"{name}{number}")
        if number % 40 == 0:
            resistors.append(Resistor(f"loop{number}", *chance.sample(side, 2), 0.01))
        if number % 8 == 0:
            burns = chance.random() < (state + 1) / STATES
            watts = 120 / (wires / 8) if burns else 1e-3
            lamps.append(Draw(f"lamp{number}", chance.choice(rail), chance.choice(back), "watts", watts, 6.0))
    traction = Draw("controller", "bus", "minus", "watts", 900.0 * state, 40.0)
    dc = Converter("dc", "tap", "minus", "rail", "earth", 13.5, 25.0, True, 0.005, 0.9, 2.0, 40.0)
    sources = (Source("pack", "cells", "cells minus", 72.0, 0.04),)
    return Network(tuple(resistors), sources, (traction, *lamps), (dc,), ("minus", "earth"))


def least_s(work: Callable[[], object], repeats: int) -> float:
    """Give the least time of several runs."""
    times = []
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return min(times)


def bare(network: Network) -> Callable[[], object]:
    """Give the factorisation and solve of the network's own matrix, as the sparse solver's defaults do them."""
    compiled = Compiled(network)
    volts = solve(network).volts
    compiled.step(volts, first_modes(compiled))  # leaves the figures of this round in the matrix
    table: csc_array = compiled.pattern.table.copy()
    right = np.ones(len(volts))
    return lambda: splu(table).solve(right)


def main() -> None:
    """Print a row for each size."""
    repeats = int(sys.argv[1]) if len(sys.argv) > 1 else 15
    print("| wires | one state ms | nine states ms | bare factorise and solve ms | one state / bare |")
    print("|---|---|---|---|---|")
    one = {}
    for wires in WIRES:
        networks = [loom(wires, state) for state in range(STATES)]
        if not all(solution.settled and not solution.let_go for solution in map(solve, networks)):
            raise RuntimeError(f"the loom of {wires} wires does not hold")
        one[wires] = least_s(lambda last=networks[-1]: solve(last), repeats)
        nine = least_s(lambda all_of=networks: [solve(network) for network in all_of], max(1, repeats // 3))
        floor = least_s(bare(networks[-1]), repeats)
        figures = f"{1e3 * one[wires]:.2f} | {1e3 * nine:.1f} | {1e3 * floor:.3f} | {one[wires] / floor:.0f}"
        print(f"| {wires} | {figures} |")
    growth = math.log(one[WIRES[-1]] / one[WIRES[0]]) / math.log(WIRES[-1] / WIRES[0])
    print(f"\nTime grows with wires to the power {growth:.2f} from {WIRES[0]} to {WIRES[-1]}.")


if __name__ == "__main__":
    main()
