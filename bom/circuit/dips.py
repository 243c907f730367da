"""How far the 12 V side dips in its worst moment, and what that asks of coils and of the flasher.

The moment: everything on, the largest filament lights cold, horns have their contact closed.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import inf, isnan, nan

from bom.circuit.bike import LEAST_A, RAIL_MINUS, WEAK, Bike, network
from bom.circuit.live import coil_v, drop_out_v, pull_in_v
from bom.circuit.network import Network
from bom.circuit.solve import Solution
from bom.circuit.waking import riding
from bom.duties.budget import LoadAmps, burning
from bom.physics.inrush import limited_rush_s


@dataclass(frozen=True)
class Dip:
    """The worst moment, solved.

    state      the state it happens in
    filament   the load that lights cold, "" where none does
    rail_v     at the converter's output
    gives_a    of the converter
    limits     the converter gives its limit and no longer holds its volts
    lets_go    the converter switches off instead: a matter of its own peak amps
    coils_v    at each coil that is in
    drops_v    below which each coil lets go
    pulls_v    at each coil while it draws its pull-in amps, all else on and warm
    needs_v    at which each coil surely pulls in
    flasher_v  at the flasher's plus; NaN where there is none
    left_a     amps of the limit that are left for the filament; inf where it does not limit
    running_a  of the filament when warm
    """

    state: str
    filament: str
    rail_v: float
    gives_a: float
    limits: bool
    lets_go: bool
    coils_v: Mapping[str, float]
    drops_v: Mapping[str, float]
    pulls_v: Mapping[str, float]
    needs_v: Mapping[str, float]
    flasher_v: float
    left_a: float
    running_a: float


def worst_dip(bike: Bike) -> Dip | None:
    """Solve the worst moment; None where no state rides or no converter stands."""
    state = riding(bike)
    if state is None or "converter" not in bike.view.parts:
        return None
    budget = bike.view.facts.budget
    on = burning(state, budget.loads.values())
    cold = max((entry for entry in on if entry.load.kind == "filament"), key=lambda entry: entry.amps, default=None)
    warm = _with_peak(bike, network(bike, state, WEAK))
    solution = bike.solve(_rushing(bike, warm, cold, on))
    coils = sorted(coil for coil in bike.positions(state).coils if f"{coil} coil" in solution.amps)
    pulling = bike.solve(_pulling(bike, warm, coils))
    converter = warm.converters[0]
    limits = converter.name in solution.limiting
    running = cold.amps if cold else 0.0
    return Dip(
        state.name,
        cold.load.name if cold else "",
        solution.at(converter.output_plus, converter.output_minus),
        solution.amps[converter.name],
        limits,
        converter.name in solution.let_go,
        {coil: coil_v(bike, coil, solution) for coil in coils},
        {coil: drop_out_v(bike, coil) for coil in coils},
        {coil: coil_v(bike, coil, pulling) for coil in coils},
        {coil: pull_in_v(bike, coil) for coil in coils},
        _flasher_v(solution),
        converter.limit_a - (budget.states[state.name] - running) if limits else inf,
        running,
    )


def below_s(bike: Bike, dip: Dip, volts: float) -> float:
    """Estimate how long the rail stays below some volts: until the filament has warmed to them."""
    margins = bike.view.facts.margins
    if not dip.limits or not dip.filament:
        return 0.0
    if volts <= 0:
        return 0.0
    if dip.left_a <= LEAST_A or volts >= margins.rail_volts:
        return inf
    time_s = limited_rush_s(
        voltage_v=margins.rail_volts,
        running_a=dip.running_a,
        cold_multiple=margins.cold_filament,
        time_constant_s=margins.filament_warm_ms / 1000,
        limit_a=dip.left_a,
        reached_v=volts,
    )
    return float(time_s)


def _with_peak(bike: Bike, circuit: Network) -> Network:
    """Let a converter that does not keep its current give its peak amps, where they are known."""
    peak = float(bike.view.parts["converter"].number("output_peak_a")[0])
    if isnan(peak):
        return circuit
    converters = tuple(
        each if each.keeps_current else replace(each, limit_a=max(each.limit_a, peak)) for each in circuit.converters
    )
    return replace(circuit, converters=converters)


def _rushing(bike: Bike, circuit: Network, cold: LoadAmps | None, on: list[LoadAmps]) -> Network:
    """Make the filament cold and close the horns' contacts."""
    margins = bike.view.facts.margins
    of_load = {bridge.name: bridge.loads[0] for bridge in bike.bridges if bridge.kind == "load"}
    horns = {entry.load.name for entry in on if entry.load.kind == "motor"}
    name = cold.load.name if cold else None
    resistors = tuple(
        replace(each, ohm=each.ohm / margins.cold_filament) if name and of_load.get(each.name) == name else each
        for each in circuit.resistors
    )
    draws = tuple(
        replace(each, amount=each.amount * margins.horn_pulse) if of_load.get(each.name) in horns else each
        for each in circuit.draws
    )
    return replace(circuit, resistors=resistors, draws=draws)


def _pulling(bike: Bike, circuit: Network, coils: list[str]) -> Network:
    """Let every coil draw its pull-in amps; one that is not known keeps what it holds."""
    ohms = {}
    for coil in coils:
        part = bike.view.parts.get(coil)
        volts, pull = (float(part.number(name)[0]) if part else nan for name in ("coil_v", "coil_pull_a"))
        if volts > 0 and pull > 0:
            ohms[f"{coil} coil"] = volts / pull
    resistors = tuple(replace(each, ohm=ohms.get(each.name, each.ohm)) for each in circuit.resistors)
    return replace(circuit, resistors=resistors)


def _flasher_v(solution: Solution) -> float:
    index = solution.compiled.index
    return solution.at("flasher in", RAIL_MINUS) if "flasher in" in index and RAIL_MINUS in index else nan
