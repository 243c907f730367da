"""Each lamp return opened once: what a lamp that lost its earth feeds backwards through the lamps beside it."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from bom.circuit.bike import FRAME, RAIL_MINUS, WEAK, Bike, network
from bom.circuit.network import Network, Resistor
from bom.circuit.positions import Positions
from bom.circuit.waking import riding
from bom.loom.model import Bridge
from bom.read.states import State

PASSES_BACK = ("filament", "motor", "coil")  # an LED blocks
LOST = "lost earth"


@dataclass(frozen=True)
class Backfed:
    """A return that came off, and the lamp that gets most though it is off, or gets its volts backwards.

    earth  wire of the return, or "body of the …"
    lamp   as the loom names it: load and side
    volts  at it, below zero where they stand backwards
    state  in which it was solved
    """

    earth: str
    lamp: str
    volts: float
    state: str


@dataclass(frozen=True)
class Earth:
    """A return that several lights share: by a wire that opens, or by their housing's body."""

    name: str
    bridges: tuple[Bridge, ...]
    wire: str = ""


def backfed(bike: Bike) -> tuple[Backfed, ...]:
    """Open each return that lights of different feeds share, and give the lamp that is worst off with each."""
    states = _states(bike)
    if "converter" not in bike.view.parts or not states:
        return ()
    found = ((earth, max(_fed(bike, earth, states), key=_size, default=None)) for earth in _earths(bike))
    return tuple(worst or Backfed(earth.name, "", 0.0, states[0].name) for earth, worst in found)


def _size(fed: Backfed) -> float:
    return round(abs(fed.volts), 6)  # of lamps alike the first is named, whatever a machine's last digits say


def _states(bike: Bike) -> tuple[State, ...]:
    """Take the state with most loads on, and the one by night with the fewest."""
    most, budget = riding(bike), bike.view.facts.budget
    nights = [state for state in budget.kinds if state.key and state.contactor and "night" in state.conditions]
    fewest = min(nights, key=lambda state: budget.states[state.name], default=None)
    return tuple(dict.fromkeys(state for state in (most, fewest) if state is not None))


def _earths(bike: Bike) -> Iterator[Earth]:
    """List what lights of different feeds have in common on their way home: a wire, or a housing."""
    lights = [bridge for bridge in bike.bridges if bridge.kind == "load" and bridge.loads]
    seen = set()
    for point in dict.fromkeys(bridge.end for bridge in lights):
        wires = [wire.name for wire in bike.view.loom.wires if point in (wire.start, wire.end)]
        group = tuple(bridge for bridge in lights if bridge.end == point)
        if point not in (FRAME, RAIL_MINUS) and len(wires) == 1 and _differ(group):
            seen.add(group)
            yield Earth(wires[0], group, wires[0])
    loads = {load.name: load for load in bike.view.facts.job.loads}
    housings: dict[tuple[str, str], list[Bridge]] = {}
    for bridge in lights:
        load = loads[bridge.loads[0]]
        side = bridge.name.removeprefix(load.name)
        housings.setdefault((load.same_lamp_as or load.name, side), []).append(bridge)
    for (name, side), shared in housings.items():
        if _differ(tuple(shared)) and tuple(shared) not in seen:
            yield Earth(f"body of the {name}{side}", tuple(shared))


def _differ(group: tuple[Bridge, ...]) -> bool:
    """Tell whether the lights of a return hang on more than one feed."""
    return len({bridge.start for bridge in group}) > 1


def _fed(bike: Bike, earth: Earth, states: tuple[State, ...]) -> Iterator[Backfed]:
    """Give every lamp that has volts though it is off, or has them backwards."""
    for state in states:
        standing = bike.positions(state)
        circuit = network(bike, state, WEAK, without=earth.wire, added=_off(bike, standing))
        solution = bike.solve(circuit if earth.wire else _lost(circuit, earth))
        ends = {bridge.name: LOST for bridge in earth.bridges} if not earth.wire else {}
        for bridge in bike.bridges:
            end = ends.get(bridge.name, bridge.end)
            if bridge.kind == "load" and {bridge.start, end} <= solution.compiled.index.keys():
                volts = solution.at(bridge.start, end)
                if volts < 0 or (volts > 0 and not standing.shines(bridge)):
                    yield Backfed(earth.name, bridge.name, volts, state.name)


def _off(bike: Bike, standing: Positions) -> tuple[Resistor, ...]:
    """Give the loads that are off and yet pass current either way."""
    budget = bike.view.facts.budget
    off = [bridge for bridge in bike.bridges if bridge.kind == "load" and not standing.closed(bridge)]
    entries = [(bridge, budget.loads[bridge.loads[0]]) for bridge in off]
    return tuple(
        Resistor(bridge.name, bridge.start, bridge.end, budget.rail_v / entry.amps)
        for bridge, entry in entries
        if entry.load.kind in PASSES_BACK and entry.amps > 0
    )


def _lost(circuit: Network, earth: Earth) -> Network:
    """Let the lights of a housing end in its body alone."""
    names = {bridge.name for bridge in earth.bridges}
    resistors = tuple(replace(each, end=LOST) if each.name in names else each for each in circuit.resistors)
    draws = tuple(replace(each, minus=LOST) if each.name in names else each for each in circuit.draws)
    return replace(circuit, resistors=resistors, draws=draws)
