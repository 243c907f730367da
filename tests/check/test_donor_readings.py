"""What settles a donor contact: a printed figure above 30 V DC, a reading at 12 V.

Trade: contacts of old vehicles and small relays are printed to about 30 V DC; above that an arc has no zero to die
at, and what was tried or served for years at 12 V proves nothing (common practice, no source).
"""

from collections.abc import Callable

import pytest

from bom.build import Build
from bom.check.donor_words import DonorVerdict

Converted = Callable[..., Build]
LOCK = "donor.items.ignition lock"
PRINTED = {
    f"{LOCK}.dc_volts": "100 V",
    f"{LOCK}.breaks": "12 A",
    f"{LOCK}.carries": "20 A",
    "margins.key_loop_low_ohm": 5.0,  # a resistor ahead of the converter's capacitors
    "margins.key_loop_high_ohm": 20.0,
    f"{LOCK}.contact": "opens to stop",
}


def told(build: Build, name: str) -> DonorVerdict:
    return next(item for item in build.donor if item.name == name)


@pytest.mark.parametrize("evidence", ["measured", "seller's word", "unknown"])
def test_a_key_at_pack_volts_goes_without_a_printed_figure(converted: Converted, evidence: str) -> None:
    """Trade: 12 A at 100 V that somebody measured is no print; it goes, and no test is asked for."""
    lock = told(converted("street-72", {**PRINTED, f"{LOCK}.evidence": evidence}, "pack volts"), "ignition lock")
    assert (lock.verdict, lock.test) == ("goes", "")
    assert "print" in lock.reason
    assert "12 V" in lock.change


@pytest.mark.parametrize("evidence", ["data sheet", "marked"])
def test_with_a_printed_figure_the_numbers_decide(converted: Converted, evidence: str) -> None:
    """Worked: 12 A at 100 V covers the few amps of the converter at 88 V; 20 A covers 88 V / 5 ohm = 17.6 A of rush."""
    lock = told(converted("street-72", {**PRINTED, f"{LOCK}.evidence": evidence}, "pack volts"), "ignition lock")
    assert lock.verdict == "stays"
    assert lock.gate == ""
    assert lock.change == ""


def test_a_print_for_too_few_volts_goes(converted: Converted) -> None:
    """Trade: the usual print of 28 V DC says nothing of pack volts."""
    edits = {**PRINTED, f"{LOCK}.dc_volts": "28 V", f"{LOCK}.evidence": "marked"}
    lock = told(converted("street-72", edits, "pack volts"), "ignition lock")
    assert (lock.verdict, lock.test) == ("goes", "")


SIX = {"donor.supply": "6 V"}
LIGHT = "donor.items.light switch"
READ = {f"{LIGHT}.held": True, f"{LIGHT}.reading": "20 openings of the headlamp at 13.5 V; 40 mohm closed"}


def test_a_six_volt_switch_is_tested_first(converted: Converted) -> None:
    light = told(converted("street-72", SIX), "light switch")
    assert light.verdict == "test first"
    assert light.test


def test_a_reading_alone_gives_no_rating(converted: Converted) -> None:
    """Worked: it held, yet no figure says how many amps it breaks at 12 V: still tested first, for that figure."""
    light = told(converted("street-72", {**SIX, **READ}), "light switch")
    assert light.verdict == "test first"
    assert "tested" in light.test
    assert "13.5 V nobody printed" not in light.reason


def test_the_amps_it_opened_are_the_figure_that_lacked(converted: Converted) -> None:
    """Worked: 71 W of bulbs, by their sheets at most about 90 W at 13.5 V: 6.8 A.

    It carried these lamps for years, so that what it carried and closed on is known; 7 A opened on the bench is what
    lacked.
    """
    light = told(converted("street-72", {**SIX, **READ, f"{LIGHT}.tested": "7 A"}), "light switch")
    assert light.verdict == "stays"
    assert "40 mohm closed" in light.reason


def test_fewer_amps_than_its_duty_are_too_few(converted: Converted) -> None:
    light = told(converted("street-72", {**SIX, **READ, f"{LIGHT}.tested": "3 A"}), "light switch")
    assert light.verdict == "goes"


def test_a_contact_that_did_not_hold_goes_and_is_bought(converted: Converted) -> None:
    edits = {f"{LIGHT}.held": False, f"{LIGHT}.reading": "stuck at the third opening"}
    build = converted("street-72", edits)
    light = told(build, "light switch")
    assert light.verdict == "goes"
    assert "stuck at the third opening" in light.reason
    assert build.filled["switch light switch"].origin == "chosen"
    assert light.instead


