"""The sheet of everything that was assumed: margins, values the job does not give, figures known by ends only."""

from bom.judge.rule import rules
from bom.papers.looks import AMPS, BOLD, NOTE, SECTION, TEXT
from bom.papers.page import Heading, Page
from bom.session import Session

MARGINS = (
    Heading("margin", 34, BOLD),
    Heading("value", 16, AMPS),
    Heading("unit", 12),
    Heading("meaning", 64),
    Heading("source", 64),
)


def write_assumptions(page: Page, session: Session) -> None:
    """Write the sheet."""
    page.put(1, 1, "Assumptions", SECTION)
    page.line(
        2,
        "What the job does not say is assumed and listed here. Set a margin under [margins] in the job, a "
        "value under its own key.",
        NOTE,
        len(MARGINS),
    )
    page.heading(3, MARGINS)
    row = 3
    for margin in session.margins.entries.values():
        row += 1
        page.row(row, (margin.name, margin.value, margin.unit or "–", margin.meaning, margin.source), MARGINS)
    row = _defaults(page, row + 2, session)
    row = _between(page, row + 2, session)
    for note in session.notes:
        row += 1
        page.line(row, note, NOTE, len(MARGINS))
    _rules(page, row + 2, session)


def _rules(page: Page, row: int, session: Session) -> None:
    """List the rules that had something to ask of this bike, each with its source."""
    page.put(row, 1, "Rules asked, and their sources", SECTION)
    asked = {finding.rule for finding in session.build.findings}
    for rule in rules():
        if rule.name in asked:
            row += 1
            page.put(row, 1, rule.name, BOLD)
            page.line_in(row, 2, 4, rule.asks, TEXT)
            page.put(row, 5, rule.source)


def _defaults(page: Page, row: int, session: Session) -> int:
    page.put(row, 1, "Values the job does not give", SECTION)
    for default in session.loaded.defaults:
        row += 1
        page.put(row, 1, default.key, BOLD)
        page.put(row, 2, default.value)
        page.put(row, 3, "")
        page.line_in(row, 4, 5, default.meaning, TEXT)
    return row


def _between(page: Page, row: int, session: Session) -> int:
    """List figures known only to lie between two ends, each with what would settle it."""
    page.put(row, 1, "Figures known only to lie between two ends", SECTION)
    seen: dict[str, tuple[str, str]] = {}
    for duty in session.build.duties.values():
        for span in duty.needs.values():
            if not span.known:
                seen.setdefault(span.because, (str(span), span.datum))
    for because, (text, datum) in seen.items():
        row += 1
        page.put(row, 1, text, BOLD)
        page.line_in(row, 2, 4, because, TEXT)
        page.put(row, 5, f"to settle: {datum}" if datum else "")
    if not seen:
        row += 1
        page.line(row, "None.", TEXT, len(MARGINS))
    return row
