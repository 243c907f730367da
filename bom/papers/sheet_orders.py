"""The sheet of orders: one block a supplier, and what to ask them."""

from collections.abc import Sequence
from dataclasses import replace

from bom.build import Build
from bom.check.question import Question
from bom.money.bill import Line
from bom.papers.ask_rows import supplier_lines
from bom.papers.looks import BOLD, COUNT, HEAD, MONEY, NOTE, SECTION, TEXT, TOTAL, TOTAL_WORD, WHOLE
from bom.papers.page import Heading, Page
from bom.papers.sheet_parts import PartsLayout
from bom.session import Session

HEADINGS = (
    Heading("their code", 18, BOLD),
    Heading("our part", 12),
    Heading("name", 46),
    Heading("packs", 8, WHOLE),
    Heading("pack size", 11, COUNT),
    Heading("pack price", 12, MONEY),
    Heading("line", 12, MONEY),
    Heading("days", 8, WHOLE),
)
WIDE = len(HEADINGS)
FROM_PARTS = {4: "J", 5: "H", 6: "K", 7: "M", 8: "P"}


def write_orders(page: Page, session: Session, parts: PartsLayout) -> None:
    """Write the sheet; every number is taken from the parts sheet, so that an edit there arrives here."""
    build, suppliers = session.build, session.catalogue.suppliers
    page.put(1, 1, f"Orders by supplier, in {build.bill.currency}", SECTION)
    page.line(2, "One block is one order. Numbers come from the parts sheet; edit them there.", NOTE, len(HEADINGS))
    page.heading(3, HEADINGS)
    row, subtotals = 4, []
    for supplier, lines in build.bill.by_supplier().items():
        row = _order(page, row, f"{suppliers[supplier]} ({supplier})", lines, parts)
        subtotals.append(f"G{row}")
        row = _questions(page, row + 1, lines, session.questions) + 1
    _grand_total(page, row, build, parts, subtotals)
    _left_out(page, row + 3, session.questions)


def _order(page: Page, row: int, supplier: str, lines: tuple[Line, ...], parts: PartsLayout) -> int:
    """Write one order and give the row of its sum."""
    page.line(row, supplier, SECTION, len(HEADINGS))
    first = row + 1
    for line in lines:
        row += 1
        _order_line(page, row, line, parts)
    _sum_words(page, row + 1, "order")
    page.formula(row + 1, 7, f"SUM(G{first}:G{row})", round(sum(line.cost for line in lines), 2), TOTAL)
    days = max(line.purchase.offer.lead_days for line in lines if line.purchase)
    page.formula(row + 1, 8, f"MAX(H{first}:H{row})", days, replace(TOTAL, number="0_0"))
    return row + 1


def _order_line(page: Page, row: int, line: Line, parts: PartsLayout) -> None:
    assert line.purchase is not None  # orders hold only what somebody offers
    buy, offer = line.purchase, line.purchase.offer
    numbers = (buy.packs, offer.pack_size, buy.pack_price, line.cost, offer.lead_days)
    page.row(row, (offer.supplier_code, line.part_id, line.name or line.family, *numbers), HEADINGS)
    for value, (column, letter) in zip(numbers, FROM_PARTS.items(), strict=True):
        page.formula(row, column, f"Parts!{letter}{parts.rows[line.part_id]}", value, HEADINGS[column - 1].look)


def _sum_words(page: Page, row: int, word: str) -> None:
    page.put(row, 1, word, TOTAL_WORD)
    for column in range(2, len(HEADINGS) + 1):
        page.put(row, column, "", TOTAL_WORD)


def _questions(page: Page, row: int, lines: tuple[Line, ...], questions: Sequence[Question]) -> int:
    """Write what to ask before this order goes out, and give the row after."""
    asked = [(line, text) for line in lines for text in supplier_lines(line.part_id, questions)]
    if asked:
        page.line(row, "Questions that go with this order: each answer changes a verdict of this bike", BOLD, WIDE)
    for line, text in asked:
        row += 1
        assert line.purchase is not None
        page.put(row, 1, line.purchase.offer.supplier_code, TEXT)
        page.put(row, 2, line.part_id)
        page.line_in(row, 3, WIDE, text, TEXT)
    return row + 1


def _left_out(page: Page, row: int, questions: Sequence[Question]) -> None:
    """Write what to ask of parts that would stand at an open place if one figure of theirs were known."""
    asked = [question for question in questions if question.stands == "left out"]
    if asked:
        page.line(row, "Questions on parts that would stand where none is chosen, but for a figure", BOLD, WIDE)
    for question in asked:
        row += 1
        page.put(row, 1, ", ".join(question.places), TEXT)
        page.put(row, 2, question.part_id)
        page.line_in(row, 3, WIDE, f"{question.name}: {question.ask}", TEXT)


def _grand_total(page: Page, row: int, build: Build, parts: PartsLayout, subtotals: list[str]) -> None:
    _sum_words(page, row, "all orders")
    page.formula(row, 7, "+".join(subtotals) or "0", build.bill.total, TOTAL)
    page.line_in(row + 1, 1, 6, "against the parts sheet", TEXT)
    formula = f'IF(ABS(G{row}-{parts.total})<0.005,"agrees","DIFFERS")'
    page.formula(row + 1, 7, formula, "agrees", replace(HEAD, align="right"))
