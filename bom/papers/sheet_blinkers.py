"""The sheet of the blinkers: why they would not flash."""

from bom.build import Build
from bom.check.blinkers import UNTOLD, YES, Cause
from bom.judge.verdict import Verdict
from bom.papers.looks import ALARM, BOLD, NOTE, SECTION, TEXT, VERDICT_LOOKS
from bom.papers.page import Heading, Page

BLINKERS = (
    Heading("asked of", 24, BOLD),
    Heading("cause", 26, BOLD),
    Heading("so?", 11, BOLD),
    Heading("because", 48),
    Heading("to find out", 38),
    Heading("two-minute test", 52),
)
TOLD = (
    "Every cause the trade knows, asked of this job. Test on the 12 V side alone, fed by a bench supply or a small "
    "battery behind a fuse: a test lamp, a meter and a fused wire do. It is evidence and no approval."
)
ANSWER_LOOKS = {YES: ALARM, UNTOLD: VERDICT_LOOKS[Verdict.CANT_TELL]}


def write_blinkers(page: Page, build: Build) -> None:
    """Write each cause, answered."""
    page.put(1, 1, "Blinkers: why they would not flash", SECTION)
    page.line(2, TOLD, NOTE, len(BLINKERS))
    page.heading(3, BLINKERS)
    for row, cause in enumerate(build.blinkers, start=4):
        page.row(row, _cells(cause), BLINKERS)
        page.put(row, 3, cause.answer, ANSWER_LOOKS.get(cause.answer, BOLD))
    if not build.blinkers:
        page.line(4, "No load of the job indicates.", TEXT, len(BLINKERS))


def _cells(cause: Cause) -> tuple[object, ...]:
    return (cause.of, cause.cause, cause.answer, cause.because, cause.datum or "–", cause.test)
