"""Faults of a job file: what is out of a formula's span, what cannot be together, what would vanish from the bill."""

from collections.abc import Callable
from pathlib import Path

import pytest

from bom.errors import Fault
from bom.read.job import Load
from bom.read.load_job import load_job
from bom.read.margins import shipped_margins

Told = Callable[..., list[Fault]]
CELL, CAPACITY = 'cell_resistance = "28 mohm" ', '"24 Ah"'


@pytest.fixture
def told(tmp_path: Path, project: Path) -> Told:
    """Give the faults of a starter job after texts that stand once in it were replaced."""

    def read(starter: str, *edits: tuple[str, str]) -> list[Fault]:
        text = (project / "templates" / "jobs" / f"{starter}.toml").read_text(encoding="utf-8")
        for old, new in edits:
            assert text.count(old) == 1, old
            text = text.replace(old, new)
        path = tmp_path / "bike.toml"
        path.write_text(text, encoding="utf-8")
        faults: list[Fault] = []
        load_job(path, shipped_margins(), faults)
        return faults

    return read


@pytest.mark.parametrize("worth", ["nan", "inf", "0.0", "-1.0", "1e9"])
def test_a_rate_is_a_positive_number(worth: str, told: Told) -> None:
    [fault] = told("moped-48", ("GBP = 1.16", f"GBP = {worth}"))
    assert fault.place == "money.rates.GBP"
    assert fault.accepted.startswith("Write a number above 0 and at most 100000")


@pytest.mark.parametrize(
    ("old", "new", "place", "accepted"),
    [
        (
            CELL,
            'pack_resistance = "0.05 mohm"',
            "pack.pack_resistance",
            'Write a resistance from 0.1 mΩ to 10 Ω, like "4.7 Ω".',
        ),
        (
            CELL,
            'cell_resistance = "0.5 ohm"',
            "pack.cell_resistance",
            'Write a resistance from 0.05 mΩ to 200 mΩ, like "0.5 mΩ".',
        ),
        (
            "[motor]",
            '[motor]\nlead_area = "130 mm²"',
            "motor.lead_area",
            'Write an area from 0.1 mm² to 120 mm², like "2.5 mm²".',
        ),
        (
            'battery_continuous = "40 A"',
            'battery_continuous = "1 mA"',
            "controller.battery_continuous",
            'Write a current from 1 A to 2 kA, like "10 A".',
        ),
        # 1 mohm x 13 / 200 is 0.065 mohm
        (
            f"parallel = 8\ncapacity = {CAPACITY}\n{CELL}",
            'parallel = 200\ncapacity = "200 Ah"\ncell_resistance = "1 mohm"',
            "pack.cell_resistance",
            "They make a pack of 0.065 mΩ; the least is 0.1 mΩ. Measure a cell again.",
        ),
        (
            f"capacity = {CAPACITY}",
            'capacity = "2.4 Ah"',
            "pack.capacity",
            "2.4 Ah over 8 cells side by side makes a cell of 0.3 Ah; a cell has 0.5 to 400 Ah.",
        ),
        # 100 x 4.2 V is 420 V; 200 V hold 47 cells, 197.4 V
        (
            "series = 13 ",
            "series = 100 ",
            "pack.series",
            "They make 420 V when full; packs up to 200 V are judged: write at most 47.",
        ),
    ],
)
def test_a_figure_outside_its_formula(old: str, new: str, place: str, accepted: str, told: Told) -> None:
    assert [(fault.place, fault.accepted) for fault in told("moped-48", (old, new))] == [(place, accepted)]


def test_a_pack_of_too_few_volts_for_one_cell(told: Told) -> None:
    faults = told("frame-return-105", ("series = 29 ", 'full_charge = "1 V" '))
    assert "Write at least one cell's full charge, 3.65 V." in {fault.accepted for fault in faults}


@pytest.mark.parametrize(
    ("name", "edit", "accepted"),
    [
        ("horn", ('purpose = "horn"\n', ""), 'A horn to be bought needs purpose = "horn".'),
        ("headlamp", ('purpose = "head"\n', ""), "A lamp to be bought needs purpose"),
        ("headlamp", ('base = "BA20d"\n', ""), "A lamp to be bought needs purpose"),
        ("stop lamp", ('same_lamp_as = "tail lamp" ', ""), "A lamp to be bought needs purpose"),
    ],
)
def test_a_new_lamp_or_horn_must_say_what_to_buy(name: str, edit: tuple[str, str], accepted: str, told: Told) -> None:
    [fault] = told("moped-48", edit)
    assert f"({name})" in fault.place
    assert fault.accepted.startswith(accepted)


