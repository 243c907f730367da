"""Solved states, the open walk, the waking order and the losses, on the starter jobs."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from bom.build import Build
from bom.circuit.bike import bike_of
from bom.circuit.exceeds import exceeds
from bom.circuit.opens import Opened
from bom.circuit.standing import Standing
from bom.circuit.waking import riding, wake
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.loom.model import Loom
from bom.read.job import JobFile

Converted = Callable[..., Build]
Edited = Callable[..., JobFile]
COMMON_MINUS = "CV-0102"


def _state(build: Build, name: str) -> Standing:
    return next(state for state in build.walks.states if state.state.name == name)


def _opened(build: Build, wire: str) -> Opened:
    return next(opened for opened in build.walks.opens if opened.wire == wire)


def _verdicts(build: Build, rule: str) -> set[Verdict]:
    return {finding.verdict for finding in build.findings if finding.rule == rule}


def _with_loom(build: Build, loom: Loom) -> LoomView:
    return LoomView(loom, build.facts, {name: entry.part for name, entry in build.filled.items()}, build.duties)


def test_a_parked_bike_draws_next_to_nothing(converted: Converted) -> None:
    """Worked: with the key off only the converter's idle amps flow, 10 to 50 mA."""
    assert _state(converted("street-72"), "parked, key off").amps("pack") < 0.05


def test_the_sag_is_ohms_law(converted: Converted) -> None:
    """Worked: pack volts = 62 V (low cut) less amps x 38 mohm, in the state of full throttle."""
    state = _state(converted("street-72"), "full throttle, empty pack")
    assert state.volts("pack plus", "pack minus") == pytest.approx(62.0 - state.amps("pack") * 0.038, rel=1e-9)
    assert state.amps("controller") == pytest.approx(160.0)


def test_the_converter_takes_its_watts_from_the_sagged_pack(converted: Converted) -> None:
    """Worked: input amps x input volts = output watts over efficiency and the idle watts; amps rise as volts fall."""
    build = converted("street-72")
    part = build.filled["converter"].part
    state = _state(build, "rain, everything on")
    given = state.amps("converter") * state.volts("12 V plus", "12 V minus")
    idle = float(part.number("quiescent_ma")[0]) / 1000 * build.facts.pack.lowest_rest_v.low
    taken = state.amps("converter feed") * state.volts("converter in", "converter minus")
    assert taken == pytest.approx(given / (float(part.number("efficiency_pct")[0]) / 100) + idle, rel=1e-6)


def test_lamps_get_the_rail_less_the_drop_of_their_wires(converted: Converted) -> None:
    """Worked: a headlamp of 60 W at the far end still has above 12 V; UN R37 tests at 13.2 V."""
    state = _state(converted("street-72"), "riding by night")
    assert 12.0 < state.volts("headlamp plus", "headlamp minus") < 13.8


def test_a_pack_too_weak_collapses_and_is_named(converted: Converted) -> None:
    """Worked: 160 A through 0.3 ohm leave 62 - 48 = 14 V: under every supply."""
    build = converted("street-72", {"pack.pack_resistance": "0.3 ohm"})
    state = _state(build, "full throttle, empty pack")
    assert "controller" in state.collapsed
    assert Verdict.FAIL in _verdicts(build, "states-stand")


def test_where_only_the_packs_resistance_decides_it_cannot_be_told(converted: Converted) -> None:
    """Worked: 20 cells of 0.2 to 20 mohm: 0.004 to 0.4 ohm, which stands at one end and collapses at the other."""
    unknown = {"pack.pack_resistance": None, "pack.capacity": None, "pack.parallel": None}
    build = converted("street-72", {**unknown, "pins.converter": "CV-0461"})
    assert Verdict.CANT_TELL in _verdicts(build, "states-stand")
    assert Verdict.FAIL not in _verdicts(build, "states-stand")


def test_regeneration_lifts_the_bus_to_its_limit_and_no_higher(converted: Converted) -> None:
    """Worked: the controller cuts at 88 V at its own terminals, whatever the leads add."""
    state = _state(converted("street-72"), "regeneration, full pack")
    assert state.volts("controller plus", "controller minus") == pytest.approx(88.0, abs=0.05)
    assert state.solution.amps["pack"] < -25


def test_a_job_adds_its_own_state(converted: Converted) -> None:
    """A state of the job is solved beside those of the table."""
    own = [
        {"name": "pushing it home", "on": ["always", "key"], "cells": "empty", "traction": "none", "contactor": False}
    ]
    build = converted("street-72", {"states": own})
    assert _state(build, "pushing it home").volts("pack plus", "pack minus") == pytest.approx(62.0, abs=0.1)


def test_the_key_wakes_every_coil_in_its_order(converted: Converted) -> None:
    """Trade: relays first, the bus through its resistor, the contactor last."""
    waking = converted("street-72").walks.waking
    assert waking is not None
    assert not waking.stuck
    steps = [step.what for step in waking.steps]
    assert steps.index("the bus fills through the resistor") < steps.index("the contactor pulls in")
    assert steps.index("the load relay pulls in") < steps.index("the contactor pulls in")


