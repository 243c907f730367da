"""The workbook: its formulas, what they come to, and that no text from a file can run."""

import re
import shutil
import subprocess
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest
from openpyxl import Workbook, load_workbook

from bom.judge.verdict import Verdict
from bom.money.prices import pack_price
from bom.papers.page import Page
from bom.papers.papers import write_papers
from bom.papers.save import with_results
from bom.papers.standing import marked
from bom.papers.workbook import SHEETS
from bom.session import Session

RISKY = ("=", "+", "-", "@", "\t", "\r")
# All that a formula of the workbook is made of; a text from a file never stands in one.
OURS = re.compile(
    r"=(SUM|MAX|ROUNDUP|ROUND|LOOKUP|SUMIF|IF|ABS|Parts!|Prices!|Checks!|\$?[A-Z]{1,2}\$?[0-9]*|[0-9.]+|[-+*/(),:<]"
    r'|"(agrees|DIFFERS|[✖◐△✓] [a-z\' ]+)")+'
)


@pytest.fixture(scope="session")
def book(written: list[Path]) -> Workbook:
    return load_workbook(written[0])


@pytest.fixture(scope="session")
def shown(written: list[Path]) -> Workbook:
    """The results that stand beside the formulas."""
    return load_workbook(written[0], data_only=True)


def recomputed(book: Workbook, folder: Path, name: str) -> Workbook:
    """Let an office program work every formula out anew; saving drops the results written beside them."""
    office = shutil.which("soffice")
    if office is None:
        pytest.skip("LibreOffice is not installed; only the results written beside the formulas are checked")
    bare, done = folder / f"{name}.xlsx", folder / "done"
    book.save(bare)
    subprocess.run(
        [office, f"-env:UserInstallation=file://{folder}/profile", "--headless", "--convert-to",
         "xlsx:Calc MS Excel 2007 XML", "--outdir", str(done), str(bare)],
        check=True, capture_output=True, timeout=120,
    )  # fmt: skip
    return load_workbook(done / f"{name}.xlsx", data_only=True)


def formulas(book: Workbook) -> list[tuple[str, str, str]]:
    return [(sheet.title, cell.coordinate, str(cell.value))
            for sheet in book for row in sheet.iter_rows() for cell in row if cell.data_type == "f"]  # fmt: skip


def test_sheets_stand_in_the_order_builders_ask(book: Workbook) -> None:
    assert tuple(book.sheetnames) == SHEETS


def test_every_formula_is_ours(book: Workbook) -> None:
    found = formulas(book)
    assert len(found) > 100
    assert [entry for entry in found if not OURS.fullmatch(entry[2])] == []


def test_text_from_the_job_stays_text(hostile: Session, tmp_path: Path) -> None:
    from bom.papers.workbook import workbook

    path = tmp_path / "hostile.xlsx"
    path.write_bytes(workbook(hostile))
    cells = [cell for sheet in load_workbook(path) for row in sheet.iter_rows() for cell in row]
    texts = [cell for cell in cells if isinstance(cell.value, str) and cell.data_type != "f"]
    risky = [cell for cell in texts if cell.value.startswith(RISKY)]
    assert {"=1+1 & | *stars* `ticks` <b>", "@SUM(A1)", "-2+3"} <= {str(cell.value) for cell in risky}
    assert all(cell.data_type == "s" and cell.quotePrefix for cell in risky)


def test_text_that_begins_with_a_control_character_stays_text() -> None:
    sheet = Workbook().worksheets[0]
    Page(sheet, {}).put(1, 1, "\x01=1+1")
    assert (sheet["A1"].value, sheet["A1"].data_type, sheet["A1"].quotePrefix) == ("=1+1", "s", True)


def test_only_verdicts_and_donor_words_are_filled(book: Workbook) -> None:
    """Cells of one look share a style; a verdict dressed over a plain cell must not colour all plain cells."""
    for title, column in (("Checks", 6), ("Wires", 3), ("Assumptions", 4)):
        plain = [row[column - 1] for row in book[title].iter_rows(min_row=4, max_row=20)]
        assert {cell.fill.fill_type for cell in plain} == {None}, title


def test_a_print_header_can_not_hold_codes(hostile: Session, tmp_path: Path) -> None:
    from bom.papers.page_setup import _header

    assert _header("lamps & horn &A") == "lamps && horn &&A"


