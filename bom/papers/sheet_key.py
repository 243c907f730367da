"""The sheet of the key: every way to wire it, side by side."""

from collections.abc import Callable

from bom.build import Build
from bom.judge.verdict import Verdict
from bom.papers.arrangements import closes_on, fault_lines, key_opens, key_words, parked, why_not
from bom.papers.looks import BOLD, HEAD, MONEY, NOTE, SECTION, TEXT, WHOLE, Look
from bom.papers.page import Page
from bom.session import Session

COST = "parts together, before any edit"
FIRST_WIDTH, WIDTH = 24, 38
LEFT_MONEY, LEFT_WHOLE = Look(number=MONEY.number), Look(number=WHOLE.number)
ROWS: tuple[tuple[str, Callable[[Build], object], Look], ...] = (
    (COST, lambda build: build.bill.total, LEFT_MONEY),
    ("fails", lambda build: build.count(Verdict.FAIL), LEFT_WHOLE),
    ("can't be told", lambda build: build.count(Verdict.CANT_TELL), LEFT_WHOLE),
    ("tight", lambda build: build.count(Verdict.TIGHT), LEFT_WHOLE),
    ("parts", lambda build: len(build.filled), LEFT_WHOLE),
    ("key switch", key_words, TEXT),
    ("why it does not pass", lambda build: why_not(build) or "–", TEXT),
    ("its contact closes on", closes_on, TEXT),
    ("its contact opens", key_opens, TEXT),
    ("stays on when parked", parked, TEXT),
)


def write_key(page: Page, session: Session) -> None:
    """Write each arrangement as a column, the papered one first, then what fails in each and how."""
    builds = session.builds
    page.sheet.column_dimensions["A"].width = FIRST_WIDTH
    page.put(1, 1, "Key, every way to wire it", SECTION)
    page.line(
        2,
        "Each column is the whole bike built, judged and priced with its key wired that way; the first is the one on "
        "paper. The donor's key at pack volts is there because people ask for it.",
        NOTE,
        1 + len(builds),
    )
    page.put(3, 1, "", HEAD)
    for column, build in enumerate(builds, start=2):
        page.sheet.column_dimensions["ABCDEFG"[column - 1]].width = WIDTH
        page.put(3, column, f"key at {build.arrangement}", HEAD)
        for row, (_, answer, look) in enumerate(ROWS, start=4):
            page.put(row, column, answer(build), look)
        _faults(page, 4 + len(ROWS), column, build)
    for row, (word, _, _) in enumerate(ROWS, start=4):
        page.put(row, 1, word, BOLD)
    page.put(4 + len(ROWS), 1, "what fails, and how", BOLD)


def _faults(page: Page, row: int, column: int, build: Build) -> None:
    lines = fault_lines(build) or ["not walked: no state of this bike rides"]
    for number, line in enumerate(lines):
        page.put(row + number, column, line)
