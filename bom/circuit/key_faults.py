"""What fails in a key arrangement and how: each contact that the key moves, welded shut and stuck open."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from bom.circuit.bike import Bike
from bom.circuit.live import Live, Settled, has_gone_to_sleep, lit, live, settle
from bom.circuit.network import Resistor
from bom.circuit.waking import riding
from bom.loom.model import Bridge
from bom.loom.relay_names import STOP_RELAY
from bom.read.states import State

KEY, STOP = "key switch", "stop switch"
KEYED = (KEY, "load relay", "key input relay")
CONTACTOR = "contactor"
WELD_OHM = 0.01
BUFFER = "buffer battery"


@dataclass(frozen=True)
class KeyFault:
    """Something of the key's own that fails.

    what   what fails, and how
    stays  what stays on with the key turned off: loads, meter, drive, contactor; of a contact stuck open nothing
    loses  of these what goes, riding
    stops  the stop switch still drops the contactor
    """

    what: str
    stays: tuple[str, ...]
    loses: tuple[str, ...]
    stops: bool


def walk_key_faults(bike: Bike) -> tuple[KeyFault, ...]:
    """Fail each contact of the key in the state that asks most of the 12 V side; nothing where no state rides."""
    state = riding(bike)
    if state is None:
        return ()
    faults = [*_contacts(bike, state)]
    if STOP_RELAY in bike.coils:
        what = f"the {STOP_RELAY}'s rest contact welds shut: the kill switch stops nothing"
        faults.append(KeyFault(what, (), (), stops=False))
    if bike.view.facts.sleeps and any(bridge.kind == "buffer" for bridge in bike.bridges):
        faults.append(_flat(bike, state))
    return tuple(faults)


def _contacts(bike: Bike, state: State) -> Iterator[KeyFault]:
    whole = live(bike, state)
    before = settle(whole, bike.positions(state))
    for bridge in (bridge for bridge in bike.bridges if bridge.name in KEYED and bridge.kind == "contact"):
        welded, off = _turned_off(bike, state, before, bridge)
        stopped = settle(welded, off.positions, (STOP_RELAY if STOP_RELAY in bike.coils else STOP,))
        stops = CONTACTOR not in stopped.positions.coils
        yield KeyFault(f"the {bridge.name} welds shut", _on(bike, off), (), stops)
        after = _settled(bike, whole, before, bridge.name)
        lost = tuple(sorted(set(_on(bike, before)) - set(_on(bike, after))))
        yield KeyFault(f"the {bridge.name} sticks open", (), lost, stops=True)


def _turned_off(bike: Bike, state: State, before: Settled, bridge: Bridge) -> tuple[Live, Settled]:
    """Turn the key off over a contact that is welded; a converter without its enable sleeps."""
    weld = Resistor(f"weld of the {bridge.name}", bridge.start, bridge.end, WELD_OHM)
    off = replace(before.positions, key=False)
    awake = live(bike, state, added=(weld,))
    after = settle(awake, off)
    if has_gone_to_sleep(bike, after.solution):
        awake = live(bike, state, without_source="converter", added=(weld,))
        after = settle(awake, off)
    return awake, after


def _settled(bike: Bike, whole: Live, before: Settled, gone: str) -> Settled:
    """Let one contact stick open while riding."""
    after = settle(whole, before.positions, (gone,), before.solution.volts)
    if has_gone_to_sleep(bike, after.solution):
        after = settle(live(bike, whole.state, without_source="converter"), before.positions, (gone,))
    return after


def _flat(bike: Bike, state: State) -> KeyFault:
    """Turn the key on with a flat buffer battery: the converter sleeps on, so that nothing has volts."""
    before = settle(live(bike, state), bike.positions(state))
    return KeyFault(f"the {BUFFER} is flat: the key wakes nothing", (), _on(bike, before), stops=True)


def _on(bike: Bike, settled: Settled) -> tuple[str, ...]:
    return tuple(sorted(lit(bike, settled) | settled.positions.coils & {CONTACTOR}))
