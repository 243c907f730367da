"""What can't be told of the donor, and what certainty costs instead, under the donor's items."""

from collections.abc import Mapping

from bom.check.certainty import Certainty
from bom.papers.looks import BOLD, HEAD, NOTE, SECTION, TEXT, WHOLE
from bom.papers.page import Page

HEADS = (
    (1, 1, "item"),
    (2, 2, "minutes"),
    (3, 3, "figure missing, and why it matters"),
    (4, 4, "how to find it"),
    (5, 8, "certain instead"),
)
WIDE = 8
SAID = "What a test costs in minutes, and what it costs not to need it: the bought part that stands there now."


def write_certainty(page: Page, row: int, certainties: Mapping[str, Certainty]) -> int:
    """Write a row for each missing figure of each item to be tested first; give the row after."""
    if not certainties:
        return row
    page.line(row, "Test first: what is missing, and what certainty costs", SECTION, WIDE)
    page.line(row + 1, SAID, NOTE, WIDE)
    row += 2
    for first, last, text in HEADS:
        page.line_in(row, first, last, text, HEAD)
    for name, told in certainties.items():
        for entry in told.wanted:
            row += 1
            page.put(row, 1, name, BOLD)
            page.put(row, 2, entry.minutes, WHOLE)
            page.put(row, 3, f"{entry.figure}: {entry.why}", TEXT)
            page.put(row, 4, entry.way, TEXT)
            page.line_in(row, 5, WIDE, told.instead, TEXT)
    return row + 2
