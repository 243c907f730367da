"""The sheet of what arrived in place of what was ordered: each part in a few lines, with the ratings that differ."""

from bom.arrived.arrivals import Arrival, arrivals, aside_lines
from bom.build import Build
from bom.papers.looks import BOLD, NOTE, SECTION, TEXT
from bom.papers.page import Heading, Page

RECEIVED = (Heading("what", 62, BOLD), Heading("ordered", 30), Heading("came", 30), Heading("verdict", 13))
WIDE = len(RECEIVED)


def write_received(page: Page, build: Build) -> None:
    """Write a block for each part that came, and a line for each that stands nowhere."""
    came, aside = arrivals(build), aside_lines(build)
    page.put(1, 1, "Received in place of what was ordered", SECTION)
    note = "The choice and the bill are of what was ordered; every check is of what arrived. Evidence, no approval."
    none = "The job names nothing that arrived in place of another part."
    page.line(2, note if came or aside else none, NOTE, WIDE)
    page.heading(3, RECEIVED)
    row = 4
    for part in came:
        row = _block(page, row, part)
    for text in aside:
        page.line(row, text, TEXT, WIDE)
        row += 1


def _block(page: Page, row: int, part: Arrival) -> int:
    """Write one part: heading, ratings that differ, answers that are worse; give the row after it."""
    page.row(row, (part.heading, part.ordered, part.came, part.verdict), RECEIVED)
    for each in part.differs:
        row += 1
        page.row(row, (each.what, each.was, each.now, ""), RECEIVED)
    for text in filter(None, (part.counted, *part.worst)):
        row += 1
        page.line(row, text, TEXT, WIDE)
    return row + 2
