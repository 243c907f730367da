"""The ten gates under the donor's items, on their sheet."""

from bom.build import Build
from bom.check.donor_gates import donor_gates, donor_type
from bom.papers.looks import BOLD, HEAD, NOTE, SECTION, TEXT
from bom.papers.page import Page

HEADS = ((1, 1, "gate"), (2, 2, "stands"), (3, 3, "asks"), (4, 4, "on this bike"), (5, 8, "what follows"))
WIDE = 8


def write_donor_gates(page: Page, row: int, build: Build) -> None:
    """Write the donor's type and each gate in its order, from this row on."""
    page.put(row, 1, "The ten gates, in their order", SECTION)
    page.line(row + 1, f"{donor_type(build.facts.job)}.", NOTE, WIDE)
    for first, last, text in HEADS:
        page.line_in(row + 2, first, last, text, HEAD)
    for number, gate in enumerate(donor_gates(build), start=row + 3):
        page.put(number, 1, gate.name, BOLD)
        page.put(number, 2, gate.verdict)
        page.put(number, 3, gate.question, TEXT)
        page.put(number, 4, gate.answer, TEXT)
        page.line_in(number, 5, WIDE, gate.follows, TEXT)
