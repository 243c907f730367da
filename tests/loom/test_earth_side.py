"""Switches in the return of their loads, laid out, solved and walked.

Trade: most horn buttons join the horn to the frame; some dip and brake switches lie on the earth side too.
"""

from collections.abc import Callable

import pytest

from bom.build import Build
from bom.judge.verdict import Verdict
from bom.loom.layout import lay_out
from bom.loom.model import Loom
from bom.read.job import JobFile
from bom.read.margins import Margins

Converted = Callable[..., Build]
HORN = {"donor.items.horn button.side": "earth"}
STOP = {"donor.items.front brake switch.side": "earth"}
LIGHTS = {"donor.items.light switch.side": "earth"}
DIP = {"name": "dip switch", "kind": "dip switch", "feeds": ["headlamp"], "side": "earth"}


def laid(edited: Callable[..., JobFile], margins: Margins, edits: dict[str, object]) -> Loom:
    return lay_out(edited("street-72", edits), margins, "12 V")


def ends(loom: Loom, wire: str) -> tuple[str, str]:
    return loom.wire(wire).start, loom.wire(wire).end


def test_with_wired_returns_its_lead_is_the_return(edited: Callable[..., JobFile], margins: Margins) -> None:
    loom = laid(edited, margins, HORN)
    assert ends(loom, "wire to the horn") == ("horn circuit fuse out", "horn plus")
    assert ends(loom, "wire from the horn") == ("horn minus", "horn button (horn circuit) in")
    assert ends(loom, "horn circuit from the horn button") == ("horn button (horn circuit) out", "12 V rail minus")
    bridges = {bridge.name: (bridge.start, bridge.end) for bridge in loom.bridges}
    assert bridges["horn"] == ("horn plus", "horn minus")
    assert bridges["horn button (horn circuit)"][1] == "horn button (horn circuit) out"


def test_on_a_frame_it_joins_the_frame(edited: Callable[..., JobFile], margins: Margins) -> None:
    loom = laid(edited, margins, {**HORN, "donor.lamp_return": "frame"})
    assert "horn circuit from the horn button" not in {wire.name for wire in loom.wires}
    bridges = {bridge.name: (bridge.start, bridge.end) for bridge in loom.bridges}
    assert bridges["horn button (horn circuit)"] == ("horn button (horn circuit) in", "frame")
    assert bridges["stop lamp"] == ("stop lamp plus", "frame")


@pytest.mark.parametrize("back", ["wire", "frame"])
def test_the_solved_horn_sounds_and_its_amps_come_home(converted: Converted, back: str) -> None:
    """Worked: 3 A as measured go through the horn's button and nowhere else."""
    build = converted("street-72", {**HORN, **STOP, "donor.lamp_return": back})
    assert not [f for f in build.findings if f.rule == "states-stand" and f.verdict == Verdict.FAIL]
    state = next(state for state in build.walks.states if "horn" in state.state.conditions)
    assert state.amps("horn button (horn circuit)") == pytest.approx(3.0, rel=0.02)
    assert state.amps("wire from the horn") == pytest.approx(3.0, rel=0.02)
    assert build.duties["switch horn button"].break_a.high == pytest.approx(3.0)
    at_minus = [fault for fault in build.walks.faults if fault.point == "horn minus" and fault.to == "its return"]
    assert all(fault.wire is None or fault.wire.end_c < fault.wire.limit_c for fault in at_minus)
    opened = next(opened for opened in build.walks.opens if opened.wire == "wire from the horn")
    assert "horn" in opened.dark


def test_a_dip_switch_parts_the_returns(converted: Converted, edited: Callable[..., JobFile], margins: Margins) -> None:
    """Worked: one filament burns at a time, whose amps come home by its own way."""
    items = [DIP]
    loom = laid(edited, margins, {"donor.items": items})
    assert ends(loom, "wire from the headlamp dip") == ("headlamp minus dip", "dip switch (headlamp circuit) in dip")
    assert ends(loom, "wire from the headlamp main")[1] == "dip switch (headlamp circuit) in main"
    build = converted("street-72", {"donor.items": items})
    state = next(s for s in build.walks.states if "night" in s.state.conditions)
    assert state.amps("wire from the headlamp dip") > 3.5
    assert abs(state.amps("wire from the headlamp main")) < 0.01


def test_switches_behind_each_other_lie_in_one_return(edited: Callable[..., JobFile], margins: Margins) -> None:
    items = [DIP, {"name": "light switch", "kind": "light switch", "feeds": ["headlamp"], "side": "earth"}]
    loom = laid(edited, margins, {"donor.items": items})
    assert ends(loom, "headlamp circuit from the dip switch") == (
        "dip switch (headlamp circuit) out",
        "light switch (headlamp circuit) in",
    )
    assert ends(loom, "headlamp circuit from the light switch")[1] == "12 V rail minus"


def test_every_earth_side_switch_is_judged_as_any_other(converted: Converted) -> None:
    build = converted("street-72", {**LIGHTS, "donor.items.light switch.dc_volts": "6 V"})
    told = next(item for item in build.donor if item.name == "light switch")
    assert told.verdict == "goes"
