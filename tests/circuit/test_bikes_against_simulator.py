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
from bom.circuit.network import Network, Resistor, Source
from bom.circuit.shorts import shorted
from bom.circuit.solve import Solution, solve

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
    """Each draw goes to the simulator as the resistor it amounts to; that it takes its watts or amps is Worked here."""
    build = converted(starter)
    states = {state.name: network(build.walks.bike, state, WEAK) for state in build.facts.budget.kinds}
    solved = {name: solve(circuit) for name, circuit in states.items()}
    standing = {name: circuit for name, circuit in states.items() if not solved[name].let_go}
    assert len(standing) >= 8
    linear = {name: _as_resistors(circuit, solved[name]) for name, circuit in standing.items()}
    answers = simulated(linear)
    for name, circuit in linear.items():
        ground = grounds(circuit)
        ours = {point: solved[name].at(point, ground[point]) for point in answers[name]}
        assert ours == pytest.approx(answers[name], rel=0.001, abs=1e-4), name


def _as_resistors(circuit: Network, solution: Solution) -> Network:
    """Check the law of each draw and converter, and put what it amounts to in its place."""
    resistors, sources = list(circuit.resistors), list(circuit.sources)
    for draw in circuit.draws:
        volts, amps = solution.at(draw.plus, draw.minus), solution.amps[draw.name]
        taken = amps * volts if draw.kind == "watts" else amps
        assert volts < draw.least_v or taken == pytest.approx(draw.amount, rel=1e-6)
        ohm = volts / amps if amps and volts else draw.least_v / draw.amount
        resistors.append(Resistor(f"draw {draw.name}", draw.plus, draw.minus, ohm))
    for c in circuit.converters:
        volts, out_v = solution.at(c.input_plus, c.input_minus), solution.at(c.output_plus, c.output_minus)
        given = solution.amps[c.name]
        assert out_v == pytest.approx(c.output_v - given * c.output_ohm, abs=1e-6)
        watts = max(given, 0.0) * out_v / c.efficiency + c.idle_w
        resistors.append(Resistor(f"input of {c.name}", c.input_plus, c.input_minus, volts**2 / watts))
        sources.append(Source(c.name, c.output_plus, c.output_minus, c.output_v, c.output_ohm))
    return Network(tuple(resistors), tuple(sources), references=circuit.references)


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
