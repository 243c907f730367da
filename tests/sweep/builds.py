"""The sound builds that are spoilt: starter jobs, and edits that bring in the families these lack."""

import tomllib
from collections.abc import Mapping
from pathlib import Path

PROJECT = Path(__file__).resolve().parent.parent.parent
Edits = Mapping[str, object]


def with_a_telltale() -> list[object]:
    """Give the loads of the street bike and a telltale that hangs on both sides through two diodes."""
    text = (PROJECT / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    loads: list[object] = tomllib.loads(text)["loads"]
    telltale = {"name": "telltale", "kind": "filament", "power": "3 W", "on": ["indicate"], "run": "dash"}
    return [*loads, {**telltale, "circuit": "signals", "telltale": "through two diodes"}]


# name -> starter job and its edits
BUILDS: Mapping[str, tuple[str, Edits]] = {
    "street": ("street-72", {}),
    "moped": ("moped-48", {}),
    "positive earth, stopped through a relay": (
        "positive-earth-60",
        {
            "donor.items.cut-out button.keep": "yes",
            "donor.items.cut-out button.relay": True,
            "donor.items.cut-out button.latches": True,
            "donor.items.cut-out button.held": True,
            "donor.items.cut-out button.reading": "20 openings of the relay at 13.5 V, 40 mohm closed after them",
            "donor.items.cut-out button.tested": "2.5 A",
        },
    ),
    "amps, hand switch, flasher and telltale bought": (
        "street-72",
        {
            "wishes.meter": "volts and amps",
            "wishes.isolator": "hand switch",
            "wishes.pilot_lamp": True,
            "donor.items.flasher can.keep": "no",
            "loads": with_a_telltale(),
            "donor.items.indicator switch.feeds": ["front indicators", "rear indicators", "telltale"],
        },
    ),
    "breaker, asleep on a buffer battery": (
        "street-72",
        {"wishes.key": "12 V, sleeping converter", "wishes.buffer_battery": True, "wishes.isolator": "breaker"},
    ),
}
# Parts of a kit, which stand at no place of their own: a plug names them, and the catalogue is checked for them.
OF_A_KIT = {"contact", "seal"}