def test_a_relay_fed_through_its_own_contact_is_a_deadlock(converted: Converted) -> None:
    """Worked: the control fuse moved behind the load relay waits for the relay, which waits for the fuse."""
    build = converted("street-72")
    wires = tuple(
        replace(wire, start="load relay out") if wire.name == "control lead" else wire for wire in build.loom.wires
    )
    waking = wake(bike_of(_with_loom(build, replace(build.loom, wires=wires))))
    assert waking is not None
    waits = {stuck.coil: stuck.waits_for for stuck in waking.stuck}
    assert waits["load relay"] == "load relay"
    assert "contactor" in waits


def test_a_converter_woken_by_its_own_output_never_wakes(converted: Converted) -> None:
    """Worked: an enable at 12 V has no volts before the converter runs; a buffer battery gives them."""
    build = converted("street-72")
    part = build.filled["converter"].part
    words = {**part.words, "enable": ("12 V",)}
    view = _with_loom(build, build.loom)
    parts = {**view.parts, "converter": replace(part, words=words)}
    waking = wake(bike_of(replace(view, parts=parts)))
    assert waking is not None
    assert {stuck.waits_for for stuck in waking.stuck} == {"converter"}


@pytest.mark.parametrize(("buffer", "dark"), [(False, True), (True, False)])
def test_lamps_outlive_the_battery_management_on_a_buffer_battery_alone(
    converted: Converted, *, buffer: bool, dark: bool
) -> None:
    """Worked: without the pack only a buffer battery is left to feed the 12 V side."""
    waking = converted("street-72", {"wishes.buffer_battery": buffer}).walks.waking
    assert waking is not None
    loss = next(loss for loss in waking.losses if loss.what == "the battery management opens")
    assert ("headlamp" in loss.dark) is dark


def test_the_contactor_drops_when_the_key_is_turned_off(converted: Converted) -> None:
    """Trade: the key opens the traction circuit."""
    waking = converted("street-72").walks.waking
    assert waking is not None
    assert "contactor" in next(loss for loss in waking.losses if loss.what.startswith("the key")).drops


def test_a_lamp_whose_return_is_lost_floats_up_to_its_plus(converted: Converted) -> None:
    """Worked: no current, no drop: the minus of the lamp stands at the rail's volts."""
    opened = _opened(converted("street-72"), "wire from the headlamp")
    assert opened.dark == ("headlamp",)
    assert opened.floats == "headlamp minus"
    assert opened.floats_v == pytest.approx(13.6, abs=0.3)


def test_a_coil_whose_return_is_lost_drops_out(converted: Converted) -> None:
    """Worked: the contactor's coil has one way home; without it the drive stops."""
    opened = _opened(converted("street-72"), "contactor coil return")
    assert "contactor" in opened.drops
    assert "the drive" in opened.dark


def test_a_lost_minus_finds_no_way_past_an_isolated_converter(converted: Converted) -> None:
    """Worked: nothing joins the two sides."""
    build = converted("street-72")
    assert max(stray.amps for stray in build.walks.strays) < 1e-6
    assert _verdicts(build, "lost-minus-finds-no-thin-way") == {Verdict.PASS}


def test_a_lost_minus_comes_home_through_a_common_minus_and_a_signal_ground(converted: Converted) -> None:
    """Worked: the motor's 40 A through 0.2 ohm and the converter's return; a thin lead carries 3 A."""
    build = converted("moped-48", {"pins.converter": COMMON_MINUS})
    stray = max((s for s in build.walks.strays if "signal" in s.bond), key=lambda stray: stray.amps)
    assert stray.wire == "return to minus post"
    assert 30 < stray.amps < 42
    assert _verdicts(build, "lost-minus-finds-no-thin-way") == {Verdict.TIGHT}


def test_a_solved_state_that_asks_more_raises_the_duty_and_the_choice_is_made_again(converted: Converted) -> None:
    """Worked: the 12 V supply of a lamp fed by a buffer battery too is counted from the load list alone."""
    build = converted("street-72", {"margins.rail_volts": 12.0})
    assert _verdicts(build, "running-amps-are-those-counted") == {Verdict.PASS}
    raised = build.facts.counted.solved_a
    assert raised  # filaments sized at 12.0 V take more at the converter's own volts
    for place, (amps, _) in raised.items():
        assert build.duties[place].carry_a.high == amps


def test_amps_above_what_was_counted_are_a_finding(converted: Converted) -> None:
    """Worked: a duty of half the amps is passed by every state."""
    build = converted("street-72")
    duty = build.duties["wire to the headlamp"]
    half = replace(duty, needs={**duty.needs, "carry_a": duty.carry_a.scaled(0.5, "half", "X * k", k=duty.carry_a)})
    view = replace(_with_loom(build, build.loom), duties={**build.duties, "wire to the headlamp": half})
    assert [excess.place for excess in exceeds(view)] == ["wire to the headlamp"]


