"""What the build sheet says of the 12 V supply: its meter, the pilot lamp, the clamp behind a common minus."""

from pathlib import Path

import pytest

from bom.data import folder
from bom.papers.build_sheet import build_sheet
from bom.session import Session, run

STARTER = (folder("templates") / "jobs" / "street-72.toml").read_text(encoding="utf-8")
BATTERY = "buffer_battery = false"


def sheet_of(text: str, folder_of_job: Path) -> tuple[Session, str]:
    path = folder_of_job / "job.toml"
    path.write_text(text, encoding="utf-8")
    session = run(path, folder("catalog"), lambda _: None)
    return session, build_sheet(session)


@pytest.fixture(scope="module")
def wished(tmp_path_factory: pytest.TempPathFactory) -> tuple[Session, str]:
    """A buffer battery, a pilot lamp, and a pinned converter that shares its minus with the pack."""
    assert BATTERY in STARTER
    text = STARTER.replace(BATTERY, "buffer_battery = true\npilot_lamp = true\n#")
    return sheet_of(f'{text}\n[pins]\nconverter = "CV-0303"\n', tmp_path_factory.mktemp("wished"))


def test_the_sheet_says_which_reading_means_a_dead_converter(wished: tuple[Session, str]) -> None:
    """A full lead battery rests at 12.7 to 12.9 V and is charged from 13.4 V (from memory): 13.0 V tells them apart."""
    assert "below 13.0 V the converter is not charging" in wished[1]
    assert "the rail meter falls below 13.0 V" in wished[1]


def test_the_sheet_says_how_the_pilot_lamp_is_fitted(wished: tuple[Session, str]) -> None:
    """Common practice: the hole is drilled before the lamp comes, and a dark lamp proves nothing."""
    session, sheet = wished
    part = session.build.filled["pilot lamp"].part
    assert f"Pilot lamp ({part.word('colour')[0]}): hole {part.number('hole_mm')[0]:g} mm" in sheet
    assert f"protection {part.word('ip_code')[0]}" in sheet
    assert "Dark proves nothing: measure." in sheet


def test_the_sheet_says_where_the_rail_clamp_goes(wished: tuple[Session, str]) -> None:
    assert "Rail clamp across the converter's 12 V plus and minus" in wished[1]
    assert "the converter has failed short and the rail clamp with it" in wished[1]


def test_the_sheet_of_a_bike_without_them_names_none(tmp_path: Path) -> None:
    _, sheet = sheet_of(STARTER, tmp_path)
    for words in ("rail meter", "Pilot lamp", "ail clamp", "milliamps back into it"):
        assert words not in sheet


def test_what_nobody_said_is_asked_with_the_way_to_settle_it(tmp_path: Path) -> None:
    """Worked: 8.72 A by night x 10 / 60 x 1.5 = 2.18 Ah."""
    session, sheet = sheet_of(STARTER.replace(BATTERY, "#"), tmp_path)
    asked = [finding for finding in session.build.findings if finding.rule == "lights-survive-a-trip"]
    assert [(finding.verdict.word, finding.needed) for finding in asked] == [
        ("can't tell", "one of 2.18 Ah, to ride on")
    ]
    assert "whether the lamps must outlive a trip" in sheet
    assert "does it roll on dark roads" in sheet
