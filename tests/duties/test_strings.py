"""Strings in parallel: how far apart they may be when joined, and what their fuses see."""

from collections.abc import Callable

import pytest

from bom.duties.envelope import envelope
from bom.duties.strings import most_apart_v
from bom.loom.layout import lay_out
from bom.read.margins import Margins

TWO = {"pack.strings": 2, "pack.pack_resistance": "20 mohm", "pack.bms.charge": "50 A"}


def test_two_strings_of_40_mohm_may_be_2_v_apart(
    edited: Callable[..., object], facts_of: Callable[..., object]
) -> None:
    """Worked, Ohm's law: 2 V over 2 x 40 mohm drive 25 A, half of the 50 A that the pack may be charged with."""
    apart = most_apart_v(facts_of(edited("street-72", TWO)))
    assert apart is not None
    assert apart.low == apart.high == pytest.approx(2.0)


@pytest.mark.parametrize("lacking", ["pack.pack_resistance", "pack.bms.charge"])
def test_what_is_not_known_gives_no_volts(
    lacking: str, edited: Callable[..., object], facts_of: Callable[..., object]
) -> None:
    assert most_apart_v(facts_of(edited("street-72", {**TWO, lacking: None}))) is None


def test_a_string_fuse_carries_its_share_and_opens_on_what_the_others_push_back(
    edited: Callable[..., object], facts_of: Callable[..., object], margins: Margins
) -> None:
    """Worked: of three strings one carries a third, two push back two thirds of 84 V / (0.9 x 20 mohm)."""
    job = edited("street-72", {**TWO, "pack.strings": 3})
    loom = lay_out(job, margins, "12 V")
    duties = envelope(loom, facts_of(job))
    fuse, main = duties["string fuse"], duties["main fuse"]
    assert loom.place("string fuse").quantity == loom.place("string fuse holder").quantity == 3
    assert fuse.carry_a.high == pytest.approx(main.carry_a.high / 3)
    assert fuse.peak_a.high == pytest.approx(160 / 3)
    assert fuse.fault_high_a.high == pytest.approx(4667 * 2 / 3, rel=1e-3)


@pytest.mark.parametrize(("strings", "least_a"), [(2, 470.4), (3, 313.6), (6, 156.8)])
def test_a_string_fuse_must_open_on_what_one_string_gives(
    strings: int, least_a: float, edited: Callable[..., object], facts_of: Callable[..., object], margins: Margins
) -> None:
    """Worked: empty at the 62 V cut, 20 mohm x 3 cold and aged, wire 1 % of 62 V at 105 A: 62 / 0.0659 = 940.8 A."""
    job = edited("street-72", {**TWO, "pack.strings": strings})
    duties = envelope(lay_out(job, margins, "12 V"), facts_of(job))
    assert duties["string fuse"].fault_low_a.low == pytest.approx(least_a, rel=1e-3)
    assert duties["string fuse"].fault_low_a.low == pytest.approx(duties["main fuse"].fault_low_a.low / strings)


def test_a_bike_of_one_string_has_no_string_fuse(edited: Callable[..., object], margins: Margins) -> None:
    loom = lay_out(edited("street-72"), margins, "12 V")
    assert "string fuse" not in {place.name for place in loom.places}


@pytest.mark.parametrize(("strings", "surely_a"), [(2, 240.0), (3, 150.0)])
def test_two_or_three_strings_get_a_fuse_that_opens(
    strings: int, surely_a: float, converted: Callable[..., object]
) -> None:
    """Worked: 62 V / (38 mohm x 3 + 5.9 mohm) = 517 A, shared evenly; of 80 A and 50 A at 3 x the rating."""
    build = converted("street-72", {"pack.strings": strings})
    assert "string fuse" not in {hole.place.name for hole in build.holes}
    rated = build.filled["string fuse"].part.number("rated_a")[0]
    assert 3 * rated == surely_a <= 517 / strings


def test_six_strings_have_too_little_behind_each_fuse(converted: Callable[..., object]) -> None:
    """Worked: 517 A / 6 = 86 A; 18.4 A running over 0.8 wants 23 A or more, and the least main fuse 3 x 40 A."""
    (hole,) = converted("street-72", {"pack.strings": 6}).holes
    assert hole.place.name == "string fuse"
    assert "120 A, needs at most 86.2 A (what one string gives" in hole.sentence
