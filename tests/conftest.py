"""Shared by the tests: the catalogue, read once, and jobs made by editing the starter jobs."""

import tomllib
from collections.abc import Callable, Iterable, Mapping
from functools import cache
from pathlib import Path

import pytest

from bom.arrangement import ALL, TWELVE
from bom.build import Build
from bom.convert import convert
from bom.duties.budget import budget
from bom.duties.circuits import Counted, Facts
from bom.duties.volts import pack_facts
from bom.errors import Fault
from bom.judge.compare import HEARSAY
from bom.judge.finding import Finding
from bom.judge.rule import rules
from bom.judge.verdict import Verdict
from bom.memory import Memory
from bom.read.catalogue import Catalogue, read_catalogue
from bom.read.edits import drop, put
from bom.read.job import JobFile
from bom.read.locate import Lines
from bom.read.margins import Margins
from bom.read.states import states_of

PROJECT = Path(__file__).resolve().parent.parent
STARTERS = ("street-72", "moped-48", "frame-return-105", "positive-earth-60")

Edits = Mapping[str, object]
Edited = Callable[..., JobFile]
Converted = Callable[..., Build]


@cache
def _starter(name: str) -> str:
    return (PROJECT / "templates" / "jobs" / f"{name}.toml").read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def project() -> Path:
    return PROJECT


@pytest.fixture(scope="session")
def undeclared() -> Callable[[Iterable[Finding]], list[str]]:
    """List findings whose answer their rule does not declare; hearsay makes any rule's pass tight."""
    said = {rule.name: {Verdict.NOT_ASKED, Verdict.PASS, *rule.says} for rule in rules()}

    def find(findings: Iterable[Finding]) -> list[str]:
        told = [f for f in findings if f.verdict not in said[f.rule]]
        return [f"{f.key}: {f.verdict.word}" for f in told if f.verdict != Verdict.TIGHT or f.evidence not in HEARSAY]

    return find


@pytest.fixture(scope="session")
def catalogue() -> Catalogue:
    return read_catalogue(PROJECT / "catalog")


@pytest.fixture(scope="session")
def margins(catalogue: Catalogue) -> Margins:
    return catalogue.margins


@pytest.fixture(scope="session")
def edited() -> Edited:
    """Give a starter job with some of its keys set otherwise, or left out where None is given."""

    def make(starter: str = "street-72", edits: Edits | None = None) -> JobFile:
        data = tomllib.loads(_starter(starter))
        for path, value in (edits or {}).items():
            if value is None:
                drop(data, path)
            else:
                put(data, path, value)
        return JobFile.model_validate(data)

    return make


@pytest.fixture(scope="session")
def facts_of(margins: Margins, catalogue: Catalogue) -> Callable[..., Facts]:
    """Work out the facts of a job whose coils hold and pull 2.6 A and whose charger ends at full charge."""

    def make(job: JobFile, key_at: str = "12 V") -> Facts:
        counted = Counted(2.6, 2.6, "coils as counted", 0.0)
        pack = pack_facts(job, margins, counted.charge_end_v)
        return Facts(
            job, margins, pack, budget(job, margins, counted.hold_a, states_of(catalogue.states, job)), counted, key_at
        )

    return make


@pytest.fixture(scope="session")
def converted(catalogue: Catalogue, edited: Edited) -> Converted:
    """Convert an edited starter job; each combination is worked out once."""
    done: dict[str, Build] = {}

    def make(starter: str = "street-72", edits: Edits | None = None, key_at: str = "") -> Build:
        job = edited(starter, edits)
        at = key_at or (job.wishes.key if job.wishes.key in ALL else TWELVE)
        key = f"{starter} {at} {edits!r}"
        if key not in done:
            faults: list[Fault] = []
            margins = catalogue.margins.overridden(job.margins, "job", Lines({}), faults)
            assert not faults
            done[key] = convert(job, catalogue, margins, at, lambda text: None, Memory())
        return done[key]

    return make
