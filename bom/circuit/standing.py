"""Every operating state solved: what stands at the ends that matter, and whether the state can be sustained."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

import numpy as np

from bom.arrangement import TWELVE
from bom.circuit.bike import LEAST_LOAD_V, STRONG, WEAK, Bike, Ends, air_in, network
from bom.circuit.live import coil_v, drop_out_v, has_coil
from bom.circuit.network import Network
from bom.circuit.ohms import Strand
from bom.circuit.solve import Solution
from bom.read.states import State


@dataclass(frozen=True)
class Standing:
    """One state, solved with the pack at its weakest; and at its strongest where the weakest cannot sustain it.

    collapsed  what cannot be sustained, in words; "" where all stands
    settles    False where only the pack's resistance decides: it stands with the strongest pack
    hot_c      temperature of each wire
    """

    state: State
    solution: Solution
    collapsed: str
    settles: bool
    hot_c: Mapping[str, float]

    def amps(self, name: str) -> float:
        """Give the amps of a wire or part, without their sense; zero where it is not in the network."""
        return abs(self.solution.amps.get(name, 0.0))

    def volts(self, plus: str, minus: str) -> float:
        """Give the volts between two points; NaN where nothing joins them."""
        index = self.solution.compiled.index
        return self.solution.at(plus, minus) if plus in index and minus in index else float("nan")


def stand_states(bike: Bike) -> tuple[Standing, ...]:
    """Solve every state of a bike."""
    return tuple(stand(bike, state) for state in bike.view.facts.budget.kinds)


def stand(bike: Bike, state: State) -> Standing:
    """Solve one state: once with wires as warm as their air, then with each as warm as its amps make it."""
    solution, hot_c = _solved(bike, state, WEAK)
    collapsed = collapse(bike, state, solution)
    if not collapsed or bike.view.facts.pack.resistance_ohm.known:
        return Standing(state, solution, collapsed, True, hot_c)
    strong, _ = _solved(bike, state, STRONG)
    return Standing(state, solution, collapsed, bool(collapse(bike, state, strong)), hot_c)


def _solved(bike: Bike, state: State, ends: Ends) -> tuple[Solution, dict[str, float]]:
    cool = bike.solve(network(bike, state, ends))
    hot_c = {
        name: _warm(strand, cool.amps.get(name, 0.0), air_in(bike, bike.zones[name], state))
        for name, strand in bike.strands.items()
    }
    return bike.solve(_held_down(bike, state, network(bike, state, ends, hot_c=hot_c))), hot_c


def _held_down(bike: Bike, state: State, circuit: Network) -> Network:
    """Let regeneration lift the bus no higher than it goes: the controller holds its own terminals there."""
    if state.cells != "highest":
        return circuit
    solution = bike.solve(circuit)
    if "controller plus" not in solution.compiled.index:
        return circuit
    over_v = solution.at("controller plus", "controller minus") - bike.view.facts.pack.highest_bus_v.high
    sources = tuple(
        replace(source, volts=source.volts - max(over_v, 0.0)) if source.name == "pack" else source
        for source in circuit.sources
    )
    return replace(circuit, sources=sources)


def _warm(strand: Strand, amps: float, air: float) -> float:
    """Give a wire's temperature: its rise goes with the square of its amps, up to the limit at its ampacity.

    Where the ampacity is not known the limit stands; a burst never lasts long enough to pass it by far.
    """
    if amps == 0.0 or air >= strand.limit_c:
        return air
    if np.isnan(strand.ampacity_a) or strand.ampacity_a <= 0.0:
        return strand.limit_c
    return air + (strand.limit_c - air) * min((amps / strand.ampacity_a) ** 2, 1.0)


def collapse(bike: Bike, state: State, solution: Solution) -> str:
    """Say what a state cannot sustain: a draw of watts past its crest, a converter, a controller, a coil."""
    told = [f"no answer was found for {state.name}"] if not solution.settled else []
    if "converter" not in bike.view.parts:
        return "; ".join([*told, *_below(bike, state, solution)])  # its open place is told elsewhere
    lets_go = [name for name in solution.let_go if name != "converter" or _fed(bike, state)]
    dark = {} if "converter" in lets_go else _dark(bike, state, solution)
    told += [f"the {name} lets go" for name in lets_go if name not in dark]
    told += [f"should be on and has {volts:.1f} V: {name}" for name, volts in dark.items()]
    told += _below(bike, state, solution)
    told += [
        f"the coil of the {coil} drops out at {max(coil_v(bike, coil, solution), 0.0):.1f} V"
        for coil in sorted(bike.positions(state).coils)
        if coil_v(bike, coil, solution) < drop_out_v(bike, coil) and has_coil(bike, coil)
    ]
    return "; ".join(told)


def _dark(bike: Bike, state: State, solution: Solution) -> dict[str, float]:
    """Give the volts of each load that is on in this state and that nothing feeds: behind a relay that is out, say."""
    lit, index = bike.positions(state), solution.compiled.index
    volts = {
        bridge.name: solution.at(bridge.start, bridge.end)
        for bridge in bike.bridges
        if lit.shines(bridge) and bridge.start in index and bridge.end in index
    }
    return {name: max(0.0, held) for name, held in volts.items() if not held >= LEAST_LOAD_V}


def _below(bike: Bike, state: State, solution: Solution) -> list[str]:
    """Name the controller where it stands below its lowest supply while it should drive."""
    least, drives = bike.view.facts.job.controller.supply_min, state.traction in ("continuous", "peak", "idle")
    if least is None or not drives or "controller plus" not in solution.compiled.index:
        return []
    volts = solution.at("controller plus", "controller minus")
    return [f"the controller has {volts:.1f} V where it needs {least:g} V"] if volts < least else []


def _fed(bike: Bike, state: State) -> bool:
    """Tell whether the converter should run: with the key off only one that is always on does."""
    return state.key or bike.view.facts.key_at == TWELVE


def lamp_volts(standing: Standing, bike: Bike) -> dict[str, float]:
    """Give the volts at every load that is on."""
    lit = bike.positions(standing.state)
    return {bridge.name: standing.volts(bridge.start, bridge.end) for bridge in bike.bridges if lit.shines(bridge)}
