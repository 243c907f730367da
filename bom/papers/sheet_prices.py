"""The sheet of prices: what each offer asks from how many packs on, and what a currency is worth."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.build import Build
from bom.money.bill import Line
from bom.money.prices import pack_price, rate
from bom.papers.looks import BOLD, COUNT, EDITED, INPUT, MONEY, NOTE, SECTION
from bom.papers.page import Heading, Page
from bom.read.job import Money

HEADINGS = (
    Heading("part", 11, BOLD),
    Heading("supplier", 14),
    Heading("their code", 14),
    Heading("from packs", 8, EDITED),
    Heading("list price", 11, INPUT),
    Heading("currency", 9),
    Heading("tax %", 7, COUNT),
    Heading("tax in it", 8),
    Heading("pack price", 12, MONEY),
)
FIRST = 4
RATES = (Heading("currency", 10, BOLD), Heading("worth", 10, INPUT))
RATE_COLUMN = len(HEADINGS) + 2


@dataclass(frozen=True)
class PriceRows:
    """First and last row of a part's price breaks, from few packs to many."""

    first: int
    last: int

    def at(self, packs: str) -> str:
        """Write the formula that finds the pack price for the number of packs in a cell."""
        span = "Prices!${0}${1}:${0}${2}"
        starts, prices = (span.format(column, self.first, self.last) for column in "DI")
        return f"LOOKUP(MAX({packs},Prices!$D${self.first}),{starts},{prices})"


def write_prices(page: Page, build: Build, money: Money) -> Mapping[str, PriceRows]:
    """Write the price breaks of every offer taken, and give the rows of each part's."""
    bought = [line for line in build.bill.lines if line.purchase]
    page.put(1, 1, f"Prices of the offers taken, pack price in {money.currency}", SECTION)
    tax = "without tax" if money.tax_reclaimed else "with tax"
    page.line(
        2,
        f"List prices, their steps and the rates (tinted) may be edited; pack prices ({tax}), lines, orders and "
        "totals follow. Another offer is not taken: run the tool again for that.",
        NOTE,
        RATE_COLUMN + 1,
    )
    page.heading(3, HEADINGS)
    rates = _rates(page, bought, money)
    rows, row = {}, FIRST
    for line in bought:
        last = _breaks(page, row, line, money, rates)
        rows[line.part_id] = PriceRows(row, last)
        row = last + 1
    return rows


def _rates(page: Page, bought: list[Line], money: Money) -> Mapping[str, str]:
    """Write what one unit of each currency is worth, beside the table, and give the cells."""
    offers = [line.purchase.offer for line in bought if line.purchase]
    worths = {money.currency: 1.0} | {offer.currency: rate(offer, money) or 0.0 for offer in offers}
    for column, heading in enumerate(RATES, start=RATE_COLUMN):
        page.head(3, column, f"{heading.text} in {money.currency}" if column > RATE_COLUMN else heading.text, heading)
    cells = {}
    for row, (currency, worth) in enumerate(sorted(worths.items()), start=FIRST):
        page.put(row, RATE_COLUMN, currency, RATES[0].look)
        page.put(row, RATE_COLUMN + 1, worth, RATES[1].look)
        cells[currency] = f"$L${row}"
    return cells


def _breaks(page: Page, row: int, line: Line, money: Money, rates: Mapping[str, str]) -> int:
    """Write one row for each step of an offer's price and give the last."""
    assert line.purchase is not None  # only what somebody offers is listed
    offer = line.purchase.offer
    tax = "(1+G{row}/100)"
    net = f"E{{row}}/{tax}" if offer.tax_included else "E{row}"
    gross = "E{row}" if offer.tax_included else f"E{{row}}*{tax}"
    formula = f"ROUND({net if money.tax_reclaimed else gross}*{rates[offer.currency]},2)"
    for start, price in offer.breaks:
        included = "yes" if offer.tax_included else "no"
        told = (line.part_id, offer.supplier, offer.supplier_code, start, price, offer.currency, offer.tax_percent)
        result = pack_price(offer, start, money) or 0.0
        page.row(row, (*told, included, result), HEADINGS)
        page.formula(row, len(HEADINGS), formula.format(row=row), result, MONEY)
        row += 1
    return row - 1
