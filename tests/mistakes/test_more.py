"""Known mistakes of the trade, put into a starter job on purpose: each must be caught by its own rule."""

import tomllib
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from pathlib import Path

import pytest

from bom.build import Build
from bom.check.judge_build import judge_build
from bom.duties.circuits import Facts
from bom.duties.envelope import envelope
from bom.errors import Fault
from bom.judge.finding import Finding
from bom.judge.loom_view import LoomView
from bom.loom.layout import lay_out
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.locate import Lines

Converted = Callable[..., Build]
Edited = Callable[..., JobFile]


TABLE = Path(__file__).parent / "more.toml"


@dataclass(frozen=True)
class Mistake:
    """A bad build: which starter job, what is edited in it, and what must be said about it."""

    name: str
    starter: str
    edits: dict[str, object]
    rule: str
    place: str
    verdict: str


def mistakes() -> list[Mistake]:
    entries = tomllib.loads(TABLE.read_text(encoding="utf-8"))["mistakes"]
    for entry in entries:
        entry["edits"] = {key: None if value == "-" else value for key, value in entry["edits"].items()}
    return [Mistake(**entry) for entry in entries]


WORDS = ("pass", "tight", "can't tell", "fail")
ALWAYS = ("converter", "meter")


@pytest.fixture
def findings(
    catalogue: Catalogue, edited: Edited, converted: Converted, facts_of: Callable[..., Facts]
) -> Callable[[Mistake], list[Finding]]:
    """Put the pinned parts among those the sound build chose, and check the place and all it bears on."""

    def check(mistake: Mistake) -> list[Finding]:
        job = edited(mistake.starter, mistake.edits)
        sound = converted(mistake.starter)
        faults: list[Fault] = []
        margins = catalogue.margins.overridden(job.margins, "job", Lines({}), faults)
        facts = replace(facts_of(job, sound.facts.key_at), margins=margins)
        loom = lay_out(job, margins, sound.facts.key_at)
        links = [link for link in loom.links if mistake.place in (link.first, link.second)]
        near = {mistake.place, *ALWAYS}.union(*({link.first, link.second} for link in links))
        parts = {name: entry.part for name, entry in sound.filled.items() if name in near}
        for name, part in job.pins.items():
            table = catalogue.families[loom.place(name).family]
            parts[name] = table.take([table.index(part)])
        duties = envelope(loom, facts)
        found = judge_build(LoomView(loom, facts, parts, duties), duties)
        return [f for f in found if f.rule == mistake.rule and mistake.place in f.subject.split(" / ")]

    return check


@pytest.mark.parametrize("mistake", mistakes(), ids=lambda mistake: mistake.name)
def test_mistake_is_caught(
    mistake: Mistake, findings: Callable[[Mistake], list[Finding]], undeclared: Callable[[Iterable[Finding]], list[str]]
) -> None:
    found = findings(mistake)
    assert found, f"{mistake.rule} said nothing about {mistake.place}"
    assert max((finding.verdict.word for finding in found), key=WORDS.index) == mistake.verdict
    assert undeclared(found) == []


def test_a_pinned_mistake_stands_and_is_not_sound(converted: Converted) -> None:
    """The whole way: 80 V fuse on 84 V with the rest of the bike chosen around it."""
    build = converted("street-72", {"pins.main fuse": "MF-0205"})
    assert build.filled["main fuse"].part_id == "MF-0205"
    assert build.filled["main fuse"].origin == "pinned"
    assert not build.sound
    assert ("holds-dc-volts", "main fuse") in {(f.rule, f.subject) for f in build.findings if f.verdict.word == "fail"}


def test_a_mistake_that_no_part_survives_leaves_the_place_open(converted: Converted) -> None:
    """Without precharge no contactor closes on 84.0 V / (0.9 x 0.038 ohm) = 2456 A."""
    build = converted("street-72", {"wishes.precharge": False})
    hole = next(hole for hole in build.holes if hole.place.name == "contactor")
    assert hole.verdict.word == "fail"
    assert "2.46 kA" in hole.sentence
    assert not build.sound
