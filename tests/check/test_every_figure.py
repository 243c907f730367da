"""Every figure of every finding leads to somebody who gave it, and every formula on the way gives what is printed.

The leaves are compared with the files themselves, read here with nothing of the program: lines of the job file,
cells of the catalogue's tables, rows of the margins.
"""

import csv
import math
import tomllib
from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from bom import units
from bom.build import Build
from bom.check.origins import job_path, where
from bom.check.why import Account, all_accounts
from bom.check.why_text import WIDTH, as_text
from bom.check.why_tree import as_data
from bom.replay import agrees
from bom.session import Session
from bom.span import Span
from bom.trace import Fact, Origin, Step

STARTERS = ("street-72", "moped-48", "frame-return-105")
Sessions = Callable[[str], Session]
Figure = Span | Fact


def walk(figure: Figure) -> Iterator[Figure]:
    """Give a figure and all it rests on."""
    yield figure
    found = figure.origin() if isinstance(figure, Span) else None
    if isinstance(found, Step):
        for entry in found.inputs.values():
            yield from walk(entry)


def figures(accounts: list[Account]) -> Iterator[tuple[Account, Figure]]:
    for account in accounts:
        for side in (account.offered, account.needed, account.wanted):
            for figure in walk(side) if side is not None else ():
                yield account, figure


def origin_of(figure: Figure) -> Origin | Step | None:
    return figure.origin if isinstance(figure, Fact) else figure.origin()


@cache
def rows_of(path: Path, key: str) -> dict[str, dict[str, str]]:
    with path.open(encoding="utf-8", newline="") as handle:
        return {row[key]: row for row in csv.DictReader(handle)}


@pytest.fixture(params=STARTERS)
def session(request: pytest.FixtureRequest, session_of: Sessions) -> Session:
    return session_of(request.param)


@pytest.fixture
def accounts(session: Session) -> list[Account]:
    return [account for build in session.builds for account in _asked(id(build), session)]


_done: dict[int, list[Account]] = {}


def _asked(build_id: int, session: Session) -> list[Account]:
    build = next(build for build in session.builds if id(build) == build_id)
    if build_id not in _done:
        _done[build_id] = all_accounts(build)
    return _done[build_id]


def test_every_finding_can_be_asked(session: Session, accounts: list[Account]) -> None:
    findings = [finding for build in session.builds for finding in build.findings]
    assert sorted(a.finding.sentence for a in accounts) == sorted(finding.sentence for finding in findings)


def test_every_number_has_a_figure_behind_it(accounts: list[Account]) -> None:
    bare = {
        f"{account.finding.key}: {text}"
        for account in accounts
        for text, figure in (
            (account.finding.offered, account.offered),
            (account.finding.needed, account.needed),
        )
        if figure is None and any(letter.isdigit() for letter in text)
    }
    assert bare == set()


def test_every_figure_leads_to_somebody(accounts: list[Account]) -> None:
    assert {(a.finding.key, figure.because) for a, figure in figures(accounts) if origin_of(figure) is None} == set()


def test_every_formula_gives_what_is_printed(accounts: list[Account]) -> None:
    steps = 0
    for account, figure in figures(accounts):
        found = origin_of(figure)
        if isinstance(found, Step):
            steps += 1
            assert isinstance(figure, Span)
            assert agrees(found, figure.low, figure.high), (account.finding.key, found.formula)
    assert steps > 1000


def test_the_figure_asked_about_is_the_one_in_the_finding(accounts: list[Account]) -> None:
    for account in accounts:
        for text, figure in ((account.finding.offered, account.offered), (account.finding.needed, account.needed)):
            if isinstance(figure, Span):
                assert is_printed(figure.low, figure.dimension, text), account.finding.key
                assert is_printed(figure.high, figure.dimension, text), account.finding.key
            elif figure is not None:
                assert figure.text in text


def is_printed(value: float, dimension: str, text: str) -> bool:
    if dimension:
        return units.show(value, dimension) in text
    if text.endswith(" days"):
        return f"{min(value, 9999):.0f}" in text
    return ("not known" if math.isnan(value) else f"{value:g}") in text


