"""The sheet of the open walk."""

from openpyxl.worksheet.pagebreak import Break

from bom.build import Build
from bom.papers.closing_rows import walked_in
from bom.papers.looks import ALARM, AMPS, BOLD, NOTE, SECTION, TEXT, VOLTS, WHOLE
from bom.papers.open_rows import HELPS, KEEPS, OpenRow, StrayRow, open_rows, stray_rows, unnoticed
from bom.papers.page import Heading, Page

DASH = "–"
FOUND = "found only when they are next asked for: a start, a charge, the other side or beam"
OPENS = (
    Heading("no.", 6, BOLD),
    Heading("wire that comes off", 36, BOLD),
    Heading("goes dark", 48),
    Heading("drops out", 34),
    Heading("floats", 28),
    Heading("at V", 9, VOLTS),
    Heading("then carries too much", 28),
    Heading("A", 9, AMPS),
    Heading("for ever A", 9, AMPS),
)
STRAYS = (
    Heading("no.", 6, BOLD),
    Heading("traction return that comes off", 36, BOLD),
    Heading("what becomes of it", 48),
    Heading("what helps", 34),
    Heading("way home", 28),
    Heading("A", 9, AMPS),
    Heading("its minus rises by", 28),
    Heading("V", 9, VOLTS),
    Heading("may A", 9, WHOLE),
)
WAY = "throttle or display ground, 12 V minus, converter"


def write_opens(page: Page, build: Build) -> None:
    """Write each wire whose loss is noticed, those whose loss is not, and the lost traction minus."""
    page.put(1, 1, "Open wires, worst first", SECTION)
    page.line(
        2,
        "Each wire opened once. What floats stands at pack or lamp volts though it looks like a minus: measure before "
        f"you touch. It is evidence and no approval. {walked_in(build).told}",
        NOTE,
        len(OPENS),
    )
    page.heading(3, OPENS)
    row = 3
    for opened in open_rows(build):
        row += 1
        page.row(row, _cells(opened), OPENS)
    quiet = unnoticed(build)
    if quiet:
        row += 1
        page.put(row, 1, len(quiet), BOLD)
        page.put(row, 2, "others: nothing changes while it rides", BOLD)
        page.line_in(row, 3, len(OPENS), f"{FOUND}: {', '.join(quiet)}", TEXT)
    page.sheet.row_breaks.append(Break(id=row + 1))  # its table prints in one piece
    _strays(page, row + 2, build)


def _cells(row: OpenRow) -> tuple[object, ...]:
    opened = row.opened
    where = (row.number, opened.wire, row.dark or "nothing", row.drops or DASH)
    floats = (opened.floats, round(opened.floats_v, 1)) if opened.floats else (DASH, DASH)
    carries = (opened.carries, round(opened.carries_a, 1), round(opened.ampacity_a, 1))
    return (*where, *floats, *(carries if opened.carries else (DASH, DASH, DASH)))


def _strays(page: Page, row: int, build: Build) -> None:
    page.put(row, 1, "A traction minus that is lost", SECTION)
    page.line(
        row + 1,
        "Controllers join throttle ground and minus inside. Where that ground also meets the 12 V minus and the "
        "converter joins it to the pack's, the motor's amps come home through a thin lead that no fuse sees. Where the "
        "pack's minus touches the frame they come home through the frame's bond.",
        NOTE,
        len(OPENS),
    )
    page.heading(row + 2, STRAYS, widths=False)
    rows = stray_rows(build)
    for index, stray in enumerate(rows, start=row + 3):
        page.row(index, _stray_cells(stray), STRAYS)
        if stray.too_much:
            page.put(index, 3, _becomes(stray), ALARM)
    if not rows:
        page.line(row + 3, "Not walked: no state of this bike rides.", TEXT, len(OPENS))


def _stray_cells(row: StrayRow) -> tuple[object, ...]:
    figures = (round(row.amps, 1), "controller" if row.too_much else DASH, row.drop_v if row.too_much else DASH)
    helps = (HELPS, WAY) if row.too_much else (f"keep it so: {KEEPS}", "none found")
    return (row.number, row.wire, _becomes(row), *helps, *figures, row.may_a)


def _becomes(row: StrayRow) -> str:
    if row.too_much:
        return f"with {row.bond}: the motor's amps through the {row.through}: it burns, and no fuse opens"
    return f"with {row.bond}: the drive stops; nothing comes home by a thin lead"