def test_totals_agree_to_the_cent(papers: Session, shown: Workbook) -> None:
    parts = shown["Parts"]
    lines = [row for row in parts.iter_rows(min_row=4, values_only=True) if isinstance(row[12], int | float)]
    total = lines.pop()
    assert total[0] == "total"
    assert total[12] == pytest.approx(papers.build.bill.total, abs=0.001)
    assert sum(row[12] for row in lines) == pytest.approx(papers.build.bill.total, abs=0.001)


def test_an_office_program_comes_to_the_same_results(
    written: list[Path], book: Workbook, shown: Workbook, tmp_path: Path
) -> None:
    anew = recomputed(load_workbook(written[0]), tmp_path, "anew")
    for title, cell, formula in formulas(book):
        said, found = shown[title][cell].value, anew[title][cell].value
        assert anew[title][cell].data_type != "e", f"{title}!{cell} {formula}: {found}"
        if isinstance(said, str):
            assert found == said, f"{title}!{cell} {formula}"
        else:
            assert float(found) == pytest.approx(float(said), abs=1e-6), f"{title}!{cell} {formula}"


@pytest.fixture(scope="session")
def sound_book(sound: Session, tmp_path_factory: pytest.TempPathFactory) -> Workbook:
    from bom.papers.workbook import workbook

    path = tmp_path_factory.mktemp("sound") / "sound.xlsx"
    path.write_bytes(workbook(sound))
    return load_workbook(path)


@pytest.fixture
def edited_total(sound: Session, tmp_path: Path) -> Callable[..., float]:
    """Edit cells of the sound job's workbook, let an office program work it out, and give the total."""
    from bom.papers.workbook import workbook

    def total(sheet: str, cells: dict[str, float]) -> float:
        path = tmp_path / "edited.xlsx"
        path.write_bytes(workbook(sound))
        book = load_workbook(path)
        for cell, value in cells.items():
            book[sheet][cell].value = value
        anew = recomputed(book, tmp_path, "edited2")
        assert any(row[6] == "agrees" for row in anew["Orders"].iter_rows(values_only=True))
        return next(float(row[12]) for row in anew["Parts"].iter_rows(values_only=True) if row[0] == "total")

    return total


def price_rows(book: Workbook, part: str) -> list[int]:
    return [row for row in range(4, book["Prices"].max_row + 1) if book["Prices"].cell(row, 1).value == part]


def test_money_follows_a_list_price(sound: Session, sound_book: Workbook, edited_total: Callable[..., float]) -> None:
    line = next(line for line in sound.build.bill.lines if line.purchase and len(line.purchase.offer.breaks) == 1)
    buy = line.purchase
    assert buy is not None
    [row] = price_rows(sound_book, line.part_id)
    dearer = replace(buy.offer, breaks=((buy.offer.breaks[0][0], buy.offer.breaks[0][1] + 10.0),))
    price = pack_price(dearer, buy.packs, sound.loaded.job.money)
    assert price is not None
    total = edited_total("Prices", {f"E{row}": dearer.breaks[0][1]})
    assert total == pytest.approx(sound.build.bill.total - line.cost + buy.packs * price, abs=0.001)


def test_money_follows_a_step_of_the_price(sound: Session, edited_total: Callable[..., float]) -> None:
    """Enough taken to reach an offer's next step is paid at that step's price."""
    stepped = [line for line in sound.build.bill.lines if line.purchase and len(line.purchase.offer.breaks) > 1]
    row, line = next((4 + sound.build.bill.lines.index(line), line) for line in stepped)
    assert line.purchase is not None
    offer, packs = line.purchase.offer, line.purchase.offer.breaks[-1][0]
    assert line.purchase.packs < packs
    price = pack_price(offer, packs, sound.loaded.job.money)
    assert price is not None
    assert price < line.purchase.pack_price
    total = edited_total("Parts", {f"E{row}": packs * offer.pack_size - line.spare})
    assert total == pytest.approx(sound.build.bill.total - line.cost + packs * price, abs=0.001)


def test_money_follows_a_rate(sound: Session, sound_book: Workbook, edited_total: Callable[..., float]) -> None:
    sheet, money = sound_book["Prices"], sound.loaded.job.money
    row = next(row for row in range(4, 10) if sheet.cell(row, 11).value == "GBP")
    rated = money.model_copy(update={"rates": {**money.rates, "GBP": 2.0}})
    after = 0.0
    for line in sound.build.bill.lines:
        assert line.purchase is not None
        price = pack_price(line.purchase.offer, line.purchase.packs, rated)
        assert price is not None
        after += line.purchase.packs * price
    assert edited_total("Prices", {f"L{row}": 2.0}) == pytest.approx(after, abs=0.001)
    assert after > sound.build.bill.total + 1.0


