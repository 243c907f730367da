"""Time the solved states and the whole fault walk of looms laid out from a job, from 80 to 2 000 wires.

Run: python tests/benchmark_walks.py [repeats], with the project installed.
Beside each stands the bare sparse factorisation and solve of the same matrix, timed in the same run: machines
differ and are shared, so read the ratio, and the exponent with which time grows.
"""

import math
import sys
import time
import tomllib
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import numpy as np
from scipy.sparse.linalg import splu

from bom.build import Build
from bom.circuit.bike import WEAK, Bike, bike_of, network
from bom.circuit.compiled import Compiled
from bom.circuit.faults import walk_faults
from bom.circuit.modes import first_modes
from bom.circuit.solve import solve
from bom.circuit.standing import stand_states
from bom.data import folder
from bom.duties.budget import budget
from bom.duties.envelope import envelope
from bom.judge.loom_view import LoomView
from bom.loom.layout import lay_out
from bom.read.job import JobFile
from bom.session import run

JOB = folder("templates") / "jobs" / "street-72.toml"
MORE_LAMPS = (0, 85, 360, 960)  # two wires each


def bike_with(build: Build, lamps: int) -> tuple[Bike, int]:
    """Lay out the starter job with more lamps; each new place gets the part that stands at a place of its family."""
    data = tomllib.loads(Path(str(JOB)).read_text(encoding="utf-8"))
    lamp = {"kind": "filament", "power": "3 W", "on": ["night"], "run": "rear"}
    data["loads"] += [{"name": f"lamp {n}", "circuit": f"extra {n}", **lamp} for n in range(lamps)]
    job = JobFile.model_validate(data)
    facts = build.facts
    facts = replace(facts, job=job, budget=budget(job, facts.margins, facts.counted.hold_a, facts.budget.kinds))
    loom = lay_out(job, facts.margins, facts.key_at)
    of_family = {entry.place.family: entry.part for entry in build.filled.values()}
    parts = {
        place.name: build.filled[place.name].part if place.name in build.filled else of_family[place.family]
        for place in loom.places
        if place.name in build.filled or place.family in of_family
    }
    return bike_of(LoomView(loom, facts, parts, envelope(loom, facts))), len(loom.wires)


def least_s(work: Callable[[], object], repeats: int) -> float:
    """Give the least CPU time of several runs."""
    times = []
    for _ in range(repeats):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return min(times)


def bare(bike: Bike) -> Callable[[], object]:
    """Give the factorisation and solve of the matrix of one state."""
    circuit = network(bike, bike.view.facts.budget.kinds[-1], WEAK)
    compiled, volts = Compiled(circuit), solve(circuit).volts
    compiled.step(volts, first_modes(compiled))  # leaves the figures of this round in the matrix
    table, right = compiled.pattern.table.copy(), np.ones(len(volts))
    return lambda: splu(table).solve(right)


def main() -> None:
    """Print a row for each size."""
    repeats = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    build = run(Path(str(JOB)), folder("catalog"), lambda _: None).build
    print("| wires | states ms | shorts | fault walk ms | both ms | bare ms | both / bare |")
    print("|---|---|---|---|---|---|---|")
    sizes: list[tuple[int, float]] = []
    for lamps in MORE_LAMPS:
        bike, wires = bike_with(build, lamps)
        states = least_s(lambda bike=bike: stand_states(bike), repeats)
        walk = least_s(lambda bike=bike: walk_faults(bike), repeats)
        floor = least_s(bare(bike), repeats * 4)
        both, shorts = states + walk, len(walk_faults(bike))
        row = f"{1e3 * states:.0f} | {shorts} | {1e3 * walk:.0f} | {1e3 * both:.0f} | {1e3 * floor:.2f}"
        print(f"| {wires} | {row} | {both / floor:.0f} |")
        sizes.append((wires, both))
    growth = math.log(sizes[-1][1] / sizes[0][1]) / math.log(sizes[-1][0] / sizes[0][0])
    print(f"\nTime grows with wires to the power {growth:.2f} from {sizes[0][0]} to {sizes[-1][0]}.")


if __name__ == "__main__":
    main()
