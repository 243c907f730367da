"""Ways to keep what goes: which are found, what they cost, and that none is offered of a bike that does not hold.

Trade: a lock drives a relay at 12 V, a grounding kill switch is inverted, a weak button pulls in a relay, a flasher
gets its filaments back, LED lamps spare a switch, a frame that is plus wants return wires: common practice, no source.
"""

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest

from bom.build import Build
from bom.check.donor_words import DonorVerdict
from bom.convert import convert
from bom.judge.verdict import Verdict
from bom.keep.kept import keep_what_goes
from bom.memory import Memory
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.session import Session, run

SERVED_KILL = {"donor.items.kill switch.served": "1 A", "donor.items.kill switch.latches": True}
Edited = Callable[..., JobFile]
Told = Callable[[str, Mapping[str, object]], dict[str, DonorVerdict]]


@pytest.fixture
def told(edited: Edited, catalogue: Catalogue) -> Told:
    """Give the donor's verdicts of an edited starter, with the ways to keep what goes."""

    def ask(starter: str, edits: Mapping[str, object]) -> dict[str, DonorVerdict]:
        memory = Memory()

        def built(job: JobFile, key_at: str) -> Build:
            return convert(job, catalogue, catalogue.margins, key_at, lambda text: None, memory)

        build = built(edited(starter, edits), "12 V")
        return {item.name: item for item in keep_what_goes(build, (), catalogue, built)}

    return ask


@pytest.fixture(scope="module")
def at_pack_volts(project: Path) -> Session:
    return run(project / "templates" / "jobs" / "frame-return-105.toml", project / "catalog", lambda text: None)


def test_a_lock_at_pack_volts_stays_at_12_volts(at_pack_volts: Session) -> None:
    """Worked: what it costs is the difference of both bills."""
    lock = next(item for item in at_pack_volts.build.donor if item.name == "original ignition lock")
    assert lock.verdict == "goes"
    assert lock.kept is not None
    assert (lock.kept.arrangement, lock.kept.verdict) == ("12 V", "stays")
    other = next(build for build in at_pack_volts.others if build.arrangement == "12 V")
    assert other.count(Verdict.FAIL) == 0
    assert lock.kept.more == pytest.approx(other.bill.total - at_pack_volts.build.bill.total, abs=0.005)


def test_a_grounding_kill_switch_is_inverted(told: Told) -> None:
    kill = told("frame-return-105", SERVED_KILL)["kill switch"]
    assert kill.verdict == "goes"
    assert kill.kept is not None
    assert "relay" in kill.kept.way
    assert kill.kept.verdict == "stays if"
    assert "before every ride" in kill.kept.change


def test_a_switch_of_one_contact_feeds_one_circuit(told: Told) -> None:
    """Trade: both lamps behind one fuse, common practice; 6.76 A of them stay under a fuse of ten."""
    switch = told("street-72", {"donor.items.light switch.contacts": 1})["light switch"]
    assert switch.verdict == "goes"
    assert switch.kept is not None
    assert switch.kept.way == "put what it feeds on one circuit"


def test_a_weak_horn_button_pulls_in_a_relay(told: Told) -> None:
    button = told("street-72", {"donor.items.horn button.served": "1 A"})["horn button"]
    assert button.verdict == "goes"
    assert button.kept is not None
    assert "relay" in button.kept.way
    assert button.kept.verdict == "stays"
    assert button.takes.startswith("BS-0202")  # bought in its place; a relay and a longer loom may well cost less


def test_a_flasher_gets_its_filaments_back(told: Told) -> None:
    can = told("frame-return-105", {"donor.items.flasher can.rate": 80})["flasher can"]
    assert can.verdict == "goes"
    assert can.kept is not None
    assert "filament" in can.kept.way
    assert can.kept.verdict == "stays"


def test_led_lamps_spare_a_switch(told: Told) -> None:
    """Worked: four of 21 W ask 3.9 A of a switch that served 1 A; LED lamps of 2 W ask a tenth of it."""
    based = {f"loads.{name} indicators.base": "BA15s" for name in ("front", "rear")}
    switch = told("street-72", {"donor.items.indicator switch.served": "1 A", **based})["indicator switch"]
    assert switch.verdict == "goes"
    assert switch.kept is not None
    assert "LED" in switch.kept.way
    assert switch.kept.verdict == "stays"


def test_shells_that_are_plus_get_return_wires(told: Told) -> None:
    items = told("frame-return-105", {"donor.earth": "positive"})
    assert items["headlamp"].verdict == "goes"
    assert items["headlamp"].gate == "positive earth"
    kept = items["headlamp"].kept
    assert kept is not None
    assert "tail at each shell" in kept.way
    assert kept.verdict == "stays if"


def test_a_common_minus_above_60_volts_takes_everything(told: Told) -> None:
    """Worked: 84 V on the bus; UN R136 counts above 60 V DC as high voltage (read second-hand on a public page)."""
    items = told("street-72", {"pins.converter": "CV-0303"})
    assert {item.verdict for item in items.values()} == {"goes"}
    horn = items["horn button"]
    assert horn.gate == "common minus"
    assert horn.kept is not None
    assert "isolated converter" in horn.kept.way


def test_a_loom_whose_lamps_return_by_a_wish(told: Told) -> None:
    loom = told("frame-return-105", {"wishes.two_wire": True, "donor.items.loom.wire": "1 mm2"})["loom"]
    assert loom.verdict == "goes"
    assert loom.kept is not None
    assert "by the frame" in loom.kept.way


def test_nothing_is_offered_of_a_bike_that_does_not_hold(told: Told) -> None:
    """Worked: a main fuse of 80 V on 84 V fails in every rebuild, so that no way is one."""
    edits = {"donor.items.horn button.served": "1 A", "pins.main fuse": "MF-0205"}
    assert all(item.kept is None for item in told("street-72", edits).values())


def test_what_nobody_wants_has_no_way(told: Told) -> None:
    button = told("street-72", {"donor.items.horn button.served": "1 A", "donor.items.horn button.keep": "no"})
    assert button["horn button"].kept is None
