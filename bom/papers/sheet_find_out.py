"""The sheet of what is still to be found out, and of what is tested when parts arrive."""

from collections.abc import Sequence
from math import isnan

from bom.check.donor_words import DonorVerdict
from bom.papers.ask_rows import GoodsRow, goods_rows
from bom.papers.looks import BOLD, NOTE, SECTION, TEXT, WHOLE
from bom.papers.page import Heading, Page
from bom.papers.unknowns import Unknown, unknowns
from bom.session import Session

UNKNOWN = (
    Heading("figure to find", 34, BOLD),
    Heading("of", 20),
    Heading("why it matters", 46),
    Heading("waiting for it", 50),
    Heading("quick way (common practice)", 56),
    Heading("minutes", 9, WHOLE),
)

GOODS = (
    Heading("figure", 34, BOLD),
    Heading("of", 20),
    Heading("passes with", 46),
    Heading("where", 50),
    Heading("test", 56),
    Heading("minutes", 9, WHOLE),
)
GOODS_NOTE = (
    "Only figures that would change the worst verdict of their place. A test that finds faults only never proves the "
    "figure; where the data sheet is the only way, no bench settles it. Current-limited supply, one hand above 60 V."
)
DONOR_MINUTES = 5  # a rough estimate


def write_find_out(page: Page, session: Session) -> None:
    """Write what can't be told, by the figure that would settle it; under it, what is tested when parts arrive."""
    build, ways = session.build, session.catalogue.find_out
    page.put(1, 1, "To find out", SECTION)
    page.line(
        2,
        "Each of these leaves an answer untold. Write what you find into the job or the catalogue, with how it "
        "is known, and run again. Minutes are estimates.",
        NOTE,
        len(UNKNOWN),
    )
    page.heading(3, UNKNOWN)
    asked = [*map(_unknown_cells, unknowns(build, ways))]
    asked += [_donor_cells(item) for item in build.donor if item.verdict == "test first"]
    for row, cells in enumerate(asked, start=4):
        page.row(row, cells, UNKNOWN)
    if not asked:
        page.line(4, "Nothing: no answer hangs on a missing figure.", TEXT, len(UNKNOWN))
    _goods_in(page, 6 + len(asked), goods_rows(session.questions))


def _goods_in(page: Page, row: int, rows: Sequence[GoodsRow]) -> None:
    """Write the tests on parts that arrive."""
    page.line(row, "Goods in: before the part is energised", SECTION, len(UNKNOWN))
    page.line(row + 1, GOODS_NOTE, NOTE, len(UNKNOWN))
    if not rows:
        page.line(row + 2, "Nothing: no verdict hangs on a figure of a part that stands here.", TEXT, len(UNKNOWN))
        return
    page.heading(row + 2, GOODS, widths=False)
    for number, entry in enumerate(rows, start=row + 3):
        passes = f"☐ {entry.passes} ({entry.proves}; {entry.now}, then {entry.then})"
        page.row(number, (entry.figure, entry.part, passes, entry.places, entry.test, entry.minutes), GOODS)


def _unknown_cells(entry: Unknown) -> tuple[object, ...]:
    return (entry.datum, ", ".join(entry.parts), entry.why, "; ".join(entry.waiting), entry.way, entry.minutes)


def _donor_cells(item: DonorVerdict) -> tuple[object, ...]:
    minutes = DONOR_MINUTES if isnan(item.minutes) else item.minutes
    return (f"donor's {item.name}", item.kind, item.reason, f"whether the {item.name} stays", item.test, minutes)
