"""The loom of every starter job, both key arrangements, some wishes: it hangs together, every wire is guarded."""

import re
from collections.abc import Callable

import pytest

from bom.loom.layout import lay_out
from bom.loom.model import LINKS, Loom
from bom.read.families import BY_NAME
from bom.read.job import JobFile
from bom.read.margins import Margins

Edited = Callable[..., JobFile]
JOBS = [
    ("street-72", {}),
    ("moped-48", {}),
    ("frame-return-105", {}),
    ("street-72", {"wishes.buffer_battery": True}),
    ("street-72", {"wishes.pilot_lamp": True, "wishes.rail_meter": True}),
    ("street-72", {"wishes.pilot_lamp": True, "wishes.contactor": False}),
    ("street-72", {"wishes.meter": "volts and amps"}),
    ("street-72", {"wishes.contactor": False}),
    ("street-72", {"wishes.isolator": "none", "wishes.pack_plug": False}),
    ("street-72", {"wishes.pack_plug": False, "controller.key_input": "12 V"}),
    ("street-72", {"wishes.charge_port": False, "wishes.charger": False, "wishes.meter": "none"}),
]
CASES = [(name, edits, key) for name, edits in JOBS for key in ("12 V", "pack volts")]
DRIVEN = {"contactor coil plus", "precharge relay coil plus", "key input relay coil plus"}
FUSES = ("main_fuse", "tap_fuse", "blade_fuse")


@pytest.fixture
def loom(request: pytest.FixtureRequest, edited: Edited, margins: Margins) -> tuple[JobFile, Loom]:
    name, edits, key = request.param
    job = edited(name, edits)
    return job, lay_out(job, margins, key)


every_loom = pytest.mark.parametrize("loom", CASES, ids=lambda case: " ".join(map(str, case)), indirect=True)


@every_loom
def test_names_are_given_once(loom: tuple[JobFile, Loom]) -> None:
    names = [place.name for place in loom[1].places]
    assert sorted(set(names)) == sorted(names)
    wires = [wire.name for wire in loom[1].wires]
    assert sorted(set(wires)) == sorted(wires)


@every_loom
def test_every_family_is_one_of_the_catalogue(loom: tuple[JobFile, Loom]) -> None:
    assert {place.family for place in loom[1].places} <= set(BY_NAME)


@every_loom
def test_every_wire_has_two_ends_a_length_and_a_cable(loom: tuple[JobFile, Loom]) -> None:
    for wire in loom[1].wires:
        assert wire.start != wire.end
        assert 0 < wire.length_m <= wire.part_of_m * (1 + 1e-9)
        place = loom[1].place(wire.name)
        assert place.family == "cable"
        assert place.terminals == (wire.start, wire.end)
        assert place.quantity >= wire.length_m


@every_loom
def test_every_wire_is_guarded(loom: tuple[JobFile, Loom]) -> None:
    """But the pack lead and stubs, which are short; motor leads, which the controller limits; a limited supply."""
    job, whole = loom
    for wire in whole.wires:
        place = whole.place(wire.name)
        limited = place.circuit == "12 V supply" and not job.wishes.buffer_battery
        if wire.name == "pack lead" or wire.name.endswith(" stub") or place.circuit == "phase" or limited:
            assert not wire.guard
            continue
        assert whole.place(wire.guard).family in FUSES
        assert ("guards", wire.guard, wire.name) in {(link.kind, link.first, link.second) for link in whole.links}


@every_loom
def test_every_link_joins_places_that_are_there(loom: tuple[JobFile, Loom]) -> None:
    names = {place.name for place in loom[1].places}
    for link in loom[1].links:
        assert link.kind in LINKS
        assert {link.first, link.second} <= names
        assert link.first != link.second


@every_loom
def test_every_fuse_has_a_holder(loom: tuple[JobFile, Loom]) -> None:
    held = {link.second for link in loom[1].links if link.kind == "takes fuse"}
    assert held == {place.name for place in loom[1].places if place.family in FUSES}


@every_loom
def test_every_heavy_end_has_a_lug_or_a_plug_and_every_thin_wire_a_crimp(loom: tuple[JobFile, Loom]) -> None:
    ended = {link.second for link in loom[1].links if link.kind in ("crimped on", "takes wire")}
    assert {wire.name for wire in loom[1].wires} <= ended


