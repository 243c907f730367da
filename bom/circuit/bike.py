"""From a loom and the parts in it to the network of one state."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from math import isnan

from bom.circuit.fault import COMMON_MINUS
from bom.circuit.network import Converter, Draw, Network, Resistor, Source
from bom.circuit.ohms import Strand, bridge_ohm, strand_ohms, strands
from bom.circuit.positions import Positions, positions_of
from bom.circuit.solve import Solution, solve
from bom.judge.loom_view import LoomView
from bom.loom.bridges import COIL_FAMILIES
from bom.loom.model import Bridge
from bom.loom.relay_names import switch_relays
from bom.read.states import State

PACK_MINUS, RAIL_MINUS, FRAME = "pack minus", "12 V rail minus", "frame"
REFERENCES = (PACK_MINUS, "12 V minus", RAIL_MINUS, FRAME)
COLD_C = 5.0
LEAST_LOAD_V = 6.0  # below about half its volts a 12 V load is dead
COMMON_OHM = 1e-3
BUFFER_V = 12.8  # of a full lead battery at rest
LEAST_A = 1e-9
RESISTING = ("fuse", "contact", "plug", "shunt", "resistor", "sense")


@dataclass(frozen=True)
class Ends:
    """Which end of what is not known exactly a network takes.

    strong  the pack as strong, or as weak, as it may be
    worn    contacts, joints and fuses at their sound worst, or at their best
    """

    strong: bool
    worn: bool


WEAK = Ends(strong=False, worn=True)
STRONG = Ends(strong=True, worn=True)


@dataclass(frozen=True)
class Bike:
    """A finished build as the circuit sees it."""

    view: LoomView
    strands: Mapping[str, Strand]
    bridges: tuple[Bridge, ...]
    coils: frozenset[str] = field(default=frozenset())

    def solve(self, circuit: Network) -> Solution:
        """Solve a network of this bike, or one like it."""
        return solve(circuit, self.view.memory)

    @property
    def joined(self) -> bool:
        """Tell whether the converter joins pack minus and 12 V minus, or may: one that is not known is taken to."""
        part = self.view.parts.get("converter")
        return part is not None and part.word("isolated")[0] != "yes"

    @cached_property
    def bridge_resistors(self) -> Mapping[tuple[str, bool], Resistor]:
        """Give each bridge that is a plain resistor by its name: at its sound worst (True) and at its best."""
        parts, margins = self.view.parts, self.view.facts.margins
        return {
            (bridge.name, worn): Resistor(
                bridge.name,
                bridge.start,
                bridge.end,
                bridge_ohm(bridge, parts.get(bridge.place), margins, high=worn),
            )
            for bridge in self.bridges
            if bridge.kind in RESISTING
            for worn in (True, False)
        }

    @cached_property
    def zones(self) -> Mapping[str, str]:
        """Give the zone of each wire."""
        return {name: self.view.loom.place(name).zone for name in self.strands}

    def positions(self, state: State) -> Positions:
        """Give the positions of a state."""
        loads = {load.name: load for load in self.view.facts.job.loads}
        return positions_of(state, loads, self.coils, switch_relays(self.view.facts.job.donor.items))

    def pack(self, state: State, ends: Ends) -> tuple[float, float]:
        """Give the pack's own volts and its ohms in a state."""
        pack, control = self.view.facts.pack, self.view.facts.job.controller
        ohm = pack.resistance_ohm.low if ends.strong else pack.resistance_ohm.high
        if state.air_c is not None and state.air_c < COLD_C and not ends.strong:
            ohm *= self.view.facts.margins.cold_aged_factor
        if state.cells == "highest":
            return pack.highest_bus_v.high - (control.regen or 0.0) * ohm, ohm
        span = {"full": pack.full_charge_v, "nominal": pack.nominal_v, "empty": pack.lowest_rest_v}[state.cells]
        return span.low, ohm


def bike_of(view: LoomView) -> Bike:
    """Work out what every state of a build has in common."""
    coils = frozenset(place.name for place in view.loom.places if place.family in COIL_FAMILIES)
    points = {point for wire in view.loom.wires for point in (wire.start, wire.end)}
    places = {place.name for place in view.loom.places}
    bridges = tuple(
        bridge
        for bridge in view.loom.bridges
        if {bridge.start, bridge.end} <= points and (not bridge.place or bridge.place in places)
    )
    return Bike(view, strands(view), bridges, coils)