def test_what_the_job_says_stands_on_the_line_named(session: Session, accounts: list[Account]) -> None:
    lines = session.loaded.path.read_text(encoding="utf-8").splitlines()
    named = 0
    for _, figure in figures(accounts):
        origin = origin_of(figure)
        if isinstance(origin, Origin) and origin.kind in ("job", "donor"):
            found = where(origin, session)
            if found.line:
                named += 1
                key = found.words.split()[1].rpartition(".")[2]
                line = lines[found.line - 1].strip()
                if line.startswith("{"):  # a lead, written as one line
                    assert f" {key} = " in line, found.words
                else:
                    assert line.split("=")[0].strip() in (key, "[[donor.items]]"), found.words
    assert named > 100


def test_what_the_job_gives_is_what_the_job_says(session: Session, accounts: list[Account]) -> None:
    for _, figure in figures(accounts):
        origin = origin_of(figure)
        if not isinstance(figure, Span) or not isinstance(origin, Origin) or origin.kind != "job":
            continue
        here: Any = session.loaded.job
        for step in job_path(origin, here):
            here = here[step] if isinstance(step, int) else getattr(here, step)
        if isinstance(here, int | float):
            assert figure.low == figure.high == here, origin.name


def test_what_the_catalogue_gives_is_what_its_cell_holds(project: Path, accounts: list[Account]) -> None:
    tables = [rows_of(path, "part_id") for path in sorted((project / "catalog" / "parts").glob("*.csv"))]
    rows = {part: row for table in tables for part, row in table.items()}
    seen = 0
    for account, figure in figures(accounts):
        origin = origin_of(figure)
        if not isinstance(origin, Origin) or origin.kind != "catalogue":
            continue
        cell = rows[origin.of][origin.name]
        seen += 1
        if isinstance(figure, Fact):
            continue
        if math.isfinite(figure.low) and cell.replace(".", "").replace("-", "").replace("e", "").isdigit():
            assert figure.low == figure.high == float(cell), (account.finding.key, origin)
        else:  # no limit, nothing needed, or not known: a word decides, or the cell is blank
            assert figure.low == 0 or not math.isfinite(figure.low)
    assert seen > 100


def test_a_margin_is_what_its_row_holds(project: Path, session: Session, accounts: list[Account]) -> None:
    rows = rows_of(project / "catalog" / "settings" / "margins.csv", "name")
    own = tomllib.loads(session.loaded.path.read_text(encoding="utf-8")).get("margins", {})
    for _, figure in figures(accounts):
        origin = origin_of(figure)
        if isinstance(origin, Origin) and origin.kind == "margin":
            assert isinstance(figure, Span)
            assert figure.low == own.get(origin.name, float(rows[origin.name]["value"]))


def test_no_line_is_wider_than_a_hundred_columns(session: Session, accounts: list[Account]) -> None:
    for account in accounts[::25]:
        for line in as_text([as_data(account, session, "")]).splitlines():
            assert len(line) <= WIDTH, line


@pytest.mark.parametrize(("edits", "rules"), [
    ({"wishes.two_wire": True, "loads.stop lamp.same_lamp_as": "tail lamp"}, {"tail-suits-its-lamp", "joint-carries"}),
    ({"loads.rear indicators.telltale": "through two diodes"}, {"diode-keeps-the-sides-apart"}),
    ({"wishes.pilot_lamp": True}, {"pilot-lamp-outlasts-full-charge"}),
    ({"wishes.buffer_battery": None}, {"lights-survive-a-trip"}),
    ({"wishes.key": "12 V, sleeping converter"}, {
        "buffer-lasts-parked", "buffer-lights-the-way-home",
        "dead-converter-is-noticed", "rail-meter-reads-fine-enough",
    }),
    ({"pins.converter": "CV-0503"}, {
        "fuse-opens-through-a-shorted-converter", "rail-clamp-holds-the-rail", "shorted-converter-is-clamped",
    }),
    ({"pins.converter": "CV-0503", "wishes.rail_clamp": False}, {"shorted-converter-is-clamped"}),
])  # fmt: skip
def test_figures_of_what_few_bikes_have_lead_to_somebody(
    edits: dict[str, object], rules: set[str], converted: Callable[..., Build]
) -> None:
    """The starter jobs have none of it."""
    accounts = [found for found in all_accounts(converted("frame-return-105", edits)) if found.finding.rule in rules]
    assert {found.finding.rule for found in accounts} == rules
    for _, figure in figures(accounts):
        found = origin_of(figure)
        assert found is not None, figure.because
        if isinstance(found, Step):
            assert isinstance(figure, Span)
            assert agrees(found, figure.low, figure.high), found.formula
