"""A job's plain data edited by path."""

from typing import Any

import pytest

from bom.read.edits import add, at, drop, put


@pytest.fixture
def job() -> dict[str, Any]:
    leads = [{"function": "throttle signal", "low": "1 V"}, {"function": "brake"}]
    return {
        "loads": [{"name": "horn", "current": "3 A"}, {"name": "tail lamp", "power": "5 W"}],
        "devices": [{"name": "control", "leads": leads}],
    }


def test_a_key_is_set_in_a_table_that_is_there_or_not(job: dict[str, Any]) -> None:
    put(job, "pack.bms.charge", "40 A")
    put(job, "loads.horn.current", "4 A")
    assert job["pack"] == {"bms": {"charge": "40 A"}}
    assert job["loads"][0] == {"name": "horn", "current": "4 A"}


def test_a_lead_is_found_by_its_function(job: dict[str, Any]) -> None:
    put(job, "devices.control.leads.throttle signal.low", "0.9 V")
    assert at(job, "devices.control.leads.throttle signal.low") == "0.9 V"
    assert at(job, "devices.control.leads.brake.low") is None


def test_a_key_is_left_out_and_what_is_not_there_stays_so(job: dict[str, Any]) -> None:
    drop(job, "loads.tail lamp.power")
    drop(job, "loads.tail lamp.power")
    drop(job, "title")
    assert job["loads"][1] == {"name": "tail lamp"}


def test_an_entry_takes_the_place_of_its_name_and_nameless_ones_are_all_kept(job: dict[str, Any]) -> None:
    add(job, {"loads": [{"name": "horn", "current": "2 A"}], "donor": {"items": [{"name": "lock"}]}})
    for part in ("A", "B"):
        add(job, {"received": [{"part": part}]})
    assert job["loads"] == [{"name": "tail lamp", "power": "5 W"}, {"name": "horn", "current": "2 A"}]
    assert job["received"] == [{"part": "A"}, {"part": "B"}]
    assert job["donor"] == {"items": [{"name": "lock"}]}