def reached(loom: Loom, start: str, without: tuple[str, ...] = ()) -> set[str]:
    """Walk the wires from a point, through every part from its "in" to its "out"."""
    edges = [(wire.start, wire.end) for wire in loom.wires]
    points = {point for edge in edges for point in edge}
    edges += [
        (point, out)
        for point in points
        if point.endswith(" in")
        for out in points
        if re.sub(r" (left|right|dip|main|precharge)$", "", out) == f"{point.removesuffix(' in')} out"
    ]
    found, todo = set(), [start]
    while todo:
        here = todo.pop()
        if here in found or any(here in (f"{part} in", f"{part} out") for part in without):
            continue
        found.add(here)
        todo += [b if a == here else a for a, b in edges if here in (a, b)]
    return found


@every_loom
def test_pack_reaches_the_controller_and_comes_back(loom: tuple[JobFile, Loom]) -> None:
    assert "controller plus" in reached(loom[1], "pack plus")
    assert "pack minus" in reached(loom[1], "controller minus")
    assert "converter in" in reached(loom[1], "pack plus")
    assert "pack minus" in reached(loom[1], "converter minus")


@every_loom
def test_pulling_the_main_fuse_leaves_nothing_live_behind_it(loom: tuple[JobFile, Loom]) -> None:
    assert reached(loom[1], "pack plus", without=("main fuse",)) == {"pack plus"}


@every_loom
def test_the_break_by_hand_kills_every_tap(loom: tuple[JobFile, Loom]) -> None:
    job, whole = loom
    breaks = [part for part in ("isolator", "pack plug") if part in {place.name for place in whole.places}]
    for part in breaks:
        live = reached(whole, "pack plus", without=(part,))
        assert not live & {"controller plus", "converter in", "meter plus", "charge port plus", "controller key input"}
    assert bool(breaks) == (job.wishes.pack_plug or job.wishes.isolator != "none")


@pytest.mark.parametrize("wish", [True, False])
def test_lamps_return_by_wire_only_where_wished(wish: bool, edited: Edited, margins: Margins) -> None:
    loom = lay_out(edited("street-72", {"wishes.two_wire": wish}), margins, "12 V")
    laid = [wire for wire in loom.wires if loom.place(wire.name).circuit.endswith(" circuit")]
    assert laid
    back = [wire.name for wire in laid if wire.end == "12 V rail minus"]
    assert all(name.startswith("wire from the ") for name in back)
    assert bool(back) is wish


@pytest.mark.parametrize("name", ["meter", "stop", "key", "closer", "converter", "12 V"])
def test_a_load_may_have_any_name(name: str, edited: Edited, margins: Margins) -> None:
    """Names of the loom's own wires are taken by no load's."""
    edits = {"loads.horn.name": name, "donor.items.horn button.feeds": [name]}
    laid = lay_out(edited("street-72", edits), margins, "12 V")
    assert any(wire.name == f"wire to the {name}" for wire in laid.wires)


@every_loom
def test_every_load_is_reached_and_only_through_its_switches(loom: tuple[JobFile, Loom]) -> None:
    job, whole = loom
    feeds = {item.name: item.feeds for item in job.donor.items}
    for load in job.loads:
        fuse = f"{load.circuit or load.name} circuit fuse out"
        ends = {wire.end for wire in whole.wires if f"{load.name} plus" in wire.end or f"{load.name} and " in wire.end}
        assert ends
        assert ends <= reached(whole, fuse)
        mine = f" ({load.circuit or load.name} circuit) in"
        parts = {wire.end.removesuffix(" in") for wire in whole.wires if wire.end.endswith(mine)}
        switches = tuple(part for part in parts if load.name in feeds[part.rsplit(" (", 1)[0]])
        flasher = ("flasher",) if "indicate" in load.on else ()
        for open_ones in filter(None, (switches, flasher)):
            assert not ends & reached(whole, fuse, without=open_ones)
        wanted = [item for item in job.donor.items if load.name in item.feeds]
        assert len(switches) == len(wanted)


