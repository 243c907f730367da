"""Shared by the tests of the donor bikes: each job read once, each arrangement built once."""

import tomllib
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from bom.build import Build
from bom.convert import convert
from bom.errors import Fault
from bom.memory import Memory
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.locate import Lines

HERE = Path(__file__).parent


@pytest.fixture(scope="session")
def job_of() -> Callable[[str], JobFile]:
    @cache
    def make(name: str) -> JobFile:
        return JobFile.model_validate(tomllib.loads((HERE / f"{name}.toml").read_text(encoding="utf-8")))

    return make


@pytest.fixture(scope="session")
def built_from(catalogue: Catalogue) -> Callable[[JobFile, str], Build]:
    """Build a job that a test has changed; like places of like jobs are worked out once."""
    memory = Memory()

    def make(job: JobFile, key_at: str) -> Build:
        faults: list[Fault] = []
        margins = catalogue.margins.overridden(job.margins, "job", Lines({}), faults)
        assert not faults
        return convert(job, catalogue, margins, key_at, lambda text: None, memory)

    return make


@pytest.fixture(scope="session")
def built(job_of: Callable[[str], JobFile], built_from: Callable[[JobFile, str], Build]) -> Callable[..., Build]:
    """Build a donor bike with the key as wished, or elsewhere; each is worked out once."""
    make = cache(lambda name, key_at: built_from(job_of(name), key_at))
    return lambda name, key_at="": make(name, key_at or job_of(name).wishes.key)
