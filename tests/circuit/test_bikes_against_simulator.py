"""The looms of the starter jobs, in every state and with shorts, against the public circuit simulator.

Published: every expected value is what ngspice prints, run first hand in the test itself. Skipped without it.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace

import numpy as np
import pytest

from bom.build import Build
from bom.circuit.bike import WEAK, network
from bom.circuit.compiled import Compiled
from bom.circuit.fault_network import fault_network
from bom.circuit.network import Network, Resistor
from bom.circuit.shorts import shorted
from bom.circuit.solve import solve

STARTERS = ("street-72", "moped-48", "frame-return-105")
SHORT_OHM = 1e-3
EVERY = 7  # one short in so many: enough to meet every circuit

Converted = Callable[..., Build]
Simulated = Callable[[Mapping[str, Network]], dict[str, dict[str, float]]]
Grounds = Callable[[Network], dict[str, str]]


@pytest.mark.parametrize("starter", STARTERS)
def test_every_state_has_the_volts_that_the_simulator_finds(
    starter: str, converted: Converted, simulated: Simulated, grounds: Grounds
) -> None:
    build = converted(starter)
    states = {state.name: network(build.walks.bike, state, WEAK) for state in build.facts.budget.kinds}
    standing = {name: circuit for name, circuit in states.items() if not solve(circuit).let_go}
    assert len(standing) >= 8
    answers = simulated(standing)
    for name, circuit in standing.items():
        solution, ground = solve(circuit), grounds(circuit)
        ours = {point: solution.at(point, ground[point]) for point in answers[name]}
        assert ours == pytest.approx(answers[name], rel=0.001, abs=1e-4), name


@pytest.mark.parametrize("strongest", [True, False])
@pytest.mark.parametrize("starter", STARTERS)
def test_shorts_carry_the_amps_that_the_simulator_finds(
    starter: str, converted: Converted, simulated: Simulated, *, strongest: bool
) -> None:
    circuit = fault_network(converted(starter).walks.bike, strongest=strongest)
    compiled = Compiled(circuit)
    minus = {compiled.islands[compiled.index[point]]: point for point in ("minus post", "12 V rail minus")}
    shorts = [
        (point, minus[compiled.islands[number]])
        for point, number in list(compiled.index.items())[::EVERY]
        if compiled.islands[number] in minus and point not in minus.values()
    ]
    pairs = np.array([[compiled.index[a], compiled.index[b]] for a, b in shorts], dtype=np.intp)
    ours = np.concatenate([some.amps for some in shorted(compiled, pairs, short_ohm=SHORT_OHM)])
    answers = simulated({f"{a} to {b}": _with_short(circuit, a, b) for a, b in shorts})
    theirs = [(answers[f"{a} to {b}"][a] - answers[f"{a} to {b}"][b]) / SHORT_OHM for a, b in shorts]
    assert len(shorts) > 5
    assert ours == pytest.approx(np.array(theirs), rel=0.001, abs=0.01)


def _with_short(circuit: Network, point: str, back: str) -> Network:
    return replace(circuit, resistors=(*circuit.resistors, Resistor("short", point, back, SHORT_OHM)))
