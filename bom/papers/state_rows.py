"""The solved states as rows: what stands where, and each wire in its worst state."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isnan, nan

from bom.build import Build
from bom.circuit.bike import RAIL_MINUS, Bike
from bom.circuit.standing import Standing, lamp_volts
from bom.papers.wire_rows import wire_numbers


@dataclass(frozen=True)
class StateRow:
    """One state; NaN where nothing joins two points.

    input_v, input_a  of the converter
    rail_v            at the fuse box
    load, load_v      the load that is on with the fewest volts, "" where none is on
    pack_a            out of the pack; below zero into it
    wire, wire_c      the hottest wire, and what it stands for ever
    lets_go           what cannot be sustained, "" where all stands
    """

    name: str
    cells: str
    pack_v: float
    bus_v: float
    input_v: float
    input_a: float
    rail_v: float
    load: str
    load_v: float
    pack_a: float
    wire: str
    wire_c: float
    limit_c: float
    lets_go: str


@dataclass(frozen=True)
class WireAmps:
    """One wire in the state in which it carries most."""

    number: str
    wire: str
    state: str
    burst: bool
    amps: float
    ampacity_a: float
    hot_c: float
    limit_c: float


def state_rows(build: Build) -> list[StateRow]:
    """Give every state in the order of the table of states."""
    walks = build.walks
    return [_row(standing, walks.bike) for standing in walks.states]


def _row(standing: Standing, bike: Bike) -> StateRow:
    loads = {name: volts for name, volts in lamp_volts(standing, bike).items() if not isnan(volts)}
    load = min(loads, key=lambda name: round(loads[name], 3), default="")
    # Rounded, so that of wires alike the first is named whatever the last digits of a machine say.
    wire = max(standing.hot_c, key=lambda name: round(standing.hot_c[name], 3), default="")
    only = "" if standing.settles else "with the pack at its weakest only: "
    return StateRow(
        name=standing.state.name,
        cells=standing.state.cells,
        pack_v=standing.volts("pack plus", "pack minus"),
        bus_v=standing.volts("controller plus", "controller minus"),
        input_v=standing.volts("converter in", "converter minus"),
        input_a=standing.amps("converter return"),
        rail_v=standing.volts("fuse box in", RAIL_MINUS),
        load=load,
        load_v=loads.get(load, nan),
        pack_a=standing.solution.amps.get("pack", nan),
        wire=wire,
        wire_c=standing.hot_c.get(wire, nan),
        limit_c=bike.strands[wire].limit_c if wire else nan,
        lets_go=f"{only}{standing.collapsed}" if standing.collapsed else "",
    )


def wire_amps(build: Build) -> list[WireAmps]:
    """Give every wire of the circuit in its worst state, in the order of the loom; motor leads are no part of it."""
    numbers = wire_numbers(build)
    return [_wire(name, build, numbers) for name, strand in build.walks.bike.strands.items() if strand.wire.count == 1]


def _wire(name: str, build: Build, numbers: Mapping[str, str]) -> WireAmps:
    walks = build.walks
    worst = max(walks.states, key=lambda standing: round(standing.amps(name), 6))
    strand = walks.bike.strands[name]
    burst = worst.state.traction == "peak"
    hot_c = worst.hot_c[name]
    return WireAmps(
        numbers[name], name, worst.state.name, burst, worst.amps(name), strand.ampacity_a, hot_c, strand.limit_c
    )
