"""The ten gates in their order, against answers worked by hand.

Published: UN R136 paragraph 2, a circuit is high voltage strictly above 60 V DC (read second-hand on a public page).
Trade: the order of the gates and what follows from each is common practice without a source.
"""

from collections.abc import Callable

import pytest

from bom.build import Build
from bom.check.donor_gate import NOTHING, Gate
from bom.check.donor_gates import donor_gates, donor_type
from bom.check.gates_text import gates_data, gates_text
from bom.read.job import JobFile

Converted = Callable[..., Build]
ORDER = ["isolation", "earth", "voltage", "feed", "lamp", "key", "switch side", "load", "return", "evidence"]
COMMON = {"pins.converter": "CV-0303"}
LOW = {
    "pack.series": 13,
    "pack.bms.low_cut": "40 V",
    "controller.over_voltage": "58 V",
    "controller.supply_min": "30 V",
    "pins.converter": "CV-0102",
}


def gate(build: Build, name: str) -> Gate:
    return next(each for each in donor_gates(build) if each.name == name)


def stands(build: Build, name: str) -> str:
    return gate(build, name).verdict.word


def test_they_come_in_their_order(converted: Converted) -> None:
    assert [each.name for each in donor_gates(converted("street-72"))] == ORDER


def test_isolated_on_88_volts(converted: Converted) -> None:
    """Worked: regeneration is cut at 88 V, above the 84.0 V of 20 full cells; an isolated converter passes."""
    told = gate(converted("street-72"), "isolation")
    assert (told.verdict.word, told.follows) == ("pass", NOTHING)
    assert "isolated; bus up to 88.0 V against 60 V" in told.answer


def test_a_common_minus_above_60_volts_fails(converted: Converted) -> None:
    told = gate(converted("street-72", COMMON), "isolation")
    assert told.verdict.word == "fail"
    assert "CV-0303: common minus; bus up to 88.0 V" in told.answer
    assert "traction circuit" in told.follows


def test_a_common_minus_below_60_volts_is_warned_of(converted: Converted) -> None:
    """Worked: 13 x 4.20 V = 54.6 V, and regeneration is cut at 58 V: below 60 V, lamps on wires."""
    told = gate(converted("street-72", LOW), "isolation")
    assert told.verdict.word == "tight"
    assert "58.0 V" in told.answer
    assert "one bond in one place" in told.follows


def test_a_common_minus_with_plus_on_the_frame_fails_at_any_volts(converted: Converted) -> None:
    """Worked: the frame is 12 V plus, one 12 V above 12 V minus, which is pack minus."""
    told = gate(converted("street-72", {**LOW, "donor.earth": "positive"}), "isolation")
    assert told.verdict.word == "fail"
    assert "second bond" in told.follows


def test_a_common_minus_through_the_frame_is_a_warning_below_60_v(converted: Converted) -> None:
    told = gate(converted("street-72", {**LOW, "donor.lamp_return": "frame"}), "isolation")
    assert told.verdict.word == "tight"
    assert "return wire" in told.follows


def test_plus_on_the_frame(converted: Converted) -> None:
    wired = gate(converted("street-72", {"donor.earth": "positive"}), "earth")
    assert wired.verdict.word == "tight"
    assert "controller display" in wired.follows
    framed = gate(converted("street-72", {"donor.earth": "positive", "donor.lamp_return": "frame"}), "earth")
    assert framed.verdict.word == "fail"


def test_six_volts(converted: Converted) -> None:
    told = gate(converted("street-72", {"donor.supply": "6 V"}), "voltage")
    assert told.verdict.word == "fail"
    assert "headlamp" in told.follows
    assert stands(converted("moped-48"), "voltage") == "tight"


def test_what_the_coils_fed(converted: Converted) -> None:
    """Worked: the moped's lock and stop button both close to stop; a mixed bike's signals ran on the battery."""
    told = gate(converted("moped-48"), "feed")
    assert "grounds the ignition: ignition lock and stop button" in told.follows
    mixed = gate(converted("street-72", {"donor.lighting": "mixed"}), "feed")
    assert mixed.answer == "mixed: headlamp, tail lamp and dash lamps"
    assert mixed.verdict.word == "can't tell"
    assert "ignition lock" in mixed.follows


