"""The ways to wire the key, walked: what wakes, what sleeps, and what fails how."""

from collections.abc import Callable

import pytest

from bom.arrangement import ALL, PACK_SLEEPING, SLEEPING
from bom.build import Build
from bom.circuit.live import live, settle
from bom.circuit.network import Resistor
from bom.circuit.waking import riding
from bom.judge.verdict import Verdict

Converted = Callable[..., Build]
INVERTED = {
    "donor.items.kill switch.contact": "closes to stop",
    "donor.items.kill switch.relay": True,
    "donor.items.kill switch.keep": "yes",
    "donor.items.kill switch.served": "1 A",
    "donor.items.kill switch.latches": True,
}


def test_a_sleeping_converter_wakes_from_its_buffer_battery(converted: Converted) -> None:
    """Trade: the key feeds the enable from the buffer battery; then the order is as ever."""
    build = converted("street-72", {}, SLEEPING)
    assert build.count(Verdict.FAIL) == 0
    assert build.filled["converter"].part.word("enable")[0] == "12 V"
    waking = build.walks.waking
    assert waking is not None
    assert not waking.stuck
    assert any(step.what == "the contactor pulls in" for step in waking.steps)


def test_a_sleeping_converter_gives_nothing_with_the_key_off(converted: Converted) -> None:
    """Worked: asleep nothing flows in its feed; always on it takes its idle amps, 4 to 20 mA."""
    parked = next(s for s in converted("street-72", {}, SLEEPING).walks.states if s.state.name == "parked, key off")
    assert parked.amps("converter feed") < 1e-6
    always_on = next(s for s in converted("street-72").walks.states if s.state.name == "parked, key off")
    assert always_on.amps("converter feed") > 1e-3


def test_the_enable_at_pack_volts_carries_milliamps(converted: Converted) -> None:
    """Worked: key input 40 mA, meter 50 mA, enable 5 mA: a key at pack volts opens 95 mA, not the converter's amps."""
    duty = converted("street-72", {}, PACK_SLEEPING).duties["key switch"]
    assert duty.break_a.high == pytest.approx(0.095)
    assert duty.break_v.high == pytest.approx(88.0)


@pytest.mark.parametrize("key_at", ALL)
def test_a_welded_key_is_stopped_by_the_stop_switch(key_at: str, converted: Converted) -> None:
    """Trade: the key welded shut keeps the bike alive; the stop switch opens the contactor all the same."""
    faults = {fault.what: fault for fault in converted("street-72", {}, key_at).walks.key_faults}
    welded = faults["the key switch welds shut"]
    assert "contactor" in welded.stays
    assert welded.stops
    assert "contactor" in faults["the key switch sticks open"].loses


def test_a_flat_buffer_battery_wakes_nothing(converted: Converted) -> None:
    """Trade: it is the one thing that only a sleeping converter adds."""
    named = {fault.what for fault in converted("street-72", {}, SLEEPING).walks.key_faults}
    assert any("flat" in what for what in named)
    assert not any("flat" in fault.what for fault in converted("street-72").walks.key_faults)


def test_an_enable_wire_that_breaks_puts_the_converter_to_sleep(converted: Converted) -> None:
    """Worked: without a buffer battery everything at 12 V goes with it."""
    opened = {each.wire: each for each in converted("street-72", {}, PACK_SLEEPING).walks.opens}
    assert "headlamp" in opened["enable wire"].dark
    assert "contactor" in opened["enable wire"].drops


def test_a_kill_switch_that_grounds_stops_through_its_relay(converted: Converted) -> None:
    """Worked: pressed, it joins the coil to the frame: the relay pulls in, opens the chain, the contactor drops."""
    build = converted("frame-return-105", INVERTED, "12 V")
    assert build.count(Verdict.FAIL) == 0
    assert build.filled["stop relay"].part.word("contact")[0] == "changeover"
    bike = build.walks.bike
    state = riding(bike)
    assert state is not None
    before = settle(live(bike, state), bike.positions(state))
    assert "contactor" in before.positions.coils
    assert "stop relay" not in before.positions.coils
    pressed = Resistor("pressed", "stop switch in", "stop switch out", 0.01)
    after = settle(live(bike, state, added=(pressed,)), before.positions)
    assert "stop relay" in after.positions.coils
    assert "contactor" not in after.positions.coils


def test_through_a_relay_it_stays_only_if_it_is_tried(converted: Converted) -> None:
    """Trade: a broken lead of a grounding switch goes unnoticed, so that it is never a clean pass."""
    build = converted("frame-return-105", INVERTED, "12 V")
    kill = next(item for item in build.donor if item.name == "kill switch")
    assert kill.verdict == "stays if"
    assert "before every ride" in kill.reason
