"""The sheet of answers: every check and open place under its cause, then what passes."""

from collections.abc import Sequence

from openpyxl.worksheet.properties import Outline

from bom.build import Build
from bom.check.causes import Cause, harm_of, harm_of_hole
from bom.choose.filled import NONE, Hole
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.papers.looks import BOLD, NOTE, SECTION, WHOLE, Look
from bom.papers.page import Heading, Page, some_of
from bom.papers.standing import NOT_ORDERED, OPEN

CHECKS = (
    Heading("verdict", 12),
    Heading("where", 38, BOLD),
    Heading("times", 7, WHOLE),
    Heading("harm", 9),
    Heading("cause", 7, WHOLE),
    Heading("part", 17),
    Heading("rule", 24),
    Heading("what", 24),
    Heading("offered", 13),
    Heading("needed", 20),
    Heading("because", 62),
    Heading("known by", 14),
    Heading("cure", 40),
)

UNDER = (CHECKS[0], Heading("where", 38), *CHECKS[2:])  # a cause is bold, what stands below it is not

MOST_PLACES = 5
UNSEEN = Look(number=";;;", align="right", wrap=False)


def write_checks(page: Page, build: Build) -> None:
    """Write every finding under its cause; passes that are alike share a row, in one group that folds away."""
    page.put(1, 1, "Checks, by cause, then what passes", SECTION)
    page.line(
        2,
        "Each row is one comparison of a rating with a duty. What one cure or one figure settles stands under its "
        "cause, which has a number to filter by: what must be settled first, the worst harm first. One part that "
        "passes the same comparison at several places has one row. Passes are folded away: open them by the sign at "
        "the left. It is evidence for whoever inspects the bike and claims no compliance with any rule of the road. "
        "What each rule asks, and its source, stand on the sheet Assumptions; every place by itself in the record.",
        NOTE,
        len(CHECKS),
    )
    page.heading(3, CHECKS)
    row = 3
    for number, cause in enumerate(build.causes, start=1):
        row = _cause_rows(page, row, number, cause)
    passes = _alike([finding for finding in build.findings if finding.verdict <= Verdict.PASS])
    for alike in passes:
        row += 1
        page.row(row, _finding_cells(alike, None), CHECKS)
    if passes:
        page.sheet.row_dimensions.group(row - len(passes) + 1, row, outline_level=1, hidden=True)
    page.sheet.sheet_properties.outlinePr = Outline(summaryBelow=False)
    page.sheet.auto_filter.ref = f"A3:M{row}"


def _cause_rows(page: Page, row: int, number: int, cause: Cause) -> int:
    """Write a cause: a row of its own where it has several answers, then one for each of them; give the last row."""
    if cause.count > 1:
        row += 1
        page.row(row, _head_cells(number, cause), CHECKS)
        page.put(row, 3, 0, UNSEEN)  # its answers are counted below it
    answers = [_finding_cells([finding], number) for finding in cause.findings]
    holes = [_hole_cells(hole, number) for hole in cause.holes]
    shown = [*answers, *holes] if cause.decides else [*holes, *answers]
    for cells in shown:
        row += 1
        page.row(row, cells, UNDER if cause.count > 1 else CHECKS)
    if cause.count > 1:
        page.sheet.row_dimensions.group(row - len(shown) + 1, row, outline_level=1)
    return row


def _head_cells(number: int, cause: Cause) -> tuple[object, ...]:
    told = f"{cause.count} answers below have this cause"
    return (cause.verdict, cause.title, 0, cause.harm.word, number, cause.part, *[""] * 4, told, "", cause.cure)


def _hole_cells(hole: Hole, number: int) -> tuple[object, ...]:
    why = NOT_ORDERED if hole.wanted_by else OPEN
    where = (hole.verdict, hole.place.name, 1, harm_of_hole(hole).word, number, NONE, why, hole.place.title)
    return (*where, "", "", hole.sentence, "", hole.cure)


def _alike(findings: Sequence[Finding]) -> list[list[Finding]]:
    """Group the findings that differ in nothing but their place."""
    groups: dict[tuple[object, ...], list[Finding]] = {}
    for finding in findings:
        numbers = (finding.offered, finding.needed, finding.because, finding.evidence)
        groups.setdefault((finding.verdict, finding.part, finding.rule, finding.what, *numbers), []).append(finding)
    return list(groups.values())


def _finding_cells(alike: Sequence[Finding], number: int | None) -> tuple[object, ...]:
    finding = alike[0]
    cure = finding.cure if finding.verdict > Verdict.PASS else ""
    places = some_of([other.subject for other in alike], MOST_PLACES)
    where = (finding.verdict, places, len(alike), harm_of(finding.rule).word, "" if number is None else number)
    numbers = (finding.offered, finding.needed, finding.because, finding.evidence)
    return (*where, finding.part, finding.rule, finding.what, *numbers, cure)