def test_lamps(converted: Converted) -> None:
    told = gate(converted("frame-return-105"), "lamp")
    assert "LED: front indicators and rear indicators" in told.answer
    assert told.verdict.word == "tight"
    assert stands(converted("street-72"), "lamp") == "pass"


def test_the_key(converted: Converted) -> None:
    """Worked: at 12 V the key opens the coils' 2.3 A; without a print it goes where it carries pack volts."""
    told = gate(converted("street-72"), "key")
    assert (told.verdict.word, told.follows) == ("pass", NOTHING)
    assert "2.3 A at 14.4 V" in told.answer
    high = gate(converted("street-72", {}, "pack volts"), "key")
    assert "goes" in high.answer
    assert high.verdict.word != "pass"
    assert "12 V" in high.follows


def test_switch_sides(converted: Converted) -> None:
    button = "donor.items.horn button.side"
    assert stands(converted("street-72"), "switch side") == "pass"
    earth = gate(converted("street-72", {button: "earth"}), "switch side")
    assert (earth.verdict.word, earth.follows) == ("tight", "horn button: its lead becomes the return")
    turned = gate(converted("street-72", {"donor.earth": "positive"}), "switch side")
    assert turned.verdict.word == "can't tell"
    assert "light switch and front brake switch" in turned.follows


def test_orphans(converted: Converted) -> None:
    """Trade: what regulator, coil or engine fed is told, so that no live end is left."""
    counter = {"name": "rev counter", "kind": "rev counter"}
    oil = {"name": "oil switch", "kind": "oil switch"}
    flasher = {"name": "can", "kind": "flasher"}
    build = converted("street-72", {"donor.items": [counter, oil, flasher], "donor.lighting": "AC"})
    assert gate(build, "load").answer == "rev counter, oil switch, can and what the coils fed, as feed tells"
    assert "headlamp relay" in gate(converted("street-72"), "load").follows
    assert stands(converted("street-72", {"donor.items": []}), "load") == "pass"


def test_returns(converted: Converted) -> None:
    assert gate(converted("street-72"), "return").follows == NOTHING
    assert "return for each lamp" in gate(converted("frame-return-105", {"wishes.two_wire": True}), "return").follows
    assert stands(converted("frame-return-105"), "return") == "tight"
    turned = converted("street-72", {"donor.earth": "positive", "donor.lamp_return": "frame"})
    assert gate(turned, "return").follows == "a return wire for each lamp: plus is the frame"


def test_evidence(converted: Converted) -> None:
    assert stands(converted("street-72"), "evidence") == "pass"
    told = gate(converted("moped-48"), "evidence")
    assert told.verdict.word == "can't tell"
    assert "light switch" in told.follows
    assert stands(converted("street-72", {"donor.items": [], "loads": []}), "evidence") == "can't tell"


@pytest.mark.parametrize(
    ("edits", "words"),
    [
        ({}, "12 V street bike, its switches carry the lamps themselves"),
        ({"donor.lighting": "mixed"}, "12 V commuter, headlamp from the coils"),
        ({"donor.lighting": "AC", "donor.supply": "6 V"}, "6 V moped or small two-stroke, lit by its flywheel coils"),
        ({"donor.supply": "6 V"}, "old 6 V classic, lamps from dynamo and battery"),
        ({"donor.earth": "positive"}, "late 12 V classic with plus on the frame"),
        ({"donor.switchgear": "electronic"}, "modern bike, its switches tell a module that feeds the lamps"),
        (
            {"donor.items": [{"name": "stand switch", "kind": "side-stand switch"}]},
            "12 V street bike with relays and interlocks",
        ),
    ],
)
def test_types_in_words(edited: Callable[..., JobFile], edits: dict[str, object], words: str) -> None:
    """Trade: seven kinds of donor, told by supply, lighting, earth, switchgear and interlocks."""
    told = donor_type(edited("street-72", edits))
    assert told.startswith(f"{words} (read from: ")
    assert str(edits.get("donor.supply", "12 V")) in told


def test_print_and_data_say_the_same(converted: Converted) -> None:
    build = converted("moped-48")
    text = " ".join(gates_text(build).split())
    for entry in gates_data(build):
        assert entry["answer"] in text
        assert entry["follows"] == NOTHING or entry["follows"] in text
