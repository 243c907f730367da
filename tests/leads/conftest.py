"""Shared by the tests of control leads: a controller, a grip, a brake switch, a button and a display."""

from collections.abc import Callable, Mapping
from copy import deepcopy
from typing import Any

import pytest

Changes = Mapping[str, Mapping[str, Any] | None]
Tables = list[dict[str, Any]]
Devices = Callable[..., Tables]


def lead(function: str, signal: str, **rest: Any) -> dict[str, Any]:
    return {"function": function, "signal": signal, **rest}


CONTROL = {
    "name": "control",
    "kind": "controller",
    "stops_on_high_throttle": True,
    "leads": [
        lead("throttle supply", "5 V supply", low="4.8 V", high="5.2 V", supply="40 mA"),
        lead("throttle signal", "5 V analogue", low="1.0 V", high="4.0 V"),
        lead("throttle ground", "ground"),
        lead("brake", "ground-active"),
        lead("brake ground", "ground"),
        lead("reverse", "ground-active", momentary=True),
        lead("button ground", "ground"),
        lead("12 V output", "12 V supply", low="11 V", high="13 V", supply="100 mA"),
        lead("signal ground", "ground"),
    ],
}
# Trade: hall throttles give 0.8 to 4.2 V on a 5 V supply, common practice.
GRIP = {
    "name": "grip",
    "kind": "throttle",
    "leads": [
        lead("throttle supply", "5 V feed", low="4.5 V", high="5.5 V", draws="10 mA"),
        lead("throttle signal", "5 V analogue", low="0.8 V", high="4.2 V"),
        lead("throttle ground", "ground"),
    ],
}
LEVER = {
    "name": "lever",
    "kind": "brake switch",
    "leads": [lead("brake", "contact"), lead("brake ground", "contact")],
}
BUTTON = {
    "name": "button",
    "kind": "button",
    "leads": [lead("reverse", "contact", momentary=True), lead("button ground", "contact")],
}
DISPLAY = {
    "name": "display",
    "kind": "display",
    "leads": [lead("meter supply", "12 V feed", low="9 V", high="16 V", draws="60 mA"), lead("meter ground", "ground")],
}


@pytest.fixture(scope="session")
def devices() -> Devices:
    """Give the five devices with changes: "grip: throttle signal" -> keys set otherwise (None leaves a key out), or
    None for a lead that is not there; "grip" -> keys of the device."""

    def make(changes: Changes | None = None, *more: dict[str, Any]) -> Tables:
        tables = deepcopy([CONTROL, GRIP, LEVER, BUTTON, DISPLAY, *more])
        for name, keys in (changes or {}).items():
            device, _, function = name.partition(": ")
            table = next(table for table in tables if table["name"] == device)
            if not function and keys is None:
                tables.remove(table)
                continue
            leads = table["leads"]
            entry = next(entry for entry in leads if entry["function"] == function) if function else table
            if keys is None:
                leads.remove(entry)
                continue
            for key, value in keys.items():
                entry[key] = value
                if value is None:
                    del entry[key]
        return tables

    return make
