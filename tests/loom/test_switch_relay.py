"""Switches that pull in a relay: laid, solved, judged, and refused where the relay could not stand."""

from collections.abc import Callable
from pathlib import Path

import pytest

from bom.build import Build
from bom.judge.verdict import Verdict
from bom.read.load_job import load_job
from bom.read.margins import Margins

Converted = Callable[..., Build]
HORN = {"donor.items.horn button.relay": True}


@pytest.mark.parametrize("side", ["live", "earth"])
def test_the_horn_sounds_through_its_relay(side: str, converted: Converted) -> None:
    """Worked: the relay is in only while the horn is on; the button then carries the coil's amps alone."""
    build = converted("street-72", {**HORN, "donor.items.horn button.side": side})
    assert build.count(Verdict.FAIL) == 0
    states = {state.state.name: state for state in build.walks.states}
    loud, quiet = states["rain, everything on"], states["riding by night"]
    assert loud.amps("horn button relay") == pytest.approx(loud.amps("horn"), rel=1e-6)
    assert 0.08 < loud.amps("horn button") < 0.3
    assert quiet.amps("horn button relay") == 0.0
    assert not build.walks.waking or not build.walks.waking.stuck


def test_the_button_is_judged_by_the_coil(converted: Converted) -> None:
    """Worked: a button that served 1 A cannot open a 3 A horn; it can open a coil of 0.2 A."""
    served = {"donor.items.horn button.served": "1 A"}
    bare, relayed = converted("street-72", served), converted("street-72", {**served, **HORN})
    told = [next(i for i in build.donor if i.name == "horn button").verdict for build in (bare, relayed)]
    assert told == ["goes", "stays"]


def test_a_relay_joins_no_two_fuses(tmp_path: Path, project: Path, margins: Margins) -> None:
    text = (project / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    path = tmp_path / "bike.toml"
    path.write_text(text.replace('kind = "light switch"', 'kind = "light switch"\nrelay = true'), encoding="utf-8")
    faults: list[object] = []
    load_job(path, margins, faults)  # type: ignore[arg-type]
    assert any("one circuit" in str(fault) for fault in faults)


def test_a_brake_switch_that_opens_lights_through_the_rest_contact(converted: Converted) -> None:
    """Worked: held in while riding, the relay drops when braking, and its rest contact lights the stop lamp."""
    edits = {
        "donor.items.front brake switch.contact": "opens when braking",
        "donor.items.front brake switch.relay": True,
        "donor.items.front brake switch.keep": "yes",
    }
    build = converted("street-72", edits)
    assert build.count(Verdict.FAIL) == 0
    assert build.filled["front brake switch relay"].part.word("contact")[0] == "changeover"
    states = {state.state.name: state for state in build.walks.states}
    braking, riding = states["braking and indicating by night"], states["riding by night"]
    assert braking.amps("stop lamp") > 1.0
    assert braking.amps("front brake switch") == 0.0
    assert riding.amps("stop lamp") == 0.0
    assert riding.amps("front brake switch") > 0.08
    assert not build.walks.waking or not build.walks.waking.stuck
