"""Twelve donor bikes against verdicts and gates written by hand before they were built.

Trade: what builders keep, change, try and drop on each sort of bike, common practice without a source. Worked: the
amps in the tables, in their column "why", which also says what was wrong where the hand was. Published: above 60 V DC
a circuit is high voltage (UN R136 paragraph 2, read second-hand on a public page); lamps draw at most 6 % (21 W) or
10 % (5 and 10 W) over their print at 13.5 V (UN R37 category sheets, from memory).
"""

import csv
from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

import pytest

from bom.arrangement import ALL
from bom.build import Build
from bom.check.donor import DonorVerdict
from bom.check.donor_gates import donor_gates, donor_type
from bom.duties.envelope import own_duty
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.read.donor_matrix import GATES
from bom.read.job import JobFile
from bom.trace import Origin

HERE = Path(__file__).parent
Built = Callable[..., Build]
Row = Mapping[str, str]


def rows(name: str) -> list[Row]:
    with (HERE / f"{name}.csv").open(encoding="utf-8", newline="") as handle:
        return list(csv.DictReader(handle))


def cases(name: str, of: str) -> list[object]:
    return [pytest.param(row, id=f"{row['job']}: {row[of]}") for row in rows(name)]


JOBS = [row["job"] for row in rows("bikes")]


def words_of(told: DonorVerdict) -> str:
    return " | ".join((told.reason, told.change, told.test, told.instead))


def decided_by(told: DonorVerdict) -> str:
    """Name what decided, as the table does: a gate of the matrix, numbers, the builder, the bench, the plain case."""
    if told.gate:
        return told.gate
    if "the builder" in told.reason:
        return "builder"
    if told.reason.startswith("it did not hold on the bench"):
        return "bench"
    return "numbers" if "needs" in told.reason else "always"


@pytest.mark.parametrize("row", cases("expected", "item"))
def test_each_item(row: Row, built: Built) -> None:
    told = next(item for item in built(row["job"]).donor if item.name == row["item"])
    assert (told.verdict, decided_by(told)) == (row["verdict"], row["decided_by"]), words_of(told)
    for words in filter(None, row["holds"].split("; ")):
        assert words in words_of(told)


@pytest.mark.parametrize("job", JOBS)
def test_no_item_is_left_out(job: str, built: Built) -> None:
    listed = [row["item"] for row in rows("expected") if row["job"] == job]
    assert sorted(item.name for item in built(job).donor) == sorted(listed)


@pytest.mark.parametrize("row", cases("gates", "gate"))
def test_each_gate(row: Row, built: Built) -> None:
    gate = next(gate for gate in donor_gates(built(row["job"])) if gate.name == row["gate"])
    assert gate.verdict.word == row["verdict"], f"{gate.answer}. Do: {gate.follows}"
    assert row["holds"] in f"{gate.answer}. Do: {gate.follows}"


@pytest.mark.parametrize("row", cases("bikes", "job"))
def test_each_bike(
    row: Row,
    built: Built,
    job_of: Callable[[str], JobFile],
    undeclared: Callable[[Iterable[Finding]], list[str]],
) -> None:
    """Its sort in words, and what fails in it: nothing, but where it is meant to."""
    assert donor_type(job_of(row["job"])).startswith(f"{row['type']} (read from: ")
    build = built(row["job"])
    fails = {finding.rule for finding in build.findings if finding.verdict == Verdict.FAIL}
    assert fails == set(filter(None, row["fails"].split("; ")))
    assert undeclared(build.findings) == []
    assert "; ".join(hole.place.name for hole in build.holes) == row["open"]


@pytest.mark.parametrize("key_at", ALL)
@pytest.mark.parametrize("job", JOBS)
def test_what_is_bought_passes_its_own_check(job: str, key_at: str, built: Built) -> None:
    """Each bike is converted in every key arrangement; what was chosen in it neither fails nor is unknown."""
    build = built(job, key_at)
    chosen = {name: entry.part_id for name, entry in build.filled.items() if entry.origin == "chosen"}
    of_part = [finding for finding in build.findings if chosen.get(finding.subject) == finding.part]
    assert {finding.subject for finding in of_part} > {"main fuse", "contactor"}
    assert not [finding.sentence for finding in of_part if finding.verdict > Verdict.TIGHT]


def test_a_bought_switch_is_asked_for_by_the_item_it_replaces(built: Built) -> None:
    """Its kind comes from the job's line of the switch that did not hold."""
    build = built("six-volt-evidence")
    duty = own_duty(build.loom, build.facts, "switch horn button")
    assert duty.source_of("switch")() == Origin("job", "donor.items.kind", "horn button")


def test_all_sorts_gates_and_cases_are_there(job_of: Callable[[str], JobFile]) -> None:
    """They are twelve, of seven sorts, with the key in three places; every gate answers in two ways at least."""
    assert len(JOBS) == 12
    assert len({row["type"].removeprefix("12 V ").removeprefix("6 V ") for row in rows("bikes")}) == 7
    answers = {(row["gate"], row["verdict"]) for row in rows("gates")}
    for gate in {row["gate"] for row in rows("gates")}:
        assert len([one for one in answers if one[0] == gate]) >= 2, gate
    deciding = {row["decided_by"] for row in rows("expected")}
    assert deciding >= {"numbers", "bench", "builder", *GATES} - {"key at pack volts"}  # there its numbers decide
    assert {job_of(name).wishes.key for name in JOBS} >= {"12 V", "pack volts", "pack volts, sleeping converter"}
