"""What the lamps of the side that does not flash get through a telltale that lies across the sides."""

from dataclasses import dataclass

from bom.circuit.bike import Bike
from bom.circuit.standing import Standing
from bom.loom.model import FAR_SIDE, Bridge


@dataclass(frozen=True)
class FarSide:
    """The far lamp that gets most.

    load        its name in the load list
    kind        filament or LED
    volts       at it
    amps        through it
    volts_share of the rail
    amps_share  of its own amps
    state       in which it was solved
    """

    load: str
    kind: str
    volts: float
    amps: float
    volts_share: float
    amps_share: float
    state: str


def far_side(bike: Bike, states: tuple[Standing, ...]) -> FarSide | None:
    """Find the far lamp that gets most amps of its own; None where no telltale lies across, or nothing indicates."""
    loads = bike.view.facts.budget.loads
    lamps = [
        bridge
        for bridge in bike.bridges
        if bridge.kind == "load" and bridge.gate == FAR_SIDE and not loads[bridge.loads[0]].load.is_telltale
    ]
    found = [
        _far(bike, bridge, standing)
        for standing in states
        if "indicate" in standing.state.conditions
        for bridge in lamps
        if bridge.name in standing.solution.amps
    ]
    return max(found, key=lambda far: round(far.amps_share, 6), default=None)


def _far(bike: Bike, bridge: Bridge, standing: Standing) -> FarSide:
    budget, name = bike.view.facts.budget, bridge.loads[0]
    entry = budget.loads[name]
    volts, amps = standing.volts(bridge.start, bridge.end), standing.amps(bridge.name)
    shares = (volts / budget.rail_v, amps / entry.amps if entry.amps else 0.0)
    return FarSide(name, entry.load.kind, volts, amps, *shares, standing.state.name)
