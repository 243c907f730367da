"""Twenty bikes that somebody sensible would build: nothing fails, no place stays open, no can't tell is unexplained.

Trade: volts, donors and wishes as builders have them, common practice without a source. Worked: full charge by hand in
the head of each job, cells x volts a cell. The table of what can't be told is written by hand in expected.toml.
"""

import re
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest

from bom.build import Build
from bom.judge.verdict import Verdict
from bom.physics.pack import CHEMISTRIES
from bom.read.job import JobFile
from bom.read.load_job import LoadedJob

HERE = Path(__file__).parent
NAMES = sorted(path.stem for path in HERE.glob("*.toml") if path.stem != "expected")
EXPECTED = tomllib.loads((HERE / "expected.toml").read_text(encoding="utf-8"))
Sound = Callable[[str], Build]
Loaded = Callable[[str], LoadedJob]


def head_of(name: str) -> str:
    """Give the comment at the head of a job as one line."""
    text = (HERE / f"{name}.toml").read_text(encoding="utf-8").split("\n\n", 1)[0]
    return text.replace("\n# ", " ")


def shown(build: Build, verdict: Verdict) -> list[str]:
    return [f"{finding.key}: {finding.sentence}" for finding in build.findings if finding.verdict == verdict]


@pytest.mark.parametrize("name", NAMES)
def test_nothing_fails_and_nothing_stays_open(name: str, sound: Sound) -> None:
    build = sound(name)
    assert [hole.sentence for hole in build.holes] == []
    assert shown(build, Verdict.FAIL) == []


@pytest.mark.parametrize("name", NAMES)
def test_only_what_is_unknown_is_not_told(name: str, sound: Sound) -> None:
    build = sound(name)
    allowed = {(entry["finding"], entry["datum"]) for entry in EXPECTED.get(name, {"cant_tell": []})["cant_tell"]}
    told = {(finding.key, finding.datum) for finding in build.findings if finding.verdict == Verdict.CANT_TELL}
    assert told == allowed, shown(build, Verdict.CANT_TELL)


@pytest.mark.parametrize("name", NAMES)
def test_the_head_names_what_is_unknown(name: str) -> None:
    said = head_of(name).split("Unknown: ")[1]
    assert (said == "nothing.") == (name not in EXPECTED)


@pytest.mark.parametrize("name", NAMES)
def test_full_charge_is_as_worked_by_hand(name: str, sound: Sound) -> None:
    """Worked: cells x volts a cell, as the head of the job multiplies them."""
    pack = sound(name).facts.job.pack
    worked = re.search(r"[Ff]ull charge (\d+) x ([\d.]+) V = ([\d.]+) V", head_of(name))
    assert worked is not None
    cells, each, full = int(worked[1]), float(worked[2]), float(worked[3])
    assert (cells, each) == (pack.series, CHEMISTRIES[pack.chemistry].full_v)
    assert sound(name).facts.pack.full_charge_v.high == pytest.approx(full, abs=0.001)
    assert full == pytest.approx(cells * each, abs=0.001)


@pytest.mark.parametrize("name", NAMES)
def test_what_is_insisted_on_stands(name: str, sound: Sound) -> None:
    build = sound(name)
    insisted = {item.name for item in build.facts.job.donor.items if item.keep == "yes"}
    standing = {entry.place.item for entry in build.filled.values() if entry.origin == "donor"}
    assert insisted <= standing


def test_they_are_twenty_and_most_know_everything() -> None:
    assert len(NAMES) == 20
    assert set(EXPECTED) <= set(NAMES)
    assert len(NAMES) - len(EXPECTED) >= 12


def nominal_v(job: JobFile) -> float:
    return (job.pack.series or 0) * CHEMISTRIES[job.pack.chemistry].nominal_v


def test_they_spread_over_the_trade(loaded: Loaded) -> None:
    jobs = [loaded(name).job for name in NAMES]
    volts = sorted(nominal_v(job) for job in jobs)
    assert volts[0] <= 36
    assert volts[-1] >= 150
    # classes as they are sold: a pack within a twelfth of each
    for sold in (36, 48, 52, 60, 72, 84, 96, 108, 120, 132, 144, 150):
        assert any(abs(each - sold) <= sold / 12 for each in volts), sold
    assert len({job.pack.chemistry for job in jobs}) >= 6
    donors = [job.donor for job in jobs]
    assert {(donor.supply, donor.lighting) for donor in donors} >= {
        (supply, lighting) for supply in ("6 V", "12 V") for lighting in ("AC", "mixed", "DC")
    }
    assert {donor.earth for donor in donors} == {"negative", "positive", "none"}
    assert {donor.lamp_return for donor in donors} == {"frame", "wire"}
    assert {donor.switchgear for donor in donors} == {"mechanical", "electronic"}


def test_they_spread_over_what_is_wished(loaded: Loaded) -> None:
    jobs = [loaded(name).job for name in NAMES]
    wishes = [job.wishes for job in jobs]
    assert {wish.key for wish in wishes} == {
        "12 V",
        "12 V, sleeping converter",
        "pack volts",
        "pack volts, sleeping converter",
        "cheapest",
    }
    assert {wish.isolator for wish in wishes} == {"link plug", "hand switch", "breaker", "none"}
    assert {wish.meter for wish in wishes} >= {"volts", "volts and amps"}
    for both in ("buffer_battery", "contactor", "precharge"):
        assert {getattr(wish, both) for wish in wishes} == {True, False}, both
    assert {job.controller.regen is None for job in jobs} == {True, False}
    assert {load.kind for job in jobs for load in job.loads} >= {"filament", "LED", "motor", "electronics"}
    assert any(job.devices for job in jobs)
    assert any(load.is_telltale for job in jobs for load in job.loads)