@pytest.mark.parametrize(("evidence", "verdict"), [("marked", "stays"), ("unknown", "test first")])
def test_a_figure_settles_a_six_volt_contact(converted: Converted, evidence: str, verdict: str) -> None:
    """Worked: 5 A at 24 V, moulded into its body, covers the 0.2 A of an LED stop lamp; hearsay settles nothing."""
    edits = {"donor.items.rear brake switch.evidence": evidence, "donor.lighting": "DC"}
    assert told(converted("moped-48", edits), "rear brake switch").verdict == verdict


def test_a_horn_that_was_tried_on_direct_current_stays(converted: Converted) -> None:
    """Trade: a horn that ran on alternating current is tried on direct current first."""
    horn = {"name": "horn", "kind": "horn", "held": True, "reading": "loud at 13.5 V DC, 2.8 A"}
    edits = {"donor.lighting": "AC", "donor.items": [horn]}
    build = converted("street-72", edits)
    assert told(build, "horn").verdict == "stays"
    rule = {f.subject: f.verdict.word for f in build.findings if f.rule == "donor-loads-suit-the-rail"}
    assert rule["horn"] == "pass"


@pytest.mark.parametrize(
    ("keys", "slip"),
    [
        ({"held": True}, "together"),
        ({"reading": "40 mohm closed"}, "together"),
        ({"tested": "3 A"}, "held = true"),
        ({"held": False, "reading": "burnt", "tested": "3 A"}, "held = true"),
        ({"held": False, "reading": "burnt", "keep": "yes"}, 'keep = "no"'),
    ],
)
def test_keys_that_do_not_go_together_are_told(
    edited: Callable[..., object], keys: dict[str, object], slip: str
) -> None:
    with pytest.raises(ValueError, match=slip):
        edited("street-72", {f"{LIGHT}.{key}": value for key, value in keys.items()})


REAR = "donor.items.rear brake switch"


@pytest.mark.parametrize(
    ("contact", "verdict"),
    [("closes when braking", "stays"), ("opens when braking", "goes"), (None, "test first")],
)
def test_a_brake_switch_of_an_alternating_bike(converted: Converted, contact: str | None, verdict: str) -> None:
    """Trade: some such switches lie in the ignition's return and open to light the stop lamp."""
    assert told(converted("moped-48", {f"{REAR}.contact": contact}), "rear brake switch").verdict == verdict


def test_a_brake_switch_on_a_battery_closes(converted: Converted) -> None:
    """Trade: where a battery fed the stop lamp its switch closes to light it."""
    assert told(converted("street-72"), "front brake switch").verdict == "stays"


def test_a_contact_is_of_its_kind(edited: Callable[..., object]) -> None:
    with pytest.raises(ValueError, match="opens to stop"):
        edited("street-72", {"donor.items.kill switch.contact": "closes when braking"})
    with pytest.raises(ValueError, match="Leave out side"):
        edited("street-72", {"donor.items.kill switch.side": "earth"})


BUTTON = "donor.items.horn button.side"


def test_the_earth_side_is_told_with_what_it_asks(converted: Converted, below_60_v: dict[str, object]) -> None:
    """Trade: such a button joins the horn to the frame, and its lead becomes the return where returns are wires."""
    wired = told(converted("street-72", {BUTTON: "earth"}), "horn button")
    assert "second lead goes to the minus rail" in wired.reason
    framed = told(converted("street-72", {BUTTON: "earth", "donor.lamp_return": "frame"}), "horn button")
    assert "bare metal" in framed.reason
    turned = told(converted("street-72", {BUTTON: "earth", "donor.earth": "positive"}), "horn button")
    assert "was plus" in turned.reason
    common = told(converted("street-72", {BUTTON: "earth", **below_60_v}), "horn button")
    assert "above 60 V never" in common.reason
    high = told(converted("street-72", {BUTTON: "earth", "pins.converter": "CV-0303"}), "horn button")
    assert high.verdict == "goes"


@pytest.mark.parametrize(("side", "verdict"), [("live", "stays"), ("earth", "stays if"), (None, "stays if")])
def test_a_button_known_to_be_live_needs_no_second_lead(converted: Converted, side: str, verdict: str) -> None:
    edits = {BUTTON: side, "donor.lamp_return": "frame", "wishes.two_wire": True}
    assert told(converted("street-72", edits), "horn button").verdict == verdict


def test_what_it_opened_cold_lamps_and_all_settles_a_light_switch(converted: Converted) -> None:
    """Worked: tested with its own lamps at 4 A it carried 4 A and closed on ten times that: both are figures now."""
    lit_by_coils = {"donor.lighting": "AC", "donor.items.light switch.served": None}
    tried = {
        "donor.items.light switch.tested": "9 A",
        "donor.items.light switch.held": True,
        "donor.items.light switch.reading": "20 times on 13.5 V with its lamps, 0.03 ohm closed",
    }
    assert told(converted("street-72", lit_by_coils), "light switch").verdict == "test first"
    assert told(converted("street-72", {**lit_by_coils, **tried}), "light switch").verdict == "stays if"  # re-feed it
