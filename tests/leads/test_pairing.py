"""Which lead joins which, and what is bought for it; counted by hand from the devices of conftest."""

from collections.abc import Callable
from typing import Any

import pytest

from bom.leads.model import Pairing
from bom.leads.pairing import pair
from bom.loom.layout import lay_out
from bom.read.job import JobFile
from bom.read.margins import Margins

Edited = Callable[..., JobFile]
Devices = Callable[..., list[dict[str, Any]]]
Paired = Callable[..., Pairing]


@pytest.fixture
def paired(edited: Edited, devices: Devices) -> Paired:
    def make(changes: Any = None, *more: dict[str, Any]) -> Pairing:
        return pair(edited("street-72", {"devices": devices(changes, *more)}))

    return make


def met(pairing: Pairing) -> dict[str, str]:
    return {join.second.name: join.first.name for join in pairing.joins}


def test_leads_of_one_function_join(paired: Paired) -> None:
    assert met(paired()) == {
        "grip: throttle supply": "control: throttle supply",
        "grip: throttle signal": "control: throttle signal",
        "grip: throttle ground": "control: throttle ground",
        "lever: brake": "control: brake",
        "lever: brake ground": "control: brake ground",
        "button: reverse": "control: reverse",
        "button: button ground": "control: button ground",
        "display: meter supply": "control: 12 V output",
        "display: meter ground": "control: signal ground",
    }
    assert paired().unused == ()


def test_the_order_of_devices_changes_no_pair(edited: Edited, devices: Devices) -> None:
    tables = devices()
    there, back = (pair(edited("street-72", {"devices": order})) for order in (tables, tables[::-1]))
    assert met(there) == met(back)


def test_what_the_job_says_stands_over_the_function(paired: Paired) -> None:
    found = paired({"lever: brake ground": {"to": "control: signal ground"}})
    assert met(found)["lever: brake ground"] == "control: signal ground"
    assert [end.name for end in found.unused] == ["control: brake ground"]


def test_what_joins_nothing_is_capped(paired: Paired) -> None:
    found = paired({"control: reverse": {"to": "nothing"}})
    assert [end.name for end in found.unused] == ["control: reverse", "button: reverse"]
    caps = {fitting.name: fitting.count for fitting in found.fittings if fitting.family == "end_cap"}
    assert caps == {"control lead caps": 1, "button lead caps": 1}


def test_two_brake_switches_share_the_brake_input(paired: Paired) -> None:
    pedal = {
        "name": "pedal",
        "kind": "brake switch",
        "leads": [
            {"function": "brake", "signal": "contact"},
            {"function": "brake ground", "signal": "contact"},
        ],
    }
    found = paired(None, pedal)
    assert met(found)["lever: brake"] == met(found)["pedal: brake"] == "control: brake"
    splices = {fitting.name: fitting.leads for fitting in found.fittings if fitting.family == "splice"}
    # the controller's own lead and one to each switch
    assert splices == {"control: brake splice": 3, "control: brake ground splice": 3}


def test_a_plug_has_a_way_for_each_lead(paired: Paired) -> None:
    plugs = {entry.name: entry.leads for entry in paired().fittings if entry.family == "signal_connector"}
    assert plugs == {
        "grip lead plug": 3,
        "lever lead plug": 2,
        "button lead plug": 2,
        "display lead plug": 2,
    }
    grip = [join.way for join in paired().joins if join.plug == "grip lead plug"]
    assert grip == [1, 2, 3]


def test_pack_volts_have_a_plug_of_their_own(paired: Paired) -> None:
    gauge = {"function": "battery gauge", "signal": "pack-volts supply"}
    takes = {"function": "battery gauge", "signal": "pack-volts feed"}
    other = {"name": "gauge", "kind": "meter", "leads": [takes, {"function": "meter ground", "signal": "ground"}]}
    control = {"name": "second", "kind": "controller", "leads": [gauge]}
    plugs = {join.plug for join in paired(None, other, control).joins if "gauge" in (join.second.device,)}
    assert plugs == {"gauge lead plug at pack volts", "gauge lead plug"}


def test_the_key_input_joins_the_wire_of_the_loom(paired: Paired) -> None:
    control = {
        "name": "second",
        "kind": "controller",
        "leads": [{"function": "key input", "signal": "pack-volts enable"}],
    }
    join = next(join for join in paired(None, control).joins if join.first.device == "second")
    assert (join.second.name, join.plug) == ("loom: key input wire", "")


@pytest.mark.parametrize(
    ("to", "signal"), [("front brake switch", "12 V supply"), ("horn", "12 V supply"), ("kill switch", "contact")]
)
def test_a_donor_item_or_a_load_is_named_and_tapped(to: str, signal: str, paired: Paired) -> None:
    found = paired({"control: brake": {"to": to, "signal": "12 V high-active"}})
    join = next(join for join in found.joins if join.second.device == to)
    assert (join.second.signal, join.plug) == (signal, "")
    assert f"control: brake tap at {to}" in found.fitting_of


def test_look_alikes_are_of_the_same_device_and_in_use(paired: Paired) -> None:
    green = {"colour": "green", "scheme": "words"}
    found = paired(
        {"control: reverse": {"to": "nothing", **green}, "control: brake": green, "grip: throttle signal": green}
    )
    assert [end.name for end in found.look_alikes(found.unused[0])] == ["control: brake"]


def test_a_job_without_devices_has_the_loom_it_had(edited: Edited, devices: Devices, margins: Margins) -> None:
    bare = lay_out(edited("street-72"), margins, "12 V")
    full = lay_out(edited("street-72", {"devices": devices()}), margins, "12 V")
    assert bare.leads.joins == ()
    assert {place.name for place in full.places} - {place.name for place in bare.places} == set(full.leads.fitting_of)
    old = tuple(link for link in full.links if link.kind != "beside" or link in bare.links)
    assert (full.wires, old, full.bridges) == (bare.wires, bare.links, bare.bridges)
