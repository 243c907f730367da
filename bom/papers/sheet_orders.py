"""The sheet of orders: one block a supplier, and what to ask them."""

from collections.abc import Sequence
from dataclasses import replace

from bom.build import Build
from bom.money.bill import Line
from bom.papers.looks import BOLD, COUNT, HEAD, MONEY, NOTE, SECTION, TEXT, TOTAL, TOTAL_WORD, WHOLE
from bom.papers.page import Heading, Page
from bom.papers.sheet_parts import PartsLayout
from bom.papers.unknowns import supplier_questions
from bom.read.catalogue import Catalogue
from bom.read.questions import Question

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
FROM_PARTS = {4: "J", 5: "H", 6: "K", 7: "M", 8: "P"}


def write_orders(page: Page, build: Build, parts: PartsLayout, catalogue: Catalogue) -> None:
    """Write the sheet; every number is taken from the parts sheet, so that an edit there arrives here."""
    page.put(1, 1, f"Orders by supplier, in {build.bill.currency}", SECTION)
    page.line(2, "One block is one order. Numbers come from the parts sheet; edit them there.", NOTE, len(HEADINGS))
    page.heading(3, HEADINGS)
    row, subtotals = 4, []
    for supplier, lines in build.bill.by_supplier().items():
        row = _order(page, row, f"{catalogue.suppliers[supplier]} ({supplier})", lines, parts)
        subtotals.append(f"G{row}")
        row = _questions(page, row + 1, lines, build, catalogue.ask_supplier) + 1
    _grand_total(page, row, build, parts, subtotals)


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


def _questions(page: Page, row: int, lines: tuple[Line, ...], build: Build, questions: Sequence[Question]) -> int:
    asked = [(line, text) for line in lines for text in supplier_questions(build, line, questions)]
    if asked:
        page.line(row, "Questions that go with this order", BOLD, len(HEADINGS))
    for line, text in asked:
        row += 1
        assert line.purchase is not None
        page.put(row, 1, line.purchase.offer.supplier_code, TEXT)
        page.put(row, 2, line.part_id)
        page.line_in(row, 3, len(HEADINGS), text, TEXT)
    return row + 1


def _grand_total(page: Page, row: int, build: Build, parts: PartsLayout, subtotals: list[str]) -> None:
    _sum_words(page, row, "all orders")
    page.formula(row, 7, "+".join(subtotals) or "0", build.bill.total, TOTAL)
    page.line_in(row + 1, 1, 6, "against the parts sheet", TEXT)
    formula = f'IF(ABS(G{row}-{parts.total})<0.005,"agrees","DIFFERS")'
    page.formula(row + 1, 7, formula, "agrees", replace(HEAD, align="right"))
