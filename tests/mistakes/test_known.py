"""Every known mistake: the bad job is told as expected by hand, and its cured twin is not."""

from collections.abc import Callable, Iterable
from difflib import ndiff
from typing import Any

import pytest
import tomli_w

from bom.build import Build
from bom.check.donor_gates import donor_gates
from bom.convert import convert
from bom.errors import Fault
from bom.judge.finding import Finding
from bom.judge.harm import TRADE_TAGS
from bom.judge.rule import rules
from bom.memory import Memory
from bom.papers.build_sheet import build_sheet
from bom.read.catalogue import Catalogue
from bom.read.load_job import LoadedJob, load_job
from bom.session import Session
from tests.mistakes.entries import HOW, MOST_CHANGES, Mistake, every, known

OPEN_PLACE, GATE, READING = "open place", "donor gate", "reading the job"
WORDS = ("not asked", "pass", "tight", "can't tell", "fail")
Told = list[tuple[str, str]]
EVERY = every()
JUDGED = [mistake for mistake in EVERY if mistake.how != "step printed"]
PRINTED = [mistake for mistake in EVERY if mistake.how == "step printed"]


def named(mistakes: Iterable[Mistake]) -> list[Any]:
    return [pytest.param(mistake, id=mistake.name) for mistake in mistakes]


@pytest.fixture(scope="module")
def session_of(catalogue: Catalogue, tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Session | list[Fault]]:
    """Read and convert a job from plain data; each is worked out once."""
    memory, done = Memory(), dict[str, Session | list[Fault]]()

    def worked_out(job: dict[str, Any]) -> Session | list[Fault]:
        path, faults = tmp_path_factory.mktemp("job") / "job.toml", list[Fault]()
        path.write_text(tomli_w.dumps(job), encoding="utf-8")
        loaded = load_job(path, catalogue.margins, faults)
        if loaded is None or faults:
            return faults
        return Session(loaded, catalogue, build_of(loaded), (), ())

    def build_of(loaded: LoadedJob) -> Build:
        kept = Memory() if loaded.job.margins else memory
        return convert(loaded.job, catalogue, loaded.margins, loaded.job.wishes.key, lambda text: None, kept)

    def make(job: dict[str, Any]) -> Session | list[Fault]:
        text = tomli_w.dumps(job)
        if text not in done:
            done[text] = worked_out(job)
        return done[text]

    return make


def told(mistake: Mistake, worked: Session | list[Fault]) -> Told:
    """List what was said of the mistake: verdicts with all their words."""
    if isinstance(worked, list):
        assert mistake.rule == READING, worked
        return [("fail", str(fault)) for fault in worked if fault.place == mistake.place]
    build = worked.build
    if mistake.rule == OPEN_PLACE:
        return [(hole.verdict.word, hole.sentence) for hole in build.holes if hole.place.name == mistake.place]
    if mistake.rule == GATE:
        gates = [gate for gate in donor_gates(build) if gate.name == mistake.place]
        return [(gate.verdict.word, f"{gate.question} {gate.answer} {gate.follows}") for gate in gates]
    return [
        (finding.verdict.word, f"{finding.sentence} {finding.datum} {finding.cure}")
        for finding in build.findings
        if finding.rule == mistake.rule and mistake.place in finding.subject.split(" / ")
    ]


def worst(said: Told) -> str:
    return max((word for word, _ in said), key=WORDS.index, default="not asked")


@pytest.mark.parametrize("mistake", named(JUDGED))
def test_the_bad_job_is_told(
    mistake: Mistake, session_of: Callable[..., Any], undeclared: Callable[[Iterable[Finding]], list[str]]
) -> None:
    worked = session_of(mistake.jobs()[0])
    said = told(mistake, worked)
    assert worst(said) == mistake.expected, said
    text = " ".join(words for word, words in said if word == mistake.expected)
    assert [words for words in mistake.says if words not in text] == [], text
    findings = [] if isinstance(worked, list) else worked.build.findings
    assert undeclared(finding for finding in findings if finding.rule == mistake.rule) == []


@pytest.mark.parametrize("mistake", named(JUDGED))
def test_its_twin_comes_out_clean(mistake: Mistake, session_of: Callable[..., Any]) -> None:
    said = told(mistake, session_of(mistake.jobs()[1]))
    assert worst(said) in ("pass", "not asked"), said


@pytest.mark.parametrize("mistake", named(PRINTED))
def test_the_step_is_printed_with_this_bikes_figure(mistake: Mistake, session_of: Callable[..., Any]) -> None:
    bad, cured = (build_sheet(session_of(job)) for job in mistake.jobs())
    assert [words for words in mistake.says if words not in bad] == []
    assert [words for words in mistake.cured_says if words not in cured] == []


@pytest.mark.parametrize("mistake", named(EVERY))
def test_entry_is_whole(mistake: Mistake) -> None:
    """A twin differs in a few lines; a verdict other than the tag's says why; what speaks exists."""
    bad, cured = (tomli_w.dumps(job).splitlines() for job in mistake.jobs())
    lines = [line[0] for line in ndiff(bad, cured)]
    assert 0 < max(lines.count("-"), lines.count("+")) <= MOST_CHANGES
    assert mistake.how in HOW
    assert mistake.by_hand
    assert bool(mistake.verdict) == bool(mistake.because)
    if mistake.how == "step printed":
        assert mistake.says
        assert mistake.cured_says
    else:
        assert mistake.rule in {rule.name for rule in rules()} | {OPEN_PLACE, GATE, READING}
        assert mistake.verdict != TRADE_TAGS[mistake.tag]


def test_all_are_listed_and_most_are_decided() -> None:
    listed = known()
    assert len({mistake.name for mistake in listed}) == len(listed) == 92
    assert sum(mistake.how == "decided" for mistake in listed) >= 62
    assert len({mistake.name for mistake in EVERY}) == len(EVERY)
