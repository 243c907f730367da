"""The energising sequence walked from parked, and what dies when the pack, the key or the converter goes."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from bom.arrangement import AT_PACK, SLEEPING
from bom.circuit.bike import Bike
from bom.circuit.live import (
    DEAD_V,
    PRECHARGE_RELAY,
    Live,
    Settled,
    closer_v,
    coil_v,
    has_coil,
    lit,
    live,
    pull_in_v,
    settle,
)
from bom.circuit.positions import Positions
from bom.loom.bridges import CLOSER
from bom.loom.model import Bridge
from bom.read.states import State


@dataclass(frozen=True)
class Step:
    """One thing that happens, and the volts that make it happen.

    at  where those volts stand
    """

    what: str
    volts: float
    at: str


@dataclass(frozen=True)
class Stuck:
    """A coil that never pulls in.

    needs_v    volts at which it surely pulls in
    waits_for  contact that would have to close first; the coil's own name is a deadlock, "" where none would help
    """

    coil: str
    volts: float
    needs_v: float
    waits_for: str


@dataclass(frozen=True)
class Loss:
    """Something goes, and what goes with it.

    dark  loads that go out, the meter and the drive
    drops coils that drop out
    """

    what: str
    dark: tuple[str, ...]
    drops: tuple[str, ...]


@dataclass(frozen=True)
class Waking:
    """The whole walk: steps in their order, coils that stay out, and what dies with what."""

    steps: tuple[Step, ...]
    stuck: tuple[Stuck, ...]
    losses: tuple[Loss, ...]


def wake(bike: Bike) -> Waking | None:
    """Walk the sequence with the key turned on; None where no state has the key on, or no converter stands."""
    state = next((state for state in bike.view.facts.budget.kinds if state.key and state.contactor), None)
    if state is None or "converter" not in bike.view.parts:
        return None
    asleep = not converter_wakes(bike)
    awake = live(bike, state, without_source="converter" if asleep else "")
    parked = replace(bike.positions(state), coils=frozenset(), fills=False, closes=False)
    end = settle(awake, parked)
    return Waking(tuple(_steps(bike, end)), tuple(_stuck(awake, end, asleep=asleep)), tuple(_losses(bike)))


def converter_wakes(bike: Bike) -> bool:
    """Tell whether the converter's enable has its volts before the converter gives any."""
    part = bike.view.parts.get("converter")
    if part is None:
        return False
    key_at = bike.view.facts.key_at
    given = {"12 V": key_at == SLEEPING, "pack volts": key_at in AT_PACK}
    return given.get(part.word("enable")[0], True)


def _steps(bike: Bike, end: Settled) -> Iterator[Step]:
    solution = end.solution
    for what, plus, minus in (
        ("pack volts stand at the converter", "converter in", "converter minus"),
        ("the converter gives 12 V", "12 V plus", "12 V minus"),
    ):
        if plus in solution.compiled.index and (volts := solution.at(plus, minus)) >= DEAD_V:
            yield Step(what, volts, plus)
    for coil, pulls in end.turns:
        own = pulls and coil != PRECHARGE_RELAY
        volts, at = (
            (coil_v(bike, coil, solution), f"{coil} coil") if own else (closer_v(bike, solution), f"{CLOSER} in")
        )
        if coil == PRECHARGE_RELAY:
            yield Step("the bus fills through the resistor" if pulls else "the precharge relay lets go", volts, at)
        else:
            yield Step(f"the {coil} pulls in" if pulls else f"the {coil} drops out", volts, at)


def _stuck(awake: Live, end: Settled, *, asleep: bool) -> Iterator[Stuck]:
    """Find the coils that should be in and are not, and what each waits for."""
    bike = awake.bike
    for coil in sorted(bike.positions(awake.state).coils - end.positions.coils):
        if not has_coil(bike, coil):
            continue
        volts = coil_v(bike, coil, end.solution)
        waits = "converter" if asleep else _waits_for(awake, end, coil)
        yield Stuck(coil, volts, pull_in_v(bike, coil), waits)


def _waits_for(awake: Live, end: Settled, coil: str) -> str:
    """Close each open contact by itself: the one that feeds the coil is what it waits for."""
    bike = awake.bike
    shut = [bridge for bridge in bike.bridges if bridge.kind == "contact" and not end.positions.closed(bridge)]
    for bridge in sorted(shut, key=lambda bridge: bridge.name != coil):
        solution = awake.solve(_closing(end.positions, bridge))
        if coil_v(bike, coil, solution) >= pull_in_v(bike, coil):
            return bridge.name
    return ""


def _closing(positions: Positions, bridge: Bridge) -> Positions:
    return replace(positions, coils=positions.coils | {bridge.gate}, key=positions.key or bridge.gate == "key")


def _losses(bike: Bike) -> Iterator[Loss]:
    """Take the pack, the key and the converter from a bike that rides by night with everything on."""
    state = riding(bike)
    if state is None:
        return
    before = settle(live(bike, state), bike.positions(state))
    asleep = "converter" if bike.view.facts.sleeps else ""
    for what, source, key in (
        ("the battery management opens", "pack", True),
        ("the key is turned off at speed", asleep, False),
        ("the converter fails", "converter", True),
    ):
        hurt = live(bike, state, without_source=source)
        after = settle(hurt, replace(before.positions, key=key))
        yield Loss(
            what,
            tuple(sorted(lit(bike, before) - lit(bike, after))),
            tuple(sorted(before.positions.coils - after.positions.coils)),
        )


def riding(bike: Bike) -> State | None:
    """Give the state that asks most of the 12 V side with the contactor closed, and pushes no amps into the pack."""
    budget, pushes = bike.view.facts.budget, ("regeneration", "charging")
    rides = [state for state in budget.kinds if state.key and state.contactor and state.traction not in pushes]
    return max(rides, key=lambda state: budget.states[state.name], default=None)
