"""A pinned mistake, the whole way: it stands as pinned, or leaves its place open, and the bike is not sound."""

from collections.abc import Callable

from bom.build import Build

Converted = Callable[..., Build]


def test_a_pinned_mistake_stands_and_is_not_sound(converted: Converted) -> None:
    """An 80 V fuse on 84 V with the rest of the bike chosen around it."""
    build = converted("street-72", {"pins.main fuse": "MF-0205"})
    assert build.filled["main fuse"].part_id == "MF-0205"
    assert build.filled["main fuse"].origin == "pinned"
    assert not build.sound
    assert ("holds-dc-volts", "main fuse") in {(f.rule, f.subject) for f in build.findings if f.verdict.word == "fail"}


def test_a_mistake_that_no_part_survives_leaves_the_place_open(converted: Converted) -> None:
    """Without precharge no contactor closes on 84.0 V / (0.9 x 0.038 ohm) = 2456 A."""
    build = converted("street-72", {"wishes.precharge": False})
    hole = next(hole for hole in build.holes if hole.place.name == "contactor")
    assert hole.verdict.word == "fail"
    assert "2.46 kA" in hole.sentence
    assert not build.sound
