"""Lamps and blinkers on paper: sheets, build sheet and record say what was walked."""

import json
from pathlib import Path

import pytest
from openpyxl import load_workbook

from bom.check.blinkers import NO, OWN
from bom.papers.papers import write_papers
from bom.session import Session


@pytest.fixture(scope="session")
def framed_papers(framed: Session, tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    return write_papers(framed, tmp_path_factory.mktemp("framed"))


def test_every_lamp_has_its_row(papers: Session, written: list[Path]) -> None:
    sheet = load_workbook(written[0], data_only=True)["Lamps"]
    rows = {row[0]: row for row in sheet.iter_rows(min_row=4, values_only=True) if row[0]}
    for light in papers.build.walks.lights:
        _, _, low_v, low_state, shown, *_ = rows[light.load]
        assert low_v == pytest.approx(light.low_v, abs=0.0051)
        assert low_state == light.low_state
        assert shown == ("–" if light.kind == "LED" else f"{light.light:.0%}")


def test_the_worst_moment_names_every_coil(papers: Session, written: list[Path]) -> None:
    dip = papers.build.walks.dip
    assert dip is not None
    sheet = load_workbook(written[0], data_only=True)["Lamps"]
    rows = {row[0]: row[2] for row in sheet.iter_rows(values_only=True) if row[0]}
    if dip.lets_go:  # nothing is left to hold a coil
        assert rows["12 V side"] == 0
        return
    assert rows["12 V side"] == pytest.approx(dip.rail_v, abs=0.051)
    for coil, volts in dip.coils_v.items():
        assert rows[coil] == pytest.approx(volts, abs=0.051)


def test_every_cause_is_answered(framed: Session, framed_papers: list[Path]) -> None:
    causes = framed.build.blinkers
    sheet = load_workbook(framed_papers[0], data_only=True)["Blinkers"]
    rows = [row[:3] for row in sheet.iter_rows(min_row=4, values_only=True) if row[0]]
    assert rows == [(cause.of, cause.cause, cause.answer) for cause in causes]
    kept = json.loads(framed_papers[2].read_text(encoding="utf-8"))["blinkers"]
    assert kept == [vars(cause) for cause in causes]
    part = framed_papers[1].read_text(encoding="utf-8").split("## Blinkers")[1].split("## Labels")[0]
    for cause in causes:
        worth_saying = not cause.of.startswith(OWN) or cause.answer != NO
        assert (f"| {cause.of}: {cause.cause} |" in part) is worth_saying


def test_what_nobody_can_tell_says_what_would_settle_it(framed: Session, framed_papers: list[Path]) -> None:
    """A frame return is in no drawing: its rust is found with a wire (common practice)."""
    [answer] = [cause for cause in framed.build.blinkers if cause.cause == "the lamps have no return"]
    text = framed_papers[1].read_text(encoding="utf-8")
    assert f"Find out: {answer.datum}" in text
