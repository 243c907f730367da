"""Questions and tests on the sheets Orders, Find out and Donor, on the build sheet and in the record."""

import io
import json
from typing import Any

import openpyxl
import pytest

from bom.check.question import Question
from bom.data import folder
from bom.papers.build_sheet import build_sheet
from bom.papers.record import record
from bom.papers.workbook import workbook
from bom.session import Session, run


@pytest.fixture(scope="module")
def doubtful(tmp_path_factory: pytest.TempPathFactory) -> Session:
    """The 6 V moped, whose switches wait for a test, with a contactor of which no breaking figure is known."""
    text = (folder("templates") / "jobs" / "moped-48.toml").read_text(encoding="utf-8")
    path = tmp_path_factory.mktemp("jobs") / "doubtful.toml"
    path.write_text(text + '\n[pins]\ncontactor = "CT-0901"\n', encoding="utf-8")
    return run(path, folder("catalog"), lambda _: None)


@pytest.fixture(scope="module")
def sheets(doubtful: Session) -> dict[str, str]:
    book = openpyxl.load_workbook(io.BytesIO(workbook(doubtful)))
    return {
        sheet.title: "\n".join(str(cell.value) for row in sheet.iter_rows() for cell in row if cell.value is not None)
        for sheet in book.worksheets
    }


def test_an_order_carries_only_questions_that_change_a_verdict(doubtful: Session, sheets: dict[str, str]) -> None:
    """Of the doubtful contactor the breaking amps are asked, with what this bike asks of them."""
    asked = next(
        question for question in doubtful.questions if question.column == "breaking_points" and bought(question)
    )
    assert asked.ask in sheets["Orders"]
    assert sheets["Orders"].count("Questions that go with this order") == 1


def bought(question: Question) -> bool:
    return question.stands == "bought"


def test_a_sound_bike_asks_nothing(sound: Session) -> None:
    book = openpyxl.load_workbook(io.BytesIO(workbook(sound)))
    cells = [str(cell.value) for row in book["Orders"].iter_rows() for cell in row]
    assert not [text for text in cells if "Questions" in text]
    assert "Goods in" not in build_sheet(sound)


def test_the_bench_has_boxes_to_tick(doubtful: Session, sheets: dict[str, str]) -> None:
    page = build_sheet(doubtful)
    section = page.split("### Goods in", 1)[1].split("## Donor", 1)[0]
    rows = [line for line in section.splitlines() if line.startswith("| ☐")]
    assert rows
    assert any("data sheet only" in row and "CT-0901" in row for row in rows)
    assert "Goods in: before the part is energised" in sheets["Find out"]


def test_certainty_stands_on_both(doubtful: Session, sheets: dict[str, str]) -> None:
    told = doubtful.certainties["horn button"]
    assert told.instead in sheets["Donor"]
    assert "### Test first, or buy certainty" in build_sheet(doubtful)


def test_how_it_is_known_stands_on_both(doubtful: Session, sheets: dict[str, str]) -> None:
    assert "(common practice)" in sheets["Donor"]
    assert "(common practice) |" in build_sheet(doubtful)


def test_the_record_holds_them(doubtful: Session) -> None:
    kept: Any = json.loads(record(doubtful))
    assert [entry["column"] for entry in kept["questions"]] == [question.column for question in doubtful.questions]
    page = (folder("templates") / "record.md").read_text(encoding="utf-8")
    row = next(line for line in page.splitlines() if line.startswith("| `questions[]`"))
    assert all(f"`{key}`" in row for key in kept["questions"][0])
    wanted = next(line for line in page.splitlines() if line.startswith("| `certainty.<item>`"))
    assert all(f"`{key}`" in wanted for key in kept["certainty"]["horn button"])
    assert all(item["evidence"] for item in kept["donor"])
