"""Dead blinkers: each cause put into a job on purpose is answered yes, or says what would settle it.

Trade: the causes themselves, common practice without a source.
"""

from collections.abc import Callable, Mapping

import pytest

from bom.build import Build
from bom.check.blinker_tests import TESTS
from bom.check.blinkers import NO, UNTOLD, YES
from bom.circuit.telltale import FarSide

Converted = Callable[..., Build]
CAN = "donor.items.flasher can"
LED = {f"loads.{side} indicators.kind": "LED" for side in ("front", "rear")} | {
    f"loads.{side} indicators.power": "1.5 W" for side in ("front", "rear")
}
FED = {"donor.items.indicator switch.feeds": ["front indicators", "rear indicators", "telltale"]}


@pytest.fixture
def with_telltale(converted: Converted, edited: Callable[..., object]) -> Callable[..., Build]:
    """Put one telltale on the street bike."""

    def make(edits: Mapping[str, object], **keys: object) -> Build:
        own = {"name": "telltale", "kind": "filament", "power": "3 W", "on": ["indicate"], "run": "dash"}
        own |= {"circuit": "signals", "purpose": "telltale", **keys}
        job = edited("street-72", edits)
        loads = [load.model_dump(exclude_unset=True) for load in job.loads]  # type: ignore[attr-defined]
        for load in loads:
            for key, unit in (("power", "W"), ("current", "A")):
                if key in load:
                    load[key] = f"{load[key]} {unit}"
        return converted("street-72", {"loads": [*loads, own], **FED})

    return make


def answers(build: Build, of: str = "") -> dict[str, str]:
    return {cause.cause: cause.answer for cause in build.blinkers if cause.of.startswith(of)}


def test_a_sound_bike_has_no_cause(converted: Converted) -> None:
    found = answers(converted("street-72"))
    assert set(found.values()) == {NO}
    assert len(found) == 9


def test_nothing_is_asked_where_nothing_indicates(converted: Converted) -> None:
    assert converted("moped-48").blinkers == ()


@pytest.mark.parametrize(("edits", "cause", "answer"), [
    # Worked: two lamps of 21 W are 42 W a side
    ({f"{CAN}.watts_min": "43 W"}, "too few lamp watts", YES),
    ({f"{CAN}.watts_min": None}, "too few lamp watts", UNTOLD),
    ({f"{CAN}.watts_min": None, f"{CAN}.senses": "load"}, "too few lamp watts", UNTOLD),
    ({f"{CAN}.watts_min": None, f"{CAN}.senses": "nothing"}, "too few lamp watts", NO),
    (LED, "too few lamp watts", YES),
    ({f"{CAN}.watts_min": "20 W", f"{CAN}.watts_max": "41 W"}, "too many lamp watts", YES),
    # a 6 V unit on the 12 V side; one that hangs in a dip to 11 V
    ({f"{CAN}.supply_min": "5 V", f"{CAN}.supply_max": "7.5 V"}, "supply outside its window", YES),
    ({f"{CAN}.supply_min": "11.5 V"}, "supply outside its window", YES),
    ({"donor.supply": "6 V"}, "supply outside its window", YES),
    ({f"{CAN}.pins": 3}, "a pin without its wire", YES),
    ({f"{CAN}.pins": None}, "a pin without its wire", UNTOLD),
    ({f"{CAN}.polarity": "positive earth"}, "made for the other earth", YES),
    ({f"{CAN}.polarity": "negative earth", "donor.earth": "positive"}, "made for the other earth", YES),
    # Published: UN R53 6.3, 90 flashes a minute and 30 either way; read second-hand on a public page
    ({f"{CAN}.rate": 59.0}, "flashes too slow or too fast", YES),
    ({f"{CAN}.rate": 60.0}, "flashes too slow or too fast", NO),
    ({f"{CAN}.rate": 120.0}, "flashes too slow or too fast", NO),
    ({f"{CAN}.rate": 121.0}, "flashes too slow or too fast", YES),
    ({f"{CAN}.rate": None}, "flashes too slow or too fast", UNTOLD),
])  # fmt: skip
def test_the_donors_flasher(edits: Mapping[str, object], cause: str, answer: str, converted: Converted) -> None:
    own = "donor" if answer == NO else "donor's own"
    assert answers(converted("street-72", edits), own)[cause] == answer


@pytest.mark.parametrize(("edits", "cause", "answer"), [
    # paint and rust are in no drawing
    ({"donor.lamp_return": "frame"}, "the lamps have no return", UNTOLD),
    ({}, "the lamps have no return", NO),
    ({"donor.items.indicator switch.feeds": ["front indicators"]}, "a switch, fuse or wire does not feed it", YES),
    # a job may have no state in which anything indicates: all of its lamps are then untold
    (LED, "a telltale lights the other side", UNTOLD),
    ({}, "a telltale lights the other side", NO),
    (LED, "LED lamps the wrong way round", NO),
    (LED | {"donor.earth": "positive"}, "LED lamps the wrong way round", UNTOLD),
])  # fmt: skip
def test_the_bike(edits: Mapping[str, object], cause: str, answer: str, converted: Converted) -> None:
    assert answers(converted("street-72", edits), "the bike")[cause] == answer


@pytest.mark.parametrize(("edits", "telltale", "pieces", "verdict"), [
    ({}, "between the sides", None, "pass"),
    (LED, "between the sides", None, "fail"),
    (LED, "through two diodes", None, "pass"),
    (LED, "one a side", None, "pass"),
    (LED, None, 1, "can't tell"),
    ({}, None, 1, "pass"),
])  # fmt: skip
def test_one_telltale_for_both_sides(
    edits: Mapping[str, object], telltale: str | None, pieces: int | None, verdict: str, with_telltale: Converted
) -> None:
    build = with_telltale(edits, telltale=telltale, pieces=pieces)
    [finding] = [f for f in build.findings if f.rule == "telltale-keeps-the-sides-apart"]
    assert finding.verdict.word == verdict
    of_bike = answers(build, "the bike")["a telltale lights the other side"]
    assert of_bike == {"pass": NO, "fail": YES, "can't tell": UNTOLD}[verdict]


def test_the_far_side_obeys_kirchhoff(with_telltale: Converted) -> None:
    """Worked: 3 W may be 3.45 W and 21 W 26.5 W at 13.5 V (UN R37, from memory and second-hand): 52.8 ohm before two
    lamps of 6.88 ohm side by side. Of 12.9 V the far side has 3.44 / 56.3: 0.79 V, 115 mA a lamp, 6 % of the rail.
    """
    far = with_telltale({}, telltale="between the sides").walks.far_side
    assert isinstance(far, FarSide)
    assert far.volts == pytest.approx(0.79, abs=0.02)
    assert far.amps == pytest.approx(0.115, abs=0.003)
    assert far.volts_share == pytest.approx(0.06, abs=0.005)


def test_a_telltale_across_the_sides_is_bought_once_and_has_no_minus(with_telltale: Converted) -> None:
    build = with_telltale({}, telltale="between the sides")
    wires = {wire.name for wire in build.loom.wires if "telltale" in wire.name}
    assert wires == {"wire to the telltale left", "wire to the telltale right"}
    of_two = {wire.name for wire in with_telltale({}, telltale="one a side").loom.wires}
    assert {"wire from the telltale left", "wire from the telltale right"} <= of_two


def test_every_cause_has_its_test(converted: Converted) -> None:
    for build in (converted("street-72"), converted("frame-return-105"), converted("street-72", LED)):
        for cause in build.blinkers:
            assert cause.test == TESTS[cause.cause]
            assert bool(cause.datum) == (cause.answer == UNTOLD)
