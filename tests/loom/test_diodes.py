"""One telltale on both sides through two diodes: bought, laid, and solved."""

from collections.abc import Callable, Mapping
from dataclasses import replace

import pytest

from bom.build import Build
from bom.circuit.bike import WEAK, network
from bom.circuit.solve import solve

Converted = Callable[..., Build]
TELLTALE = {
    "name": "telltale",
    "kind": "filament",
    "power": "3 W",
    "on": ["indicate"],
    "run": "dash",
    "circuit": "signals",
    "telltale": "through two diodes",
}


@pytest.fixture
def with_diodes(converted: Converted, edited: Callable[..., object]) -> Callable[..., Build]:
    """Put such a telltale on the street bike; its keys may be set otherwise."""

    def make(**keys: object) -> Build:
        loads = [load.model_dump(exclude_unset=True) for load in edited("street-72").loads]  # type: ignore[attr-defined]
        for load in loads:
            for key, unit in (("power", "W"), ("current", "A")):
                if key in load:
                    load[key] = f"{load[key]} {unit}"
        fed = ["front indicators", "rear indicators", "telltale"]
        own = {**TELLTALE, **keys}
        return converted("street-72", {"loads": [*loads, own], "donor.items.indicator switch.feeds": fed})

    return make


def solved(build: Build, side: str) -> Mapping[str, float]:
    """Solve the state that indicates, with the bar switch laid to one side; a part that is open has no amps."""
    bike = build.walks.bike
    state = next(state for state in build.facts.budget.kinds if "indicate" in state.conditions)
    swapped = {"lit left": "lit right", "lit right": "lit left"} if side == "right" else {}
    bridges = tuple(replace(bridge, gate=swapped.get(bridge.gate, bridge.gate)) for bridge in bike.bridges)
    return solve(network(replace(bike, bridges=bridges), state, WEAK)).amps


@pytest.mark.parametrize(("side", "far"), [("left", "right"), ("right", "left")])
def test_either_side_lights_it_and_leaves_the_other_dark(
    side: str, far: str, with_diodes: Callable[..., Build]
) -> None:
    """Worked: 3 W may be 3.45 W at 13.5 V (UN R37, from memory): 0.26 A in 52.8 ohm; a little less at the lamp."""
    amps = solved(with_diodes(), side)
    assert amps["telltale"] == pytest.approx(0.25, abs=0.02)
    assert amps[f"telltale diodes {side}"] == pytest.approx(amps["telltale"])
    assert f"telltale diodes {far}" not in amps
    assert f"front indicators {far}" not in amps
    assert amps[f"wire to the telltale {far}"] == pytest.approx(0, abs=1e-9)


def test_two_diodes_are_bought_that_carry_it_and_block_the_rail(with_diodes: Callable[..., Build]) -> None:
    build = with_diodes()
    entry, duty = build.filled["telltale diodes"], build.duties["telltale diodes"]
    assert entry.place.quantity == 2
    assert entry.part.word("kind")[0] in ("plain diode", "ideal diode")
    assert duty.carry_a.high == pytest.approx(build.facts.budget.loads["telltale"].amps)
    assert duty.blocks_v.high == build.facts.margins.rail_high_v
    [line] = [line for line in build.bill.lines if "telltale diodes" in line.places]
    assert line.quantity == 2


def test_bare_leads_of_diodes_lie_in_splices(with_diodes: Callable[..., Build]) -> None:
    """Worked: at either side a wire and a diode meet; behind them two diodes and the wire to the lamp."""
    build = with_diodes()
    ways = {
        name: duty.ways.high for name, duty in build.duties.items() if name.startswith("telltale") and "splice" in name
    }
    assert ways == {
        "telltale plus left splice": 2,
        "telltale plus right splice": 2,
        "telltale diodes out splice": 3,
    }


def test_a_telltale_beside_its_indicators_shares_their_splice(with_diodes: Callable[..., Build]) -> None:
    """Worked: one wire, one front indicator and one diode meet at each side."""
    build = with_diodes(run="front")
    assert build.duties["front indicators and telltale plus left splice"].ways.high == 3
    assert solved(build, "left")["telltale"] == pytest.approx(0.25, abs=0.02)


def test_a_coils_clamp_is_not_asked_to_be_a_diode(with_diodes: Callable[..., Build]) -> None:
    build = with_diodes()
    of = {finding.rule: finding.subject for finding in build.findings if finding.rule == "diode-keeps-the-sides-apart"}
    assert of == {"diode-keeps-the-sides-apart": "telltale diodes"}


@pytest.mark.parametrize("side", ["left", "right"])
def test_an_open_wire_of_one_side_leaves_the_other_lit(side: str, with_diodes: Callable[..., Build]) -> None:
    build = with_diodes()
    bike = build.walks.bike
    state = next(state for state in build.facts.budget.kinds if "indicate" in state.conditions)
    amps = solve(network(bike, state, WEAK, without=f"wire to the telltale {side}")).amps
    lit = amps.get("telltale", 0.0)
    assert (lit > 0.2) is (side == "right")


def test_without_diodes_the_telltale_is_not_passed(with_diodes: Callable[..., Build]) -> None:
    """A 60 A telltale finds no diode: what it would do is not known."""
    build = with_diodes(kind="electronics", power=None, current="60 A")
    [finding] = [found for found in build.findings if found.rule == "telltale-keeps-the-sides-apart"]
    assert finding.verdict.word == "can't tell"
    assert "telltale diodes" in {hole.place.name for hole in build.holes}
