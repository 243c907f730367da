"""Parallel strings, a minus that opens, and a bus that stays live, on the build sheet."""

from pathlib import Path

import pytest

from bom.data import folder
from bom.papers.build_sheet import build_sheet
from bom.session import run


@pytest.fixture(scope="module")
def text(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The starter of 13 cells with two strings of 40 mohm, a low side that opens, and no precharge relay."""
    job = (folder("templates") / "jobs" / "moped-48.toml").read_text(encoding="utf-8")
    for plain, edited in (
        ('cell_resistance = "28 mohm"', 'strings = 2\npack_resistance = "20 mohm"'),
        ('charge = "12 A"', 'charge = "50 A"\nopens = "minus"'),
        ("contactor = true\n", "contactor = true\nprecharge_switched = false\n"),
    ):
        assert plain in job
        job = job.replace(plain, edited)
    path: Path = tmp_path_factory.mktemp("jobs") / "strings.toml"
    path.write_text(job, encoding="utf-8")
    return build_sheet(run(path, folder("catalog"), lambda _: None))


def test_strings_are_equalised_first(text: str) -> None:
    """Worked: 25 A a string through 2 x 40 mohm are 2 V."""
    assert "**Equalise first.**" in text
    assert "within **2.0 V (" in text


def test_the_minus_is_named_for_what_it_is(text: str) -> None:
    wires = [line for line in text.splitlines() if line.startswith("| ☐ | **W")]
    assert any("protected minus" in line for line in wires)
    assert not any("pack minus" in line for line in wires)


def test_a_bus_that_stays_live_is_labelled(text: str) -> None:
    assert "LIVE WITH THE KEY OFF, OPEN THE PACK PLUG FIRST" in text
