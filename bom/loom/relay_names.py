"""Relays that switches pull in: their names, their loads, and which of them open by being pulled in."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from bom.read.job import Item

RELAY_COIL = "relay coil"  # circuit of a switch that pulls in one relay
STOP_RELAY = "stop relay"  # opens the coil chain while a kill switch that closes to stop pulls it in

# Wires of its coil: they carry nothing until the kill switch is pressed, so that a broken one goes unnoticed.
STOP_LEADS = ("stop relay feed", "stop lead", "stop ground")


@dataclass(frozen=True)
class SwitchRelay:
    """A relay that a switch of loads pulls in.

    opens  it is in while its loads are dark, and lights them by dropping out
    """

    feeds: tuple[str, ...]
    opens: bool


def relay_of(item: Item) -> str:
    """Name the relay that a switch pulls in."""
    return f"{item.name} relay"


def opens_its_relay(item: Item) -> bool:
    """Tell whether a switch lets its relay go to light the loads: one that opens when braking does."""
    return bool(item.relay) and item.contact == "opens when braking"


def switch_relays(items: Sequence[Item]) -> Mapping[str, SwitchRelay]:
    """Give each relay that a switch of loads pulls in, by its name."""
    return {
        relay_of(item): SwitchRelay(tuple(item.feeds), opens_its_relay(item))
        for item in items
        if item.relay and item.feeds
    }


def opening_relays(items: Sequence[Item]) -> set[str]:
    """Name the relays whose contact opens when they pull in."""
    return {STOP_RELAY, *(name for name, relay in switch_relays(items).items() if relay.opens)}
