"""The sheet of all parts: what to buy, what it costs, what stays of the donor, where none is chosen."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

from bom.build import Build
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.money.bill import Line
from bom.money.prices import least_packs
from bom.papers.looks import (
    AMPS,
    BOLD,
    COUNT,
    EDITED,
    MONEY,
    NOTE,
    SECTION,
    TEXT,
    TOTAL,
    TOTAL_WORD,
    VERDICT_LOOKS,
    WHOLE,
)
from bom.papers.page import Heading, Page, some_of
from bom.papers.sheet_prices import PriceRows
from bom.papers.standing import MARKS, checks_passed, worst_at
from bom.read.families import BY_NAME

HEADINGS = (
    Heading("part", 10, BOLD),
    Heading("name", 34),
    Heading("family", 13),
    Heading("places", 30),
    Heading("bike takes", 8, EDITED),
    Heading("spare", 7, EDITED),
    Heading("unit", 5),
    Heading("pack size", 8, COUNT),
    Heading("least packs", 9, WHOLE),
    Heading("packs to buy", 9, WHOLE),
    Heading("pack price", 10, MONEY),
    Heading("piece or metre", 10, MONEY),
    Heading("line", 10, MONEY),
    Heading("supplier", 12),
    Heading("their code", 12),
    Heading("days", 6, WHOLE),
    Heading("price of", 11),
    Heading("verdict", 12),
    Heading("why", 36),
)
FIRST = 4
MOST_PLACES = 4  # the sheet of wires names every end
NOTES = (
    "What the bike takes and the spare (tinted) may be edited, 0 for what is in the drawer; packs, pack price, line "
    "and total follow. Prices, their steps and exchange rates are edited on the sheet Prices.",
    "Sums are of goods alone: freight, duty and card fees are the supplier's. Tax as the job says.",
)


@dataclass(frozen=True)
class PartsLayout:
    """Where other sheets find things: the row of each part, the total, the longest wait."""

    rows: Mapping[str, int]
    total: str
    last: int


def write_parts(page: Page, build: Build, prices: Mapping[str, PriceRows]) -> PartsLayout:
    """Write the sheet; pack prices are found on the sheet of prices."""
    page.put(1, 1, f"Parts to buy, prices in {build.bill.currency}", SECTION)
    page.line(2, " ".join(NOTES), NOTE, len(HEADINGS))
    page.heading(3, HEADINGS)
    standing = _Standing(worst_at(build), checks_passed(build))
    rows = {}
    for row, line in enumerate(build.bill.lines, start=FIRST):
        rows[line.part_id] = row
        _line(page, row, line, build, standing, prices)
    last = FIRST + len(build.bill.lines) - 1
    total_row = last + 1
    page.put(total_row, 1, "total", TOTAL_WORD)
    for column in range(2, len(HEADINGS) + 1):
        page.put(total_row, column, "", TOTAL_WORD)
    page.formula(total_row, 13, f"SUM(M{FIRST}:M{last})", build.bill.total, TOTAL)
    after = _holes(page, total_row + 2, build)
    _donor(page, after, build)
    page.sheet.auto_filter.ref = f"A3:S{last}"
    return PartsLayout(rows, f"Parts!$M${total_row}", last)


@dataclass(frozen=True)
class _Standing:
    """Worst finding and number of passes at each place, counted once for the whole sheet."""

    worst: Mapping[str, Finding]
    passed: Counter[str]


def _line(page: Page, row: int, line: Line, build: Build, standing: _Standing, prices: Mapping[str, PriceRows]) -> None:
    verdict, why = _verdict(line, build, standing)
    name, family = line.name or _kit_name(line), BY_NAME[line.family].title
    head = (line.part_id, name, family, some_of(line.places, MOST_PLACES), line.quantity, line.spare, line.unit)
    buy = line.purchase
    if buy is None:
        tail: tuple[object, ...] = ("", "", "", "", "", 0.0, "no offer", "", "", "")
        page.row(row, (*head, *tail, Verdict.FAIL, f"Nobody offers it in a currency the job knows. {why}"), HEADINGS)
        return
    offer = buy.offer
    packs = (offer.pack_size, _least(line), buy.packs, buy.pack_price, 0.0, line.cost)
    ordered = (offer.supplier, offer.supplier_code, offer.lead_days, offer.price_date)
    page.row(row, (*head, *packs, *ordered, verdict, why), HEADINGS)
    page.formula(
        row,
        10,
        f"IF(E{row}+F{row}<0.000001,0,MAX(ROUNDUP(ROUND((E{row}+F{row})/H{row},9),0),I{row}))",
        buy.packs,
        WHOLE,
    )
    page.formula(row, 11, prices[line.part_id].at(f"J{row}"), buy.pack_price, MONEY)
    page.formula(row, 12, f"K{row}/H{row}", buy.pack_price / offer.pack_size, MONEY)
    page.formula(row, 13, f"ROUND(J{row}*K{row},2)", line.cost, MONEY)


def _least(line: Line) -> int:
    """Give the fewest packs to order: the supplier's least, or more where a price step makes more cost less."""
    assert line.purchase is not None
    buy = line.purchase
    wanted = least_packs(buy.offer, line.quantity + line.spare)
    return buy.packs if buy.packs > wanted else least_packs(buy.offer, 0.0)


