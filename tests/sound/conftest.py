"""Shared by the tests of the sound builds: each job read and built once, all from one memory."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from bom.arrangement import compared
from bom.build import Build
from bom.convert import convert
from bom.errors import Fault
from bom.judge.verdict import Verdict
from bom.memory import Memory
from bom.read.catalogue import Catalogue
from bom.read.load_job import LoadedJob, load_job

HERE = Path(__file__).parent
Loaded = Callable[[str], LoadedJob]
Sound = Callable[[str], Build]


@pytest.fixture(scope="session")
def loaded(catalogue: Catalogue) -> Loaded:
    """Read a sound build's job, which has no fault."""

    @cache
    def make(name: str) -> LoadedJob:
        faults: list[Fault] = []
        job = load_job(HERE / f"{name}.toml", catalogue.margins, faults)
        assert job is not None
        assert not faults
        return job

    return make


def _badness(build: Build) -> tuple[int, int, float]:
    return build.count(Verdict.FAIL), build.count(Verdict.CANT_TELL), build.bill.total


@pytest.fixture(scope="session")
def sound(catalogue: Catalogue, loaded: Loaded) -> Sound:
    """Build a job with the key as wished; with the cheapest, as a session orders all arrangements."""
    memory = Memory()

    @cache
    def make(name: str) -> Build:
        given = loaded(name)
        asked = compared(given.job)
        if given.job.wishes.key != "cheapest":
            asked = asked[:1]
        builds = [convert(job, catalogue, given.margins, at, lambda text: None, memory) for at, job in asked]
        return min(builds, key=_badness)

    return make