def test_verdicts_are_counted_from_the_checks(papers: Session, shown: Workbook) -> None:
    counts = {row[0]: row[1] for row in shown["Summary"].iter_rows(values_only=True)}
    rows = [row[:3] for row in shown["Checks"].iter_rows(min_row=4, values_only=True)]
    for verdict in (Verdict.FAIL, Verdict.CANT_TELL, Verdict.TIGHT, Verdict.PASS):
        assert (
            counts_of(shown, verdict)
            == papers.build.count(verdict)
            == sum(int(row[2]) for row in rows if row[0] == marked(verdict))
        )
    assert counts


def counts_of(shown: Workbook, verdict: Verdict) -> int:
    rows = shown["Summary"].iter_rows(values_only=True)
    return next(int(row[1]) for row in rows if row[0] == marked(verdict) and isinstance(row[1], int | float))


def test_every_bill_line_and_wire_has_its_row(papers: Session, shown: Workbook) -> None:
    parts = [row[0] for row in shown["Parts"].iter_rows(min_row=4, values_only=True)]
    assert parts[: len(papers.build.bill.lines)] == [line.part_id for line in papers.build.bill.lines]
    wires = [row[1] for row in shown["Wires"].iter_rows(min_row=4, values_only=True)]
    assert wires == [wire.name for wire in papers.build.loom.wires]


def test_a_part_nobody_offers_is_told(sound: Session, tmp_path: Path) -> None:
    lines = (replace(sound.build.bill.lines[0], purchase=None), *sound.build.bill.lines[1:])
    build = replace(sound.build, bill=replace(sound.build.bill, lines=lines))
    path = write_papers(replace(sound, build=build), tmp_path)[0]
    parts = load_workbook(path, data_only=True)["Parts"]
    row = next(parts.iter_rows(min_row=4, max_row=4, values_only=True))
    assert row[0] == lines[0].part_id
    assert row[17] == marked(Verdict.FAIL)
    assert "1 part has no offer" in str(load_workbook(path)["Summary"]["A3"].value)


def test_each_sheet_is_set_up_to_print(book: Workbook) -> None:
    for sheet in book:
        assert sheet.freeze_panes is not None, sheet.title
        assert sheet.print_title_rows, sheet.title
        assert sheet.page_setup.fitToWidth == 1, sheet.title
        assert int(sheet.page_setup.paperSize) == 9, sheet.title


def test_the_document_date_is_the_job_s(papers: Session, book: Workbook) -> None:
    assert book.properties.creator == "donorbill"
    for moment in (book.properties.created, book.properties.modified):
        assert moment is not None
        assert moment.date() == papers.loaded.job.date


def test_a_result_is_written_beside_its_formula() -> None:
    xml = '<c r="A1" s="2"><f>1&lt;2</f><v /></c><c r="B1"><f>SUM(C1)</f><v></v></c><c r="C1"><v>3</v></c>'
    assert with_results(xml, {"A1": "a<b", "B1": 3.0}) == (
        '<c r="A1" s="2" t="str"><f>1&lt;2</f><v>a&lt;b</v></c><c r="B1"><f>SUM(C1)</f><v>3.0</v></c>'
        '<c r="C1"><v>3</v></c>'
    )


def test_key_arrangements_say_what_the_contact_makes_and_breaks(book: Workbook) -> None:
    """Worked: at 12 V it opens coils at 14.4 V; at pack volts the converter's amps at the highest bus volts."""
    rows = {row[0]: [cell for cell in row[1:] if cell] for row in book["Key"].iter_rows(values_only=True) if row[0]}
    opens = {str(cell).rpartition(" at ")[2] for cell in rows["its contact opens"]}
    assert "14.4 V" in opens
    assert any(float(volts.removesuffix(" V")) > 40 for volts in opens)
    assert str(rows["stays on when parked"][0]).split(",")[0].endswith("mA")
    assert any("welds shut" in str(cell) for cell in rows["what fails, and how"])


def test_the_gates_stand_under_the_donor_s_items(papers: Session, shown: Workbook) -> None:
    from bom.check.donor_gates import donor_gates

    rows = [row for row in shown["Donor"].iter_rows(values_only=True) if row[0]]
    names = [row[0] for row in rows]
    gates = donor_gates(papers.build)
    first = names.index("isolation")
    assert first > names.index(papers.build.donor[-1].name)
    assert names[first : first + 10] == [gate.name for gate in gates]
    for row, gate in zip(rows[first:], gates, strict=False):
        assert (row[2], row[3], row[4]) == (gate.question, gate.answer, gate.follows)
        assert gate.verdict.word in str(row[1])
