"""What settles a donor contact: a printed figure above 30 V DC, a reading at 12 V.

Trade: contacts of old vehicles and small relays are printed to about 30 V DC; above that an arc has no zero to die
at, and what was tried or served for years at 12 V proves nothing (common practice, no source).
"""

from collections.abc import Callable

import pytest

from bom.build import Build
from bom.check.donor import DonorVerdict

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
