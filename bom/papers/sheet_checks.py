"""The sheets of answers: every check, and what is still to be found out."""

from collections.abc import Sequence
from math import isnan

from openpyxl.worksheet.properties import Outline

from bom.build import Build
from bom.check.donor_words import DonorVerdict
from bom.choose.filled import Hole
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.papers.looks import BOLD, NOTE, SECTION, TEXT, WHOLE
from bom.papers.page import Heading, Page, some_of
from bom.papers.standing import OPEN, hole_cure
from bom.papers.unknowns import Unknown, unknowns
from bom.read.questions import Way

CHECKS = (
    Heading("verdict", 12),
    Heading("where", 38, BOLD),
    Heading("times", 7, WHOLE),
    Heading("part", 17),
    Heading("rule", 24),
    Heading("what", 24),
    Heading("offered", 13),
    Heading("needed", 20),
    Heading("because", 62),
    Heading("known by", 14),
    Heading("cure", 40),
)
UNKNOWN = (
    Heading("figure to find", 34, BOLD),
    Heading("of", 20),
    Heading("why it matters", 46),
    Heading("waiting for it", 50),
    Heading("quick way (common practice)", 56),
    Heading("minutes", 9, WHOLE),
)

MOST_PLACES = 5
DONOR_MINUTES = 5  # a rough estimate


def write_checks(page: Page, build: Build) -> None:
    """Write every finding, worst first; passes that are alike share a row, in one group that folds away."""
    page.put(1, 1, "Checks, worst first, then what passes", SECTION)
    page.line(
        2,
        "Each row is one comparison of a rating with a duty; one part that passes the same comparison at several "
        "places has one row. Passes are folded away: open them by the sign at the left. It is evidence for whoever "
        "inspects the bike and claims no compliance with any rule of the road. What each rule asks, and its source, "
        "stand on the sheet Assumptions; every place by itself in the record.",
        NOTE,
        len(CHECKS),
    )
    page.heading(3, CHECKS)
    row = 3
    troubles = [finding for finding in build.findings if finding.verdict > Verdict.PASS]
    passes = _alike([finding for finding in build.findings if finding.verdict <= Verdict.PASS])
    shown = [*map(_hole_cells, build.holes), *(_finding_cells([finding]) for finding in troubles)]
    for cells in (*shown, *map(_finding_cells, passes)):
        row += 1
        page.row(row, cells, CHECKS)
    if passes:
        page.sheet.row_dimensions.group(row - len(passes) + 1, row, outline_level=1, hidden=True)
    page.sheet.sheet_properties.outlinePr = Outline(summaryBelow=False)
    page.sheet.auto_filter.ref = f"A3:K{row}"


def _hole_cells(hole: Hole) -> tuple[object, ...]:
    where = (hole.verdict, hole.place.name, 1, "left open", OPEN, hole.place.title)
    return (*where, "", "", hole.sentence, "", hole_cure(hole))


def _alike(findings: Sequence[Finding]) -> list[list[Finding]]:
    """Group the findings that differ in nothing but their place."""
    groups: dict[tuple[object, ...], list[Finding]] = {}
    for finding in findings:
        numbers = (finding.offered, finding.needed, finding.because, finding.evidence)
        groups.setdefault((finding.verdict, finding.part, finding.rule, finding.what, *numbers), []).append(finding)
    return list(groups.values())


def _finding_cells(alike: Sequence[Finding]) -> tuple[object, ...]:
    finding = alike[0]
    cure = finding.cure if finding.verdict > Verdict.PASS else ""
    places = some_of([other.subject for other in alike], MOST_PLACES)
    where = (finding.verdict, places, len(alike), finding.part, finding.rule, finding.what)
    numbers = (finding.offered, finding.needed, finding.because, finding.evidence)
    return (*where, *numbers, cure)


def write_find_out(page: Page, build: Build, ways: Sequence[Way]) -> None:
    """Write what can't be told, by the figure that would settle it."""
    page.put(1, 1, "To find out", SECTION)
    page.line(
        2,
        "Only figures that change a verdict. Write what you find into the job or the catalogue, with how it "
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


def _unknown_cells(entry: Unknown) -> tuple[object, ...]:
    return (entry.datum, ", ".join(entry.parts), entry.why, "; ".join(entry.waiting), entry.way, entry.minutes)


def _donor_cells(item: DonorVerdict) -> tuple[object, ...]:
    minutes = DONOR_MINUTES if isnan(item.minutes) else item.minutes
    return (f"donor's {item.name}", item.kind, item.reason, f"whether the {item.name} stays", item.test, minutes)
