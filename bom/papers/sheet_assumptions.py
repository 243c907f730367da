"""The sheet of everything that was assumed: margins, values the job does not give, figures known by ends only."""

from bom.papers.looks import AMPS, BOLD, NOTE, SECTION, TEXT
from bom.papers.page import Heading, Page
from bom.papers.papers import Papers

MARGINS = (
    Heading("margin", 34, BOLD),
    Heading("value", 16, AMPS),
    Heading("unit", 12),
    Heading("meaning", 64),
    Heading("source", 64),
)


def write_assumptions(page: Page, papers: Papers) -> None:
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
    for margin in papers.margins.entries.values():
        row += 1
        page.row(row, (margin.name, margin.value, margin.unit or "–", margin.meaning, margin.source), MARGINS)
    row = _defaults(page, row + 2, papers)
    _between(page, row + 2, papers)


def _defaults(page: Page, row: int, papers: Papers) -> int:
    page.put(row, 1, "Values the job does not give", SECTION)
    for default in papers.loaded.defaults:
        row += 1
        page.put(row, 1, default.key, BOLD)
        page.put(row, 2, said(default.value))
        page.put(row, 3, "")
        page.line_in(row, 4, 5, default.meaning, TEXT)
    return row


def said(value: object) -> str:
    """Put a default into words."""
    if value is None or value in ("", [], {}):
        return "not given"
    if isinstance(value, bool):
        return "yes" if value else "no"
    return f"{value:g}" if isinstance(value, float) else str(value)


def _between(page: Page, row: int, papers: Papers) -> None:
    """List figures known only to lie between two ends, each with what would settle it."""
    page.put(row, 1, "Figures known only to lie between two ends", SECTION)
    seen: dict[str, tuple[str, str]] = {}
    for duty in papers.build.duties.values():
        for span in duty.needs.values():
            if not span.known:
                seen.setdefault(span.because, (str(span), span.datum))
    for because, (text, datum) in seen.items():
        row += 1
        page.put(row, 1, text, BOLD)
        page.line_in(row, 2, 4, because, TEXT)
        page.put(row, 5, f"to settle: {datum}" if datum else "")
    if not seen:
        page.line(row + 1, "None.", TEXT, len(MARGINS))