@pytest.mark.parametrize("other", ["stop lamp", "position lamp"])
def test_a_shared_lamp_must_be_one_that_is_there(other: str, told: Told) -> None:
    """A lamp shared with itself, or with another that only shares, would be bought by nobody."""
    second = (
        '[[loads]]\nname = "position lamp"\nkind = "LED"\npower = "1 W"\non = ["night"]\n'
        'fit = "new"\nsame_lamp_as = "tail lamp"\n\n[runs]'
    )
    edits = ('same_lamp_as = "tail lamp" ', f'same_lamp_as = "{other}" '), ("[runs]", second)
    [fault] = told("moped-48", *edits)
    assert (fault.place, fault.found) == ("loads[3] (stop lamp).same_lamp_as", other)


@pytest.mark.parametrize(
    ("keys", "is_bought"),
    [
        ({"fit": "new", "kind": "LED", "purpose": "head", "base": "BA20d"}, True),
        ({"fit": "new", "kind": "LED", "purpose": "head", "base": "BA20d", "same_lamp_as": "tail lamp"}, False),
        ({"fit": "new", "kind": "electronics"}, False),
        ({"fit": "new", "kind": "coil"}, False),
        ({"fit": "donor", "kind": "LED", "purpose": "head", "base": "BA20d"}, False),
    ],
)
def test_what_is_bought(keys: dict[str, object], is_bought: bool) -> None:
    load = Load.model_validate({"name": "lamp", "power": "5 W", "on": ["key"], **keys})
    assert load.is_bought is is_bought


def test_unknown_is_the_same_as_left_out(project: Path, tmp_path: Path) -> None:
    text = (project / "templates" / "jobs" / "frame-return-105.toml").read_text(encoding="utf-8")
    path = tmp_path / "bike.toml"
    path.write_text(text.replace('"32 mohm"', '"unknown"'), encoding="utf-8")
    loaded = load_job(path, shipped_margins(), [])
    assert loaded is not None
    pack = loaded.job.pack
    assert pack.pack_resistance is None
    assert "pack_resistance" not in pack.model_fields_set


@pytest.mark.parametrize(
    ("old", "new", "accepted"),
    [
        ('watts_max = "48 W"', 'watts_max = "40 W"', "Write watts_max above watts_min, which is 40."),
        ("rate = 80 ", "rate = 0 ", "Write"),
        ('kind = "flasher"\npins = 2', 'kind = "flasher"\nsenses = "nothing"', "Leave out watts_min"),
        ('kind = "horn button"', 'kind = "horn button"\nrate = 80', "Leave out rate: it is asked of a flasher only."),
        ('on = ["brake"]', 'on = ["brake"]\ntelltale = "one a side"', "Leave out telltale"),
    ],
)
def test_what_is_said_of_blinkers_must_fit(old: str, new: str, accepted: str, told: Told) -> None:
    [fault] = told("street-72", (old, new))
    assert fault.accepted.startswith(accepted)


@pytest.mark.parametrize("wired", ["between the sides", "through two diodes"])
def test_a_telltale_of_both_sides_needs_their_switch(wired: str, told: Told) -> None:
    """It would have no sides to hang on (Kirchhoff: no way home)."""
    lamp = (
        f'[[loads]]\nname = "telltale"\nkind = "LED"\npower = "1 W"\non = ["indicate"]\ntelltale = "{wired}"\n\n[runs]'
    )
    [fault] = told("street-72", ("[runs]", lamp))
    assert fault.place == "loads[9] (telltale).telltale"
    assert fault.accepted.startswith("Name it in the feeds of an indicator switch")
    feeds = (
        'feeds = ["front indicators", "rear indicators"',
        'feeds = ["telltale", "front indicators", "rear indicators"',
    )
    [fault] = told("street-72", feeds, ("[runs]", lamp))
    assert fault.accepted == "Write the circuit of the indicators it hangs on: signals."
    same = lamp.replace('power = "1 W"', 'power = "1 W"\ncircuit = "signals"')
    assert told("street-72", feeds, ("[runs]", same)) == []


def test_states_of_one_name_and_a_ride_past_an_open_contactor(told: Told) -> None:
    own = """
[[states]]
name = "odd"
on = ["riding"]

[[states]]
name = "odd"
on = ["night"]
contactor = false
traction = "peak"

[money]"""
    twice, past = sorted(told("street-72", ("[money]", own)), key=lambda fault: fault.accepted)
    assert twice.place == "states[2] (odd).name"
    assert twice.accepted.startswith("Give each its own name; line ")
    assert past.accepted == 'Write contactor = true: traction "peak" runs through it.'
