"""A bike whose contacts move: the same points and elements throughout, contacts open or closed as coils tell them."""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isnan

import numpy as np
import numpy.typing as npt

from bom.circuit.bike import WEAK, Bike, network
from bom.circuit.compiled import Compiled
from bom.circuit.network import Resistor
from bom.circuit.positions import Positions
from bom.circuit.solve import Solution, solve_compiled
from bom.loom.bridges import CLOSER
from bom.read.states import State

OPEN_S = 1e-8  # siemens of what is open: little enough to carry nothing, enough to keep the points in one network
DROP_OUT_SHARE = 0.1  # of a coil's volts, where its own figure is not known: common practice, 5 to 10 %
MOST_ROUNDS = 12
DEAD_V = 6.0
PRECHARGE_RELAY = "precharge relay"
DRIVE = "the drive"
SEEN_KINDS = ("load", "meter", "pilot")
DRIVE_KINDS = ("controller", "key input")  # without either the motor stops


@dataclass(frozen=True)
class Live:
    """A bike in one state with every contact in the network, and what opens and closes.

    columns  column of each resistor of the network, by name
    """

    bike: Bike
    state: State
    compiled: Compiled
    columns: Mapping[str, int]

    def solve(
        self, positions: Positions, gone: Collection[str] = (), start: npt.NDArray[np.float64] | None = None
    ) -> Solution:
        """Solve with these positions, and without some wires or parts; from the volts of an earlier answer."""
        shut = {bridge.name for bridge in self.bike.bridges if bridge.kind in CONTACTS and not positions.closed(bridge)}
        siemens = self.compiled.siemens.copy()
        for name in (*shut, *gone):
            if name in self.columns:
                siemens[self.columns[name]] = OPEN_S
        return solve_compiled(self.compiled.with_siemens(siemens), start)


CONTACTS = ("contact", "plug")


def live(bike: Bike, state: State, *, without_source: str = "", added: Sequence[Resistor] = ()) -> Live:
    """Put every contact of a bike into one network.

    without_source  "pack" or "converter": one that has failed
    added           resistors beside the loom's own
    """
    standing = bike.positions(state)
    closed = replace(standing, key=True, cap=True, coils=bike.coils, fills=True, closes=True, ways=True)
    whole = network(bike, state, WEAK, positions=closed, added=added)
    if without_source:
        whole = replace(
            whole,
            sources=tuple(source for source in whole.sources if source.name != without_source),
            converters=tuple(converter for converter in whole.converters if converter.name != without_source),
        )
    compiled = Compiled(whole, bike.view.memory)
    return Live(bike, state, compiled, {resistor.name: n for n, resistor in enumerate(whole.resistors)})


@dataclass(frozen=True)
class Settled:
    """Where a bike comes to rest.

    turns  names of the coils that moved, in their order, each with True where it pulled in
    """

    positions: Positions
    solution: Solution
    turns: tuple[tuple[str, bool], ...]


def settle(
    bike: Live, positions: Positions, gone: Collection[str] = (), start: npt.NDArray[np.float64] | None = None
) -> Settled:
    """Let coils pull in and drop out until none moves; the closer drives the contactor alone once the bus is full."""
    turns: list[tuple[str, bool]] = []
    solution = bike.solve(positions, gone, start)
    for _ in range(MOST_ROUNDS):
        moved = _moved(bike.bike, positions, solution)
        if moved == positions:
            break
        turns += [(coil, True) for coil in sorted(moved.coils - positions.coils)]
        turns += [(coil, False) for coil in sorted(positions.coils - moved.coils)]
        positions = moved
        solution = bike.solve(positions, gone, solution.volts)
    return Settled(positions, solution, tuple(turns))


def _moved(bike: Bike, positions: Positions, solution: Solution) -> Positions:
    """Give the positions that the coils' volts ask for."""
    coils = set(positions.coils)
    for coil in bike.coils:
        volts = coil_v(bike, coil, solution)
        if coil in coils and volts < drop_out_v(bike, coil):
            coils.discard(coil)
        elif coil not in coils and volts >= pull_in_v(bike, coil):
            coils.add(coil)
    fed = closer_v(bike, solution) >= DEAD_V
    closes = fed and (positions.closes or PRECHARGE_RELAY in coils or PRECHARGE_RELAY not in bike.coils)
    fills = fed and not closes
    return replace(positions, coils=frozenset(coils), fills=fills, closes=closes)


def lit(bike: Bike, settled: Settled) -> set[str]:
    """Name what has volts to speak of: loads, the meter, and the drive where all that it needs has."""
    index, solution = settled.solution.compiled.index, settled.solution
    stands = {
        bridge.name: settled.positions.closed(bridge) and solution.at(bridge.start, bridge.end) >= DEAD_V
        for bridge in bike.bridges
        if bridge.kind in (*SEEN_KINDS, *DRIVE_KINDS) and bridge.start in index
    }
    out = {
        bridge.loads[0] if bridge.loads else bridge.name
        for bridge in bike.bridges
        if bridge.kind in SEEN_KINDS and stands.get(bridge.name, False)
    }
    drive = [stands[bridge.name] for bridge in bike.bridges if bridge.kind in DRIVE_KINDS and bridge.name in stands]
    return out | {DRIVE} if drive and all(drive) else out


def coil_v(bike: Bike, coil: str, solution: Solution) -> float:
    """Give the volts at a coil; none where it is joined to nothing."""
    return _across(solution, f"{coil} coil plus", _coil_minus(bike, coil))


def has_coil(bike: Bike, coil: str) -> bool:
    """Tell whether the loom's wires reach a coil."""
    return any(bridge.name == f"{coil} coil" for bridge in bike.bridges)


def _coil_minus(bike: Bike, coil: str) -> str:
    return next((bridge.end for bridge in bike.bridges if bridge.name == f"{coil} coil"), f"{coil} coil minus")


def closer_v(bike: Bike, solution: Solution) -> float:
    """Give the volts that the closer lives on."""
    return _across(solution, f"{CLOSER} in", f"{CLOSER} minus")


def has_gone_to_sleep(bike: Bike, solution: Solution) -> bool:
    """Tell whether the converter's enable has lost its volts."""
    enable = next((bridge for bridge in bike.bridges if bridge.kind == "enable"), None)
    return enable is not None and _across(solution, enable.start, enable.end) < DEAD_V


def _across(solution: Solution, plus: str, minus: str) -> float:
    if plus not in solution.compiled.index or minus not in solution.compiled.index:
        return 0.0
    volts = solution.at(plus, minus)
    return 0.0 if isnan(volts) else volts


def pull_in_v(bike: Bike, coil: str) -> float:
    """Give the volts at which a coil surely pulls in; where not known, three quarters of its own (IEC 61810-1)."""
    return _figure(bike, coil, "coil_min_v", 0.75)


def drop_out_v(bike: Bike, coil: str) -> float:
    """Give the volts below which a coil lets go."""
    return _figure(bike, coil, "coil_drop_out_v", DROP_OUT_SHARE)


def _figure(bike: Bike, coil: str, column: str, share: float) -> float:
    part = bike.view.parts.get(coil)
    value = float(part.number(column)[0]) if part else float("nan")
    coil_volts = float(part.number("coil_v")[0]) if part else float("nan")
    return share * (12.0 if isnan(coil_volts) else coil_volts) if isnan(value) else value
