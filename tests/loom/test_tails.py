"""Lamps that came home by the frame and shall come home by wire: a tail from each shell, and no wire of the donor's.

Trade: a shell is the minus of an old lamp, common practice without a source.
"""

from collections.abc import Callable

import pytest

from bom.build import Build
from bom.loom.layout import lay_out
from bom.read.job import JobFile
from bom.read.margins import Margins

Edited = Callable[..., JobFile]
Converted = Callable[..., Build]
WIRED = {"wishes.two_wire": True}


def test_each_of_the_donors_shells_gets_a_tail(converted: Converted) -> None:
    """Worked: the indicators are new and bring their leads; of the donor's own there are head, tail, stop,
    speedometer lamp and horn, one shell each.
    """
    build = converted("frame-return-105", WIRED)
    tails = {place.name: place.quantity for place in build.loom.places if place.family == "tail"}
    of = ("headlamp", "tail lamp", "stop lamp", "horn", "speedometer lamp")
    assert tails == {f"tail of the {name}": 1 for name in of}
    assert set(tails) <= set(build.filled)
    assert build.filled["tail of the horn"].part.word("kind") == ("ring tail",)


def test_a_tail_goes_into_the_splice_of_its_return(converted: Converted) -> None:
    build = converted("frame-return-105", WIRED)
    for name in ("headlamp", "horn"):
        splice = f"{name} minus splice"
        assert f"tail of the {name}" in {link.second for link in build.loom.links if link.first == splice}
        assert build.duties[splice].ways.high == 2  # the tail and the wire home


@pytest.mark.parametrize(
    ("starter", "wish"), [("frame-return-105", None), ("frame-return-105", False), ("street-72", True)]
)
def test_no_tail_where_the_frame_stays_the_way_home_or_never_was(
    starter: str, wish: bool | None, edited: Edited, margins: Margins
) -> None:
    loom = lay_out(edited(starter, {"wishes.two_wire": wish}), margins, "12 V")
    assert "tail" not in {place.family for place in loom.places}


def test_a_tail_carries_every_light_of_its_lamp(converted: Converted) -> None:
    """Worked: of one BAY15d lamp the shell carries tail and stop light together."""
    build = converted("frame-return-105", WIRED | {"loads.stop lamp.same_lamp_as": "tail lamp"})
    loads = build.facts.budget.loads
    both = loads["tail lamp"].amps + loads["stop lamp"].amps
    assert build.duties["tail of the tail lamp"].carry_a.high == pytest.approx(both)
    assert "tail of the stop lamp" not in build.duties


def test_tails_are_counted_by_the_shell(converted: Converted) -> None:
    """Worked: two pairs of the donor's own indicators, each in its branch: two shells a load, half of the amps each.

    Each shell comes home by a wire of its own: the tail and that wire meet in its splice.
    """
    own = {f"loads.{side} indicators.fit": "donor" for side in ("front", "rear")}
    build = converted("frame-return-105", WIRED | own)
    place = build.loom.place("tail of the front indicators")
    assert place.quantity == 2
    assert build.duties["front indicators minus left splice"].ways.high == 2
    amps = build.facts.budget.loads["front indicators"]
    assert build.duties[place.name].carry_a.high == pytest.approx(amps.amps / amps.load.count)


@pytest.mark.parametrize(("starter", "items"), [("frame-return-105", {""}), ("street-72", {"loom"})])
def test_return_wires_are_the_donors_only_where_it_had_them(
    starter: str, items: set[str], edited: Edited, margins: Margins
) -> None:
    edits = WIRED | {"donor.items.loom.keep": "if it passes"}
    loom = lay_out(edited(starter, edits), margins, "12 V")
    back = {wire.name for wire in loom.wires if wire.name.startswith("wire from the ")}
    assert back
    assert {loom.place(name).item for name in back} == items
    assert loom.place("wire to the horn").item == "loom"


def test_shells_on_the_frame_want_an_isolated_converter(converted: Converted) -> None:
    """Worked: a shell with a tail still touches the frame, so that a common minus would put the pack's minus there."""
    for edits, word in ((WIRED, "frame"), ({"donor.lamp_return": "wire"}, "holders")):
        assert converted("frame-return-105", edits).duties["converter"].word("shells") == word


def test_an_indicator_without_its_tail_has_no_return(converted: Converted) -> None:
    """No tail on the shelf carries 60 A; with one that does, the wire home is whole."""
    own = {"donor.lamp_return": "frame", **WIRED}
    cause = "the lamps have no return"
    many_amps = {"loads.front indicators.current": "60 A", "loads.front indicators.power": None}
    for edits, answer in (({}, "no"), (many_amps, "yes")):
        build = converted("street-72", own | edits)
        [found] = [found.answer for found in build.blinkers if found.cause == cause]
        assert found == answer