def test_a_lost_minus_comes_home_through_the_frame_where_the_pack_touches_it(converted: Converted) -> None:
    """Worked: with the lead to the pack off, all 40 A run through converter return, 12 V return, bond and frame."""
    build = converted("moped-48", {"pins.converter": COMMON_MINUS})
    stray = max((s for s in build.walks.strays if "frame" in s.bond), key=lambda stray: stray.over)
    assert stray.wire in ("return to pack minus", "return to pack plug")
    assert stray.through in ("frame bond", "12 V return", "converter return")
    assert 30 < stray.amps < 45
    isolated = [s for s in converted("moped-48").walks.strays if "frame" in s.bond]
    assert isolated
    assert max(s.over for s in isolated) <= 1


def test_what_fails_takes_the_drive_with_it_as_an_open_wire_does(converted: Converted) -> None:
    """Trade: a battery management that opens stops the motor as a lost pack lead does; a buffer keeps the lamps lit."""
    build = converted("street-72", {"wishes.buffer_battery": True})
    assert build.walks.waking is not None
    dark = {loss.what: set(loss.dark) for loss in build.walks.waking.losses}
    assert dark["the battery management opens"] == {"the drive", "meter"}
    assert dark["the battery management opens"] == set(_opened(build, "pack lead").dark)
    assert dark["the key is turned off at speed"] >= {"the drive", "meter", "headlamp", "horn"}
    assert dark["the converter fails"] == set()


def test_each_step_of_the_waking_order_says_where_its_volts_stand(converted: Converted) -> None:
    """Worked: the bus fills to pack volts; the 13 V beside that step are the closer's, and so are told there."""
    waking = converted("street-72").walks.waking
    assert waking is not None
    at = {step.what: step.at for step in waking.steps}
    assert at["pack volts stand at the converter"] == "converter in"
    assert at["the bus fills through the resistor"] == "contactor closer in"
    assert at["the contactor pulls in"] == "contactor coil"


def test_wires_are_opened_in_a_state_that_draws_from_the_pack(converted: Converted) -> None:
    """Worked: amps pushed into a wire that is open would lift the bus without end."""
    everything = ["always", "key", "riding", "night", "brake", "indicate", "horn", "rain"]
    own = {"name": "rain, everything on", "on": everything, "cells": "highest", "traction": "regeneration"}
    build = converted("street-72", {"states": [own]})
    assert all(abs(opened.floats_v) < 90.0 for opened in build.walks.opens)
    riding_state = riding(build.walks.bike)
    assert riding_state is not None
    assert riding_state.traction != "regeneration"


def test_a_coil_that_has_some_volts_is_not_told_to_have_none(converted: Converted) -> None:
    """Worked: worn switches of 1 ohm each leave the contactor's coil of 7.5 ohm some 8 V of 13: fed, but too low."""
    build = converted("street-72", {"margins.contact_high_ohm": 1.0})
    told = [f for f in build.findings if f.rule == "every-coil-wakes" and f.subject == "contactor"]
    assert [finding.verdict for finding in told] == [Verdict.FAIL]
    assert "too low" in told[0].because


@pytest.mark.parametrize("kind", ["filament", "electronics"])
def test_a_load_that_no_way_feeds_with_the_key_off_is_told(kind: str, converted: Converted, edited: Edited) -> None:
    """Trade: behind the load relay a clock stops with the key; of whatever kind it is, it is not told to stay on."""
    loads = [load.model_dump(exclude_unset=True) for load in edited("street-72").loads]
    clock = {"name": "clock", "kind": kind, "power": "2 W", "on": ["always"], "circuit": "clock", "run": "dash"}
    build = converted("street-72", {"loads": [*map(_as_written, loads), clock]})
    told = [f.because for f in build.findings if f.rule == "states-stand" and f.verdict == Verdict.FAIL]
    assert any("should be on and has 0.0 V: clock" in because for because in told)
    assert not any("display" in because for because in told)


def _as_written(load: dict[str, object]) -> dict[str, object]:
    units = {"power": "W", "current": "A"}
    return {key: f"{value} {units[key]}" if key in units else value for key, value in load.items()}


def test_a_converter_that_sleeps_is_no_step_of_the_waking_order(converted: Converted) -> None:
    """Worked: it waits for 12 V at its enable and nothing else gives any: 0 V are no step to tick off."""
    waking = converted("street-72", {"pins.converter": "CV-0454"}).walks.waking
    assert waking is not None
    assert [step.what for step in waking.steps] == ["pack volts stand at the converter"]
    assert "converter" in {stuck.waits_for for stuck in waking.stuck}


def test_a_brake_switch_in_the_return_leaves_the_stop_lamp_dark_when_its_lead_is_off(converted: Converted) -> None:
    """Worked: the lamp's only way home is the switch's lead; with it off 12 V stands at both ends of the lamp."""
    build = converted("street-72", {"donor.items.front brake switch.side": "earth"})
    assert "stop lamp" in _opened(build, "wire from the stop lamp").dark
    assert "stop lamp" in _opened(build, "signals rear circuit from the front brake switch").dark
    assert _verdicts(build, "states-stand") == {Verdict.PASS}
