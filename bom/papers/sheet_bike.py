"""The sheets of donor items and wires."""

from math import isnan

from bom.build import Build
from bom.check.donor import DonorVerdict
from bom.judge.verdict import Verdict
from bom.papers.certainty_rows import write_certainty
from bom.papers.donor_gate_rows import write_donor_gates
from bom.papers.looks import ALARM, AMPS, BOLD, COUNT, NOTE, SECTION, VERDICT_LOOKS, WHOLE
from bom.papers.page import Heading, Page
from bom.papers.wire_rows import WireRow, wire_rows
from bom.session import Session

DONOR = (
    Heading("item", 24, BOLD),
    Heading("kind", 18),
    Heading("wished kept", 14),
    Heading("verdict", 14, BOLD),
    Heading("why", 62),
    Heading("known by", 18),
    Heading("to do", 40),
    Heading("test, and the reading that lets it stay", 44),
    Heading("minutes", 12, WHOLE),
    Heading("instead", 40),
)
DASH = "–"
DONOR_LOOKS = {
    "goes": ALARM,
    "test first": VERDICT_LOOKS[Verdict.CANT_TELL],
    "stays if": VERDICT_LOOKS[Verdict.TIGHT],
    "stays": BOLD,
}
WIRES = (
    Heading("no.", 5, BOLD),
    Heading("wire", 18, BOLD),
    Heading("what it is", 26),
    Heading("from", 18),
    Heading("to", 18),
    Heading("leads", 8, WHOLE),
    Heading("length m", 9, COUNT),
    Heading("area mm²", 6, COUNT),
    Heading("class", 9),
    Heading("colour", 8),
    Heading("cable", 11),
    Heading("fuse before it", 15),
    Heading("fuse A", 6, COUNT),
    Heading("runs A", 8, AMPS),
    Heading("carries A", 9, AMPS),
    Heading("loses V", 7, AMPS),
    Heading("may lose V", 9, AMPS),
    Heading("on its first end", 20),
    Heading("on its second end", 20),
    Heading("verdict", 11),
    Heading("done", 6),
)


def write_donor(page: Page, session: Session) -> None:
    """Write what becomes of each donor item; under them what certainty costs, and the gates."""
    build = session.build
    page.put(1, 1, "Donor: stays, stays if, goes, test first", SECTION)
    page.line(
        2,
        "A donor part is judged by the same rules as a bought one; what it carried for years counts as "
        "tested there, and no further. What its kind of donor asks besides stands before the reason. Minutes are "
        "estimates. A reading typed into the job settles a test on the next run.",
        NOTE,
        len(DONOR),
    )
    page.heading(3, DONOR)
    for row, item in enumerate(build.donor, start=4):
        page.row(row, _donor_cells(item), DONOR)
        page.put(row, 4, item.verdict, DONOR_LOOKS.get(item.verdict, BOLD))
    write_donor_gates(page, write_certainty(page, 5 + len(build.donor), session.certainties), build)


def _donor_cells(item: DonorVerdict) -> tuple[object, ...]:
    gate = f"{item.gate}: " if item.gate else ""
    minutes = DASH if isnan(item.minutes) else item.minutes
    what = (item.name, item.kind, item.wished, item.verdict, gate + item.reason)
    return (*what, item.evidence or DASH, item.change or DASH, item.test or DASH, minutes, item.instead or DASH)


def write_wires(page: Page, build: Build) -> None:
    """Write the wire list."""
    page.put(1, 1, "Wires", SECTION)
    page.line(
        2,
        "Length is one way along the wire, as given. Measure on the bike before cutting; mark both ends with "
        "the number first.",
        NOTE,
        len(WIRES),
    )
    page.heading(3, WIRES)
    for row, wire in enumerate(wire_rows(build), start=4):
        page.row(row, _cells(wire), WIRES)
    page.sheet.auto_filter.ref = f"A3:U{3 + len(build.loom.wires)}"


def _cells(wire: WireRow) -> tuple[object, ...]:
    """Give the cells of one wire; a dash where the question does not arise."""
    guard_a = wire.guard_a if wire.guard else DASH
    allowed = DASH if isnan(wire.allowed_drop_v) else round(wire.allowed_drop_v, 3)
    what = (wire.number, wire.name, wire.title, wire.start, wire.end, wire.count, wire.length_m)
    cable = (wire.area_mm2, wire.class_text, wire.colour, wire.cable, wire.guard or "none", guard_a)
    amps = (round(wire.carry_a, 2), round(wire.ampacity_a, 1), round(wire.drop_v, 3), allowed)
    return (*what, *cable, *amps, wire.first_end, wire.second_end, wire.verdict, "☐")