def network(
    bike: Bike,
    state: State,
    ends: Ends,
    *,
    positions: Positions | None = None,
    hot_c: Mapping[str, float] | None = None,
    without: str = "",
    added: Sequence[Resistor] = (),
) -> Network:
    """Build the network of a state.

    positions  where contacts stand otherwise than the state says
    hot_c      temperature of each wire; one not named is as warm as its air
    without    a wire that is open
    added      resistors beside the loom's own: a bond, a short
    """
    standing = positions or bike.positions(state)
    resistors = [*_wires(bike, state, ends, hot_c or {}, without), *added]
    draws: list[Draw] = []
    sources = [Source("pack", "pack plus", PACK_MINUS, *bike.pack(state, ends))]
    for bridge in bike.bridges:
        if not standing.closed(bridge) or (bridge.kind == "controller" and _feeds_nothing(bike, state, standing)):
            continue
        if bridge.kind in RESISTING:
            resistors.append(bike.bridge_resistors[bridge.name, ends.worn])
        elif bridge.kind == "buffer":
            sources.append(buffer_battery(bike, bridge, strong=ends.strong))
        elif bridge.kind != "pack":
            _take(_drawn(bike, bridge, state), resistors, draws)
    asleep = bike.view.facts.sleeps and not standing.key
    converters = [_converter(bike)] if "converter" in bike.view.parts and not asleep else []
    resistors += common_minus(bike)
    return Network(tuple(resistors), tuple(sources), tuple(draws), tuple(converters), REFERENCES)


def _feeds_nothing(bike: Bike, state: State, standing: Positions) -> bool:
    """Tell whether regeneration has no pack to go to: behind an open contactor its amps would lift volts no end."""
    return state.traction == "regeneration" and "contactor" in bike.coils - standing.coils


def air_in(bike: Bike, zone: str, state: State) -> float:
    """Give the air of a zone in a state."""
    if state.air_c is not None:
        return state.air_c
    value: float = getattr(bike.view.facts.job.ambient, zone.replace(" ", "_"))
    return value


def _wires(bike: Bike, state: State, ends: Ends, hot_c: Mapping[str, float], without: str) -> list[Resistor]:
    some = [strand for name, strand in bike.strands.items() if name != without and strand.wire.count == 1]
    air_of = {zone: air_in(bike, zone, state) for zone in set(bike.zones.values())}
    at_c = [hot_c[name] if name in hot_c else air_of[bike.zones[name]] for name in (each.wire.name for each in some)]
    ohms = strand_ohms(some, at_c, bike.view.facts.margins, worn=ends.worn)
    return [Resistor(each.wire.name, each.wire.start, each.wire.end, ohm) for each, ohm in zip(some, ohms, strict=True)]


def _take(element: Resistor | Draw | None, resistors: list[Resistor], draws: list[Draw]) -> None:
    if isinstance(element, Resistor):
        resistors.append(element)
    elif element is not None:
        draws.append(element)


def _drawn(bike: Bike, bridge: Bridge, state: State) -> Resistor | Draw | None:
    """Give what a load, a coil, the controller or the charger is to the circuit in a state."""
    maker = {
        "load": _load,
        "coil": _coil,
        "controller": _controller,
        "charger": _charger,
        "key input": _key_input,
        "meter": _meter,
        "pilot": _pilot,
        "closer": _closer,
        "enable": _enable,
    }[bridge.kind]
    return maker(bike, bridge, state)


def _load(bike: Bike, bridge: Bridge, state: State) -> Resistor | Draw | None:
    """Take filaments and coils as resistors, electronics as watts, LEDs and horns as amps at the rail's volts."""
    budget = bike.view.facts.budget
    entry = budget.loads[bridge.loads[0]]
    if entry.amps < LEAST_A:
        return None
    if entry.load.kind in ("filament", "coil"):
        return Resistor(bridge.name, bridge.start, bridge.end, budget.rail_v / entry.amps)
    watts = entry.load.kind == "electronics"
    amount = entry.amps * budget.rail_v if watts else entry.amps
    return Draw(bridge.name, bridge.start, bridge.end, "watts" if watts else "amps", amount, LEAST_LOAD_V)


def _coil(bike: Bike, bridge: Bridge, state: State) -> Resistor:
    margins, part = bike.view.facts.margins, bike.view.parts.get(bridge.place)
    contactor = bike.view.loom.place(bridge.place).family == "contactor"
    hold = float(part.number("coil_hold_a")[0]) if part else float("nan")
    volts = float(part.number("coil_v")[0]) if part else float("nan")
    amps = (margins.contactor_coil_a if contactor else margins.relay_coil_a) if isnan(hold) else hold
    return Resistor(bridge.name, bridge.start, bridge.end, (12.0 if isnan(volts) else volts) / max(amps, LEAST_A))


