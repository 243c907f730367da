"""Lamp returns opened one at a time; figures worked by hand (Kirchhoff's laws, filaments taken hot)."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from types import SimpleNamespace

import pytest

from bom.build import Build
from bom.circuit.lamp_earths import Backfed
from bom.read.margins import Margins
from bom.rules.lost_lamp_earth_is_told import judge

Converted = Callable[..., Build]
RULE = "lost-lamp-earth-is-told"


SIDES = ("left", "right")
PARKING = {
    "name": "parking light",
    "kind": "LED",
    "current": "10 mA",
    "on": ["night"],
    "circuit": "tail",
    "run": "front",
    "same_lamp_as": "front indicators",
}


def joined(converted: Converted, project: Path) -> Build:
    """Convert the street bike with a parking light in the front indicators, for which their returns stay joined."""
    starter = (project / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    return converted("street-72", {"loads": [*tomllib.loads(starter)["loads"], PARKING]})


def told(build: Build) -> dict[str, str]:
    return {finding.subject: finding.verdict.word for finding in build.findings if finding.rule == RULE}


@pytest.mark.parametrize("starter", ["street-72", "positive-earth-60"])
def test_each_indicator_housing_comes_home_by_a_wire_of_its_own(starter: str, converted: Converted) -> None:
    """Worked: four housings, four wires; one that is lost darkens its own lamp and feeds no other."""
    build = converted(starter)
    back = [name for name in build.walks.bike.strands if name.startswith("wire from the ") and "indicators" in name]
    assert sorted(back) == [f"wire from the {end} indicators {side}" for end in ("front", "rear") for side in SIDES]
    assert all(build.loom.wire(name).end == "12 V rail minus" for name in back)
    assert not [subject for subject in told(build) if "indicators" in subject]


def test_an_indicator_that_lost_its_return_blinks_through_the_far_side(converted: Converted, project: Path) -> None:
    """Worked: left front, right front and right rear, three filaments of 21 W in a row: a third of the volts each."""
    build = joined(converted, project)
    assert told(build) == {"wire from the front indicators": "tight"}
    fed = next(fed for fed in build.walks.lamp_earths if fed.earth == "wire from the front indicators")
    standing = next(standing for standing in build.walks.states if standing.state.name == fed.state)
    fed_v = standing.volts("front indicators plus left", "12 V rail minus")  # behind fuse, flasher and switch
    assert fed.lamp == "front indicators right"
    assert fed.volts == pytest.approx(-fed_v / 3, rel=0.05)


def test_a_tail_lamp_on_the_frame_feeds_the_stop_circuit_through_its_own_body(converted: Converted) -> None:
    """Worked: 5 W, 21 W and 5 W in a row are 36.5, 8.7 and 36.5 ohm at 13.5 V: 36.5 / 81.6 of the volts at the last."""
    lamp = {"kind": "filament", "run": "rear"}
    loads = [
        lamp | {"name": "tail lamp", "power": "5 W", "on": ["night"], "circuit": "tail"},
        lamp | {"name": "stop lamp", "power": "21 W", "on": ["brake"], "circuit": "stop", "same_lamp_as": "tail lamp"},
        lamp | {"name": "stop repeater", "power": "5 W", "on": ["brake"], "circuit": "stop"},
    ]
    switch = {"name": "brake switch", "kind": "brake switch", "feeds": ["stop lamp", "stop repeater"]}
    build = converted("frame-return-105", {"loads": loads, "donor.items": [switch]})
    fed = next(fed for fed in build.walks.lamp_earths if fed.earth == "body of the tail lamp")
    rail_v = next(s for s in build.walks.states if s.state.name == fed.state).volts("12 V plus", "12 V minus")
    assert fed.lamp == "stop repeater"
    assert fed.volts == pytest.approx(rail_v * 36.5 / 81.6, rel=0.05)
    assert told(build) == {"body of the tail lamp": "tight"}


def test_leds_that_are_off_pass_nothing(converted: Converted) -> None:
    assert told(converted("moped-48")) == {"lamp returns": "pass"}


def test_lamps_with_bodies_of_their_own_on_the_frame_share_nothing(converted: Converted) -> None:
    assert told(converted("frame-return-105")) == {}


@pytest.mark.parametrize(("volts", "verdict"), [(-1.36, "tight"), (-1.34, "pass"), (1.36, "tight"), (1.34, "pass")])
def test_more_than_a_tenth_is_told_either_way(volts: float, verdict: str, margins: Margins) -> None:
    """Worked: a tenth of 13.5 V is 1.35 V, backwards as well as forwards through a lamp that is off."""
    fed = Backfed("a wire", "a lamp", volts, "a state")
    facts = SimpleNamespace(margins=margins)
    view = SimpleNamespace(walks=SimpleNamespace(lamp_earths=(fed,)), facts=facts)
    assert [answer.verdict.word for answer in judge(view)] == [verdict]
