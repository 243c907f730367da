"""The first sheet: how the build stands, what to settle first, what it costs, the ways to wire the key."""

from bom import units
from bom.build import Build
from bom.check.cause_words import cause_lines
from bom.check.causes import Cause
from bom.check.cure_words import cure_words
from bom.judge.verdict import Verdict
from bom.papers.arrangements import key_opens, key_words, parked, verdict_words
from bom.papers.bench import bench
from bom.papers.looks import BOLD, MONEY, NOTE, PLAIN, SECTION, TEXT, TITLE, TOTAL, VERDICT_LOOKS, VOLTS, WHOLE, Look
from bom.papers.page import Heading, Page, counted
from bom.papers.sheet_bike import DONOR_LOOKS
from bom.papers.sheet_parts import FIRST, PartsLayout
from bom.papers.sheet_volts import pack_rows
from bom.papers.standing import ended, headline, marked
from bom.read.questions import quick_way
from bom.session import Session

COLUMNS = (Heading("", 26), Heading("", 19), Heading("", 19), Heading("", 78))
WIDE = len(COLUMNS)
MOST_CAUSES = 12
CAUTIONS = (
    "Verdicts do not follow an edit of this sheet; money does.",
    "If it carries pack minus it can kill: the pack can't be switched off. Cover terminals, one hand, insulated "
    "tools, no rings, somebody beside you.",
    "A pass says that one printed rating meets one duty. It does not say that the part is genuine, well crimped "
    "or well placed, and it claims no compliance with any rule or standard.",
    "Local rules, the inspector and licensed practice stand over this paper. Mains work belongs to an electrician.",
)


def write_summary(page: Page, session: Session, parts: PartsLayout) -> None:
    """Write the sheet."""
    build = session.build
    for index, column in enumerate(COLUMNS):
        page.sheet.column_dimensions["ABCD"[index]].width = column.width
    row = _head(page, session)
    row = _first(page, row + 1, session)
    row = _pack(page, row + 1, session)
    row = _answers(page, row + 1, build)
    row = _donor(page, row + 1, build)
    row = _money(page, row + 1, build, parts)
    row = _arrangements(page, row + 1, session)
    page.put(row + 1, 1, "Cautions", SECTION)
    for index, text in enumerate(CAUTIONS, start=row + 2):
        page.line(index, text, PLAIN, WIDE)


def _head(page: Page, session: Session) -> int:
    job, build = session.loaded.job, session.build
    page.line(1, job.title, TITLE, WIDE)
    customer = f"for {job.customer}, " if job.customer else ""
    page.line(2, f"{customer}{job.date.isoformat()}, key at {build.arrangement}", NOTE, WIDE)
    worst = Verdict.FAIL if build.count(Verdict.FAIL) else Verdict.CANT_TELL if not build.sound else Verdict.PASS
    base = VERDICT_LOOKS[worst]
    big = Look(bold=True, size=15, colour=base.colour, fill=base.fill or "E3E8E6", hatch=base.hatch)
    page.line(3, headline(build), big, WIDE)
    return 4


def _pack(page: Page, row: int, session: Session) -> int:
    page.put(row, 1, "Pack", SECTION)
    for name, span in pack_rows(session.build)[:5]:
        row += 1
        page.put(row, 1, name, BOLD)
        page.put(row, 2, span.low, VOLTS)
        page.put(
            row,
            3,
            "V"
            if span.known
            else f"V to {units.show(span.high, 'voltage')}"
            if span.high < 1e9
            else "V, no limit known",
        )
        page.put(row, 4, span.because)
    figures = bench(session)
    row += 1
    page.put(row, 1, "class", BOLD)
    page.put(row, 2, "above 60 V DC" if figures.above_60_v else "60 V DC or below")
    page.put(row, 3, "")
    page.put(
        row,
        4,
        f"isolation to the frame at least {figures.floor_ohm / 1000:.3g} kohm, to be measured"
        if figures.above_60_v
        else "below the high-voltage line; measure isolation all the same",
    )
    return row + 1