def _kit_name(line: Line) -> str:
    return f"{BY_NAME[line.family].title} for {line.places[0]}"


def _verdict(line: Line, build: Build, standing: _Standing) -> tuple[Verdict, str]:
    """Give the worst verdict over a part's places, and why."""
    worst = standing.worst
    stands = [name for name in line.places if name in build.filled and build.filled[name].part_id == line.part_id]
    found = [worst[name] for name in stands if name in worst]
    arrived = [name for name in line.places if name in build.filled and build.filled[name].origin == "received"]
    if arrived and not stands:
        ids = ", ".join(dict.fromkeys(build.filled[name].part_id for name in arrived))
        verdicts = [worst[name].verdict for name in arrived if name in worst]
        return max(verdicts, default=Verdict.NOT_ASKED), f"Received instead: {ids}."
    aside = next((each for each in build.aside if each.place in line.places), None)
    if not stands and aside:
        return Verdict.NOT_ASKED, f"Stands nowhere, {aside.why}."
    if not stands:
        return Verdict.NOT_ASKED, f"Goes with {line.places[0]}."
    if not found:
        return Verdict.NOT_ASKED, "No rule asks anything of it."
    finding = max(found, key=lambda entry: entry.verdict)
    if finding.verdict > Verdict.PASS:
        return finding.verdict, finding.sentence
    count = sum(standing.passed[name] for name in stands)
    pinned = " Pinned by the builder." if any(build.filled[name].origin == "pinned" for name in stands) else ""
    return finding.verdict, f"Passes {count} {'check' if count == 1 else 'checks'}.{pinned}"


def _holes(page: Page, row: int, build: Build) -> int:
    if not build.holes:
        return row
    page.put(row, 1, "Left open", SECTION)
    for hole in build.holes:
        row += 1
        look = VERDICT_LOOKS[hole.verdict]
        words = (MARKS[hole.verdict] + " open", hole.place.title, BY_NAME[hole.place.family].title, hole.place.name)
        for column, word in enumerate(words, start=1):
            page.put(row, column, word, look)
        page.line_in(row, 5, len(HEADINGS), hole.sentence, look)
    return row + 2


def _donor(page: Page, row: int, build: Build) -> None:
    kept = [(name, entry) for name, entry in build.filled.items() if entry.origin == "donor"]
    if not kept:
        return
    page.put(row, 1, "Kept from the donor, at no cost", SECTION)
    for name, entry in kept:
        row += 1
        metres = entry.place.family == "cable"
        page.put(row, 1, "donor", TEXT)
        page.put(row, 2, entry.part.word("name")[0])
        page.put(row, 3, BY_NAME[entry.place.family].title)
        page.put(row, 4, name)
        page.put(row, 5, entry.place.quantity, AMPS)
        page.put(row, 6, "", TEXT)
        page.put(row, 7, "m" if metres else "pc")
