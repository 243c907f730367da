"""The sheet of control leads: which joins which, through what, and what is capped."""

from bom.build import Build
from bom.papers.lead_rows import CAP, DASH, LeadRow, Side, lead_rows
from bom.papers.looks import BOLD, NOTE, SECTION, TEXT
from bom.papers.page import Heading, Page

SIDE = (
    Heading("lead", 15, BOLD),
    Heading("signal", 14),
    Heading("volts", 15),
    Heading("colour", 18, BOLD),
    Heading("own plug", 12),
)
LEADS = (
    Heading("no.", 5, BOLD),
    Heading("device", 16),
    *SIDE,
    Heading("joins", 16),
    *SIDE,
    Heading("through", 22),
    Heading("part", 10),
    Heading("way", 5),
    Heading("do", 26),
    Heading("done", 6),
)
NOTES = (
    "Colours are each maker's own: join by what a lead is for, and measure it against its ground first. Mark both "
    "sides with the number. Evidence, no approval: the maker's diagram stands over it.",
    "The job lists no devices with control leads.",
)
EMPTY = Side(DASH, DASH, DASH, DASH, DASH, DASH)


def write_leads(page: Page, build: Build) -> None:
    """Write one row a lead; the unused ones last."""
    page.put(1, 1, "Control leads", SECTION)
    page.line(2, NOTES[0], NOTE, len(LEADS))
    page.heading(3, LEADS)
    rows = lead_rows(build)
    for row, lead in enumerate(rows, start=4):
        page.row(row, _cells(lead), LEADS)
    if not rows:
        page.line(4, NOTES[1], TEXT, len(LEADS))


def _cells(row: LeadRow) -> tuple[object, ...]:
    first, second = row.first, row.second or EMPTY
    joins = second.device if row.second else CAP
    return (
        row.number,
        first.device,
        *(first.lead, first.signal, first.volts, first.colour, first.plug),
        joins,
        *(second.lead, second.signal, second.volts, second.colour, second.plug),
        *(row.through, row.part, row.way, row.do, "☐"),
    )