def _controller(bike: Bike, bridge: Bridge, state: State) -> Draw | None:
    control, pack = bike.view.facts.job.controller, bike.view.facts.pack
    least = control.supply_min or pack.lowest_rest_v.low / 2
    if state.traction == "idle":
        return Draw(bridge.name, bridge.start, bridge.end, "watts", control.standby, least)
    amps = {
        "continuous": control.battery_continuous,
        "peak": control.battery_peak,
        "regeneration": -(control.regen or 0.0),
    }.get(state.traction, 0.0)
    return Draw(bridge.name, bridge.start, bridge.end, "amps", amps, least) if amps else None


def _charger(bike: Bike, bridge: Bridge, state: State) -> Draw | None:
    if state.traction != "charging":
        return None
    amps = bike.view.facts.job.wishes.charge_current
    return Draw(bridge.name, bridge.start, bridge.end, "amps", -amps, LEAST_LOAD_V)


def _key_input(bike: Bike, bridge: Bridge, state: State) -> Draw:
    amps = bike.view.facts.job.controller.key_current
    return Draw(bridge.name, bridge.start, bridge.end, "amps", amps, LEAST_LOAD_V)


def _meter(bike: Bike, bridge: Bridge, state: State) -> Draw:
    part = bike.view.parts.get(bridge.place)
    known = float(part.number("supply_ma")[0]) / 1000 if part else float("nan")
    amps = bike.view.facts.margins.meter_a if isnan(known) else known
    return Draw(bridge.name, bridge.start, bridge.end, "amps", max(amps, LEAST_A), LEAST_LOAD_V)


def _pilot(bike: Bike, bridge: Bridge, state: State) -> Draw:
    part = bike.view.parts.get(bridge.place)
    known = float(part.number("current_ma")[0]) / 1000 if part else float("nan")
    amps = bike.view.facts.margins.pilot_lamp_a if isnan(known) else known
    return Draw(bridge.name, bridge.start, bridge.end, "amps", max(amps, LEAST_A), LEAST_LOAD_V)


def _enable(bike: Bike, bridge: Bridge, state: State) -> Draw:
    return Draw(bridge.name, bridge.start, bridge.end, "amps", bike.view.facts.margins.enable_a, LEAST_LOAD_V)


def _closer(bike: Bike, bridge: Bridge, state: State) -> Draw:
    return Draw(bridge.name, bridge.start, bridge.end, "amps", bike.view.facts.margins.closer_a, LEAST_LOAD_V)


def buffer_battery(bike: Bike, bridge: Bridge, *, strong: bool) -> Source:
    """Take a buffer battery as 12.8 V behind the resistance its short-circuit amps tell."""
    margins = bike.view.facts.margins
    amps = margins.buffer_short_high_a if strong else margins.buffer_short_low_a
    return Source(bridge.name, bridge.start, bridge.end, BUFFER_V, BUFFER_V / amps)


def common_minus(bike: Bike) -> list[Resistor]:
    """Join pack minus and 12 V minus where the converter does, or may."""
    return [Resistor(COMMON_MINUS, "converter minus", "12 V minus", COMMON_OHM)] if bike.joined else []


def _converter(bike: Bike) -> Converter:
    margins, part = bike.view.facts.margins, bike.view.parts["converter"]
    figure = {name: float(part.number(name)[0]) for name in ("output_v", "output_a", "input_min_v", "efficiency_pct")}
    idle_ma = float(part.number("quiescent_ma")[0])
    rest = bike.view.facts.pack.lowest_rest_v.low
    return Converter(
        "converter",
        "converter in",
        "converter minus",
        "12 V plus",
        "12 V minus",
        margins.rail_volts if isnan(figure["output_v"]) else figure["output_v"],
        1000.0 if isnan(figure["output_a"]) else figure["output_a"],
        part.word("overload")[0] == "constant current",
        margins.converter_output_ohm,
        margins.converter_efficiency if isnan(figure["efficiency_pct"]) else figure["efficiency_pct"] / 100,
        margins.converter_idle_w if isnan(idle_ma) else idle_ma / 1000 * rest,
        max(rest / 2 if isnan(figure["input_min_v"]) else figure["input_min_v"], 1.0),
    )
