"""Places that only some parts want, decided anew where the part that decides has arrived.

Trade practice: behind a converter whose switch fails short lie pack volts, so one that is not isolated wants a clamp
across its output; a bare coil throws a kick of hundreds of volts, so it wants a clamp, and a suppressed one does not.
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from bom.build import Build
from bom.cli import main
from bom.judge.verdict import Verdict

Converted = Callable[..., Build]
COMMON_MINUS = {"place": "converter", "part": "CV-0403"}
SUPPRESSED = {"pins.contactor": "CT-0402"}
BARE = {"place": "contactor", "part": "CT-0301"}


def open_at(build: Build, place: str) -> list[Verdict]:
    return [hole.verdict for hole in build.holes if hole.place.name == place]


def said(build: Build, rule: str) -> list[Verdict]:
    return [finding.verdict for finding in build.findings if finding.rule == rule]


@pytest.mark.parametrize(
    ("edits", "came", "place", "rule"),
    [
        ({}, COMMON_MINUS, "rail clamp", "shorted-converter-is-clamped"),
        (SUPPRESSED, BARE, "contactor clamp", "every-coil-is-clamped"),
    ],
)
def test_a_part_that_wants_a_clamp_leaves_its_place_open(
    edits: dict[str, object], came: dict[str, str], place: str, rule: str, converted: Converted
) -> None:
    build = converted("street-72", edits | {"received": [came]})
    assert build.ordered is not None
    assert place not in build.ordered.filled
    assert open_at(build, place) == [Verdict.FAIL]
    assert said(build, rule) == [Verdict.FAIL]


@pytest.mark.parametrize(
    ("edits", "came", "place", "rule"),
    [
        ({}, COMMON_MINUS, "rail clamp", "shorted-converter-is-clamped"),
        (SUPPRESSED, BARE, "contactor clamp", "every-coil-is-clamped"),
    ],
)
def test_the_cure_of_an_open_clamp_is_true(
    edits: dict[str, object], came: dict[str, str], place: str, rule: str, converted: Converted
) -> None:
    build = converted("street-72", edits | {"received": [came]})
    cure = next(hole.remedy for hole in build.holes if hole.place.name == place)
    decider = came["place"]
    assert build.ordered is not None
    back = f"send {came['part']} back, fit {build.ordered.filled[decider].part_id} as ordered; or: add "
    assert cure.startswith(back)
    added = cure.removeprefix(back).split()[0]
    mended = converted("street-72", edits | {"received": [came], f"pins.{place}": added})
    assert not open_at(mended, place)
    assert Verdict.FAIL not in said(mended, rule)
    assert [f.key for f in mended.findings if place in f.subject and f.verdict > Verdict.TIGHT] == []


def test_an_open_clamp_and_the_part_that_wants_it_are_one_cause(converted: Converted) -> None:
    build = converted("street-72", {"received": [COMMON_MINUS]})
    (cause,) = [cause for cause in build.causes if cause.to_settle]
    assert cause.part == "CV-0403"
    assert [hole.place.name for hole in cause.holes] == ["rail clamp"]


def test_a_clamp_that_came_too_stands(converted: Converted) -> None:
    both = [COMMON_MINUS, {"place": "rail clamp", "part": "CL-0201"}]
    build = converted("street-72", {"received": both})
    assert build.filled["rail clamp"].part_id == "CL-0201"
    assert build.aside == ()
    assert said(build, "shorted-converter-is-clamped") == [Verdict.PASS]


def test_a_suppressed_coil_that_came_sets_the_ordered_clamp_aside(converted: Converted) -> None:
    build = converted("street-72", {"received": [{"place": "contactor", "part": "CT-0402"}]})
    assert build.ordered is not None
    ordered = build.ordered.filled["contactor clamp"].part_id
    assert "contactor clamp" not in build.filled
    (aside,) = build.aside
    assert (aside.place, aside.part_id, aside.origin) == ("contactor clamp", ordered, "chosen")
    assert aside.why == "not wanted: the contactor that stands has a suppressed coil"


@pytest.mark.parametrize(
    ("place", "part", "why"),
    [
        ("rail clamp", "CL-0201", "not wanted: the converter that stands is isolated"),
        ("buffer battery", "BB-0101", "this bike has no such place with the key at 12 V"),
    ],
)
def test_a_part_for_a_place_that_is_not_wanted_is_told(place: str, part: str, why: str, converted: Converted) -> None:
    build = converted("street-72", {"received": [{"place": place, "part": part}]})
    assert place not in build.filled
    assert [(aside.place, aside.part_id, aside.why) for aside in build.aside] == [(place, part, why)]


def test_a_place_that_no_arrangement_has_is_a_fault(
    tmp_path: Path, project: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (project / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    text = text.replace("[wishes]\n", "[wishes]\nrail_clamp = false\n", 1)
    job = tmp_path / "bike.toml"
    job.write_text(f'{text}\n[[received]]\nplace = "rail clamp"\npart = "CL-0201"\n', encoding="utf-8")
    line = text.count("\n") + 3
    assert main(["check", str(job)]) == 2
    told = capsys.readouterr().err
    assert f' line {line}, received: found "rail clamp"' in told
    assert "No place of this bike has this name." in told


def test_a_place_named_twice_is_a_fault(tmp_path: Path, project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = (project / "templates" / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    twice = '\n[[received]]\nplace = "main fuse"\npart = "MF-0205"\n' * 2
    job = tmp_path / "bike.toml"
    job.write_text(text + twice, encoding="utf-8")
    assert main(["check", str(job)]) == 2
    assert "Write each place once." in capsys.readouterr().err
