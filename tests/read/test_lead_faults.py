"""Faults of control leads in a job file: all told at once, each with its line and what is accepted."""

from collections.abc import Callable
from pathlib import Path

import pytest

from bom.errors import Fault
from bom.read.load_job import load_job
from bom.read.margins import Margins

Told = Callable[[str], dict[str, Fault]]

DEVICES = """
[[devices]]
name = "control"
kind = "controller"
scheme = "IEC 60757"
leads = [
  {{ function = "throttle", signal = "5 V analogue", colour = "WH", {first} }},
  {{ function = "throttle minus", signal = "ground", {second} }},
]

[[devices]]
name = "{name}"
kind = "throttle"
{rest}
[[devices.leads]]
function = "wiper"
"""


@pytest.fixture
def told(project: Path, tmp_path: Path, margins: Margins) -> Told:
    """Give the faults of the street job with these devices, by the last word of their place."""

    def tell(devices: str) -> dict[str, Fault]:
        path = tmp_path / "bike.toml"
        text = (project / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
        path.write_text(text + devices, encoding="utf-8")
        faults: list[Fault] = []
        load_job(path, margins, faults)
        return {fault.place.rpartition(".")[2]: fault for fault in faults}

    return tell


def devices(first: str = 'low = "1 V"', second: str = 'pin = "3"', name: str = "grip", rest: str = "") -> str:
    return DEVICES.format(first=first, second=second, name=name, rest=rest)


def test_sound_devices_have_no_faults(told: Told) -> None:
    assert told(devices(first='to = "grip: throttle signal"')) == {}


@pytest.mark.parametrize(
    ("changes", "place", "says"),
    [
        ({"second": 'colour = "GR"'}, "colour", "It is a colour in DIN letters"),
        ({"rest": '[[devices.leads]]\nfunction = "hall A"\ncolour = "ws"\n'}, "colour", 'scheme = "IEC 60757"'),
        ({"second": 'name = "throttle signal"'}, "name", "tell them apart"),
        ({"first": 'to = "gripp: throttle signal"'}, "to", 'The nearest is "grip: throttle signal"'),
        ({"first": 'to = "control: throttle ground"'}, "to", "another device"),
        ({"name": "control"}, "name", "its own name"),
        ({"name": "horn button"}, "name", "donor item"),
        ({"name": "loom"}, "name", "loom"),
        ({"name": "a: b"}, "name", '": "'),
        ({"rest": 'ways = 1\n[[devices.leads]]\nfunction = "hall A"\n'}, "ways", "2 of its leads end in this plug"),
        ({"first": 'supply = "40 V"'}, "supply", "current"),
        ({"first": 'low = "900 V"'}, "low", "0 V to 200 V"),
    ],
)
def test_a_fault_says_what_is_accepted(changes: dict[str, str], place: str, says: str, told: Told) -> None:
    faults = told(devices(**changes))
    assert list(faults) == [place]
    assert says in faults[place].accepted
    assert faults[place].line > 200


def test_all_are_told_at_once(told: Told) -> None:
    faults = told(devices(first='signl = "ground"', second='colour = "GR", to = "nobody"', rest='kind2 = "x"\n'))
    assert {"colour", "to", "signl", "kind2"} <= set(faults)


def test_trade_words_are_read(told: Told, project: Path, tmp_path: Path, margins: Margins) -> None:
    """Trade: builders write throttle, wiper and throttle minus."""
    told(devices())
    loaded = load_job(tmp_path / "bike.toml", margins, [])
    assert loaded is not None
    found = [[lead.function for lead in device.leads] for device in loaded.job.devices]
    assert found == [["throttle signal", "throttle ground"], ["throttle signal"]]