def _answers(page: Page, row: int, build: Build) -> int:
    page.put(row, 1, "Answers", SECTION)
    meanings = {
        Verdict.FAIL: "below the duty, or nothing stands there",
        Verdict.CANT_TELL: "a figure is missing: never taken as a pass",
        Verdict.TIGHT: "meets the duty without its margin",
        Verdict.PASS: "meets the duty and its margin",
    }
    for verdict, meaning in meanings.items():
        row += 1
        page.put(row, 1, verdict)
        page.formula(row, 2, counted(verdict, "A", "C", "Checks"), build.count(verdict), WHOLE)
        page.put(row, 3, "")
        page.put(row, 4, meaning)
    return row + 1


def _donor(page: Page, row: int, build: Build) -> int:
    """Say what stays and what goes; whys of what stays are on the donor sheet."""
    page.put(row, 1, "Donor", SECTION)
    for item in build.donor:
        row += 1
        page.put(row, 1, item.name, BOLD)
        page.put(row, 2, item.verdict, DONOR_LOOKS.get(item.verdict, BOLD))
        page.put(row, 3, item.kind)
        instead = f" Instead: {ended(item.instead)}" if item.instead else ""
        kept = f" To keep it: {ended(item.kept.way)}" if item.kept else ""
        page.put(row, 4, "" if item.verdict == "stays" else f"{ended(item.reason)}{instead}{kept}")
    if not build.donor:
        row += 1
        page.line(row, "No donor item is listed in the job.", TEXT, WIDE)
    return row + 1


def _money(page: Page, row: int, build: Build, parts: PartsLayout) -> int:
    lines = [line for line in build.bill.lines if line.purchase]
    page.put(row, 1, "Money and time", SECTION)
    page.put(row + 1, 1, "parts together", BOLD)
    page.formula(row + 1, 2, parts.total, build.bill.total, TOTAL)
    page.put(row + 1, 3, build.bill.currency, BOLD)
    open_places = len(build.holes) + len(build.bill.lines) - len(lines)
    page.put(
        row + 1,
        4,
        f"without {open_places} that can't be bought yet" if open_places else "goods alone, whole packs, spares in",
    )
    days = max((line.purchase.offer.lead_days for line in lines if line.purchase), default=0)
    page.put(row + 2, 1, "longest wait", BOLD)
    page.formula(row + 2, 2, f"MAX(Parts!P{FIRST}:P{parts.last})", days, WHOLE)
    page.put(row + 2, 3, "days")
    slow = [line.part_id for line in lines if line.purchase and line.purchase.offer.lead_days == days]
    page.put(row + 2, 4, f"for {', '.join(slow)}" if slow else "")
    return row + 3


def _arrangements(page: Page, row: int, session: Session) -> int:
    """Write a line for each way to wire the key; the sheet Key has them side by side."""
    page.put(row, 1, "Ways to wire the key", SECTION)
    for build in session.builds:
        row += 1
        page.put(row, 1, f"key at {build.arrangement}", BOLD)
        page.put(row, 2, build.bill.total, MONEY)
        page.put(row, 3, verdict_words(build))
        page.put(row, 4, f"{key_words(build)}; its contact opens {key_opens(build)}; parked: {parked(build)}")
    return row + 1


def _first(page: Page, row: int, session: Session) -> int:
    """Write the causes, a line each, in the order to settle them."""
    causes = session.build.causes
    title = "What to settle first" if not session.build.sound else "What holds without its margin"
    page.put(row, 1, title, SECTION)
    if not causes:
        page.line(row + 1, "Nothing fails, nothing is tight.", TEXT, WIDE)
        return row + 2
    for cause in causes[:MOST_CAUSES]:
        row += 1
        page.put(row, 1, f"{marked(cause.verdict)}: {cause.harm.word}", VERDICT_LOOKS[cause.verdict])
        page.line_in(row, 2, 3, cause.title, BOLD)
        page.put(row, 4, _do(cause, session))
    if len(causes) > MOST_CAUSES:
        row += 1
        page.line(row, f"and {len(causes) - MOST_CAUSES} more causes on the sheet Checks.", NOTE, WIDE)
    return row + 1


def _do(cause: Cause, session: Session) -> str:
    """Say what helps, the numbers that decide, and how many more answers have this cause."""
    todo = quick_way(cause.data[0], session.catalogue.find_out).way if cause.asks else cure_words(cause, session)
    more = f" And {cause.count - 1} more answers." if cause.count > 1 else ""
    return f"Do: {ended(todo)} {cause_lines(cause)[0].text}{more}"