@every_loom
def test_the_contactor_coil_hangs_on_what_waits_for_the_bus(loom: tuple[JobFile, Loom]) -> None:
    job, whole = loom
    if job.wishes.contactor:
        start = "stop switch out"
        assert "contactor coil plus" in reached(whole, start)
        assert "contactor coil plus" not in reached(whole, start, without=("contactor closer",))


@every_loom
def test_the_stop_switch_leaves_the_lamps_on(loom: tuple[JobFile, Loom]) -> None:
    _, whole = loom
    assert not DRIVEN & reached(whole, "control fuse out", without=("stop switch",))
    if whole.arrangement == "12 V":
        assert "load relay coil plus" in reached(whole, "control fuse out", without=("stop switch",))
        assert "load relay coil plus" not in reached(whole, "control fuse out", without=("key switch",))


@every_loom
def test_a_plugged_in_bike_cannot_drive(loom: tuple[JobFile, Loom]) -> None:
    """Opening the cap of the charge port opens every coil that lets the bike drive."""
    job, whole = loom
    if job.wishes.charge_port:
        assert not DRIVEN & reached(whole, "control fuse out", without=("charge interlock",))


@every_loom
def test_every_coil_comes_home(loom: tuple[JobFile, Loom]) -> None:
    """Each relay, contactor and closer has a minus wire of its own back to the rail."""
    _, whole = loom
    coils = [f"{place.name} coil" for place in whole.places if place.family in ("relay", "contactor")]
    fed = {wire.end for wire in whole.wires}
    back = {wire.start for wire in whole.wires if wire.end == "12 V rail minus"}
    for coil in coils:
        assert f"{coil} plus" in fed
        assert f"{coil} minus" in back


@every_loom
def test_where_two_wires_meet_there_is_something_to_meet_on(loom: tuple[JobFile, Loom]) -> None:
    """A stud, a post, a splice or the frame; a terminal takes one wire."""
    _, whole = loom
    joints = {place.terminals[0] for place in whole.places if place.family in ("post", "splice")}
    bolted = {"controller plus", "shunt in", "shunt out", "pack plus", "pack minus", "frame"}
    ends = [point for wire in whole.wires for point in (wire.start, wire.end)]
    assert [point for point in set(ends) - joints - bolted if ends.count(point) > 1] == []


@every_loom
def test_the_controller_is_woken(loom: tuple[JobFile, Loom]) -> None:
    assert "controller key input" in {wire.end for wire in loom[1].wires}


@pytest.mark.parametrize("wish", [True, False])
def test_the_frame_is_bonded_where_lamps_return_by_it(wish: bool, edited: Edited, margins: Margins) -> None:
    loom = lay_out(edited("street-72", {"wishes.two_wire": wish}), margins, "12 V")
    assert ("12 V minus" in reached(loom, "frame")) is not wish


def test_key_at_pack_volts_stands_in_the_converter_feed(edited: Edited, margins: Margins) -> None:
    low, high = (lay_out(edited(), margins, key) for key in ("12 V", "pack volts"))
    assert "converter in" in reached(low, "pack plus", without=("key switch",))
    assert "converter in" not in reached(high, "pack plus", without=("key switch",))


@every_loom
def test_the_phase_leads_are_three_and_cut_as_three(loom: tuple[JobFile, Loom]) -> None:
    job, laid = loom
    assert laid.wire("phase leads").count == 3
    assert laid.place("phase leads").quantity == pytest.approx(3 * job.runs.controller_to_motor)


def test_a_precharge_path_without_a_relay_lies_across_the_contactor(
    margins: Margins, edited: Callable[..., JobFile]
) -> None:
    """From the post of the taps by its fuse and resistor to the controller, with no contact on the way."""
    loom = lay_out(edited("street-72", {"wishes.precharge_switched": False}), margins, "12 V")
    assert "precharge relay" not in {place.name for place in loom.places}
    assert "live when parked label" in {place.name for place in loom.places}
    ways = [(wire.start, wire.end) for wire in loom.wires if wire.name.startswith("precharge")]
    assert ways == [
        ("plus post", "precharge fuse in"),
        ("precharge fuse out", "precharge resistor in"),
        ("precharge resistor out", "controller plus"),
    ]
