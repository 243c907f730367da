"""Which contacts are closed in a state, and which loads are lit."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from bom.loom.bridges import CLOSER_CLOSES, CLOSER_FILLS, NOT
from bom.loom.model import FAR_SIDE, UNLIT, Bridge
from bom.loom.relay_names import STOP_RELAY, SwitchRelay
from bom.read.job import Load
from bom.read.states import State

AT_REST = ("contactor", "precharge relay", STOP_RELAY)
# A change-over switch has one way closed; of lamps on both sides one side burns.
OPEN_WAYS = ("lit right", "lit main")


@dataclass(frozen=True)
class Positions:
    """The position of everything that opens and closes.

    key        the key is on
    cap        the charge port's cap is on, so that its switch is closed
    coils      places whose coil has pulled its contact in
    fills      the closer drives the precharge relay
    closes     the closer drives the contactor
    conditions what is on, in the words of the loads
    ways       both ways of a change-over switch at once: to have every contact in one network
    """

    key: bool
    cap: bool
    coils: frozenset[str]
    fills: bool
    closes: bool
    conditions: frozenset[str]
    ways: bool = False
    loads: Mapping[str, Load] = field(default_factory=dict)

    def closed(self, bridge: Bridge) -> bool:
        """Tell whether current can pass a bridge."""
        gate = bridge.gate
        if gate == "":
            return True
        if gate.startswith(NOT):
            return self.ways or gate.removeprefix(NOT) not in self.coils
        if gate == UNLIT:
            return self.ways or not any(map(self.lit, bridge.loads))
        if gate.startswith("lit"):
            return (self.ways or gate not in OPEN_WAYS) and (not bridge.loads or any(map(self.lit, bridge.loads)))
        named = {"key": self.key, "stop": True, "charge cap": self.cap, CLOSER_FILLS: self.fills}
        named |= {CLOSER_CLOSES: self.closes, "pack plug": True, "isolator": True}
        return named.get(gate, gate in self.coils)

    def shines(self, bridge: Bridge) -> bool:
        """Tell whether a load is joined and means to be lit: not the far side, nor the telltale that feeds it."""
        across = any(name in self.loads and self.loads[name].is_between for name in bridge.loads)
        return bridge.kind == "load" and bridge.gate != FAR_SIDE and not across and self.closed(bridge)

    def lit(self, name: str) -> bool:
        """Tell whether a load is on."""
        return name in self.loads and bool(self.conditions & set(self.loads[name].on))


def positions_of(
    state: State, loads: Mapping[str, Load], coils: frozenset[str], behind: Mapping[str, SwitchRelay]
) -> Positions:
    """Give the positions of a state: with the key on every relay is in but that of precharge and that which stops.

    coils   places of the loom that have a coil
    behind  relays that switches pull in: in while one of their loads is lit, or while none is
    """
    pulled = {coil for coil in coils if coil not in AT_REST} if state.key else set()
    conditions = set(state.conditions)
    lit = {name for name, load in loads.items() if conditions & set(load.on)}
    pulled -= {name for name, relay in behind.items() if bool(lit & set(relay.feeds)) == relay.opens}
    if state.contactor:
        pulled.add("contactor")
    charging = state.traction == "charging"
    if charging:
        pulled -= {"key input relay"}
    return Positions(
        state.key, not charging, frozenset(pulled), False, state.contactor, frozenset(state.conditions), loads=loads
    )
