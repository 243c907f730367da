"""The sheet of what arrived in place of what was ordered: was and now, with the verdict of each."""

from bom.build import Build
from bom.papers.looks import BOLD, NOTE, SECTION
from bom.papers.page import Heading, Page
from bom.papers.received_rows import received_rows

RECEIVED = (
    Heading("place", 28, BOLD),
    Heading("what", 62),
    Heading("was", 40),
    Heading("verdict was", 13),
    Heading("now", 40),
    Heading("verdict now", 13),
)


def write_received(page: Page, build: Build) -> None:
    """Write a row for each thing that changed."""
    rows = received_rows(build)
    page.put(1, 1, "Received in place of what was ordered", SECTION)
    note = "The choice and the bill are of what was ordered; every check is of what arrived. Evidence, no approval."
    page.line(2, note if rows else "The job names nothing that arrived in place of another part.", NOTE, len(RECEIVED))
    page.heading(3, RECEIVED)
    for number, row in enumerate(rows, start=4):
        page.row(number, (row.place, row.what, row.was, row.was_said, row.now, row.now_said), RECEIVED)
