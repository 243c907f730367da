"""The sheets of donor items and wires."""

from math import isnan

from bom.build import Build
from bom.check.donor_text import donor_counts
from bom.check.donor_words import DonorVerdict
from bom.judge.verdict import Verdict
from bom.papers.certainty_rows import write_certainty
from bom.papers.donor_gate_rows import write_donor_gates
from bom.papers.looks import ALARM, AMPS, BOLD, COUNT, MONEY, NOTE, SECTION, VERDICT_LOOKS, WHOLE
from bom.papers.page import Heading, Page
from bom.papers.wire_rows import WireRow, wire_rows
from bom.session import Session

DONOR = (
    Heading("item", 24, BOLD),
    Heading("verdict", 11, BOLD),
    Heading("why", 52),
    Heading("what to do; the test, and the reading that lets it stay", 46),
    Heading("min", 6, WHOLE),
    Heading("parts it takes, or what stands instead", 32),
    Heading("cost", 9, MONEY),
    Heading("to keep it though it goes", 46),
)
VERDICT_AT = 2
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
    page.put(1, 1, f"Donor: {donor_counts(build)}" if build.donor else "Donor", SECTION)
    page.line(
        2,
        "A donor part is judged by the same rules as a bought one; what it carried for years counts as "
        "tested there, and no further. What its kind of donor asks besides stands before the reason. Minutes are "
        "estimates. A reading typed into the job settles a test on the next run. What is to be kept though it goes was "
        "built and priced as a whole bike in which nothing fails.",
        NOTE,
        len(DONOR),
    )
    page.heading(3, DONOR)
    for row, item in enumerate(build.donor, start=4):
        page.row(row, _donor_cells(item, build.bill.currency), DONOR)
        page.put(row, VERDICT_AT, item.verdict, DONOR_LOOKS.get(item.verdict, BOLD))
    write_donor_gates(page, write_certainty(page, 5 + len(build.donor), session.certainties), build)


def _donor_cells(item: DonorVerdict, currency: str) -> tuple[object, ...]:
    name = item.name if item.name == item.kind else f"{item.name} ({item.kind})"
    gate = f"{item.gate}: " if item.gate else ""
    wished = " The owner insists on it." if item.wished == "yes" else ""
    work = ". ".join(filter(None, (item.change, item.test and f"Test: {item.test}"))) or DASH
    minutes = DASH if isnan(item.minutes) else item.minutes
    cost = DASH if isnan(item.cost) else item.cost
    parts = item.takes or item.instead or DASH
    known = f" ({item.evidence})" if item.evidence else ""
    kept = item.kept.words(currency) if item.kept else DASH
    return (name, item.verdict, f"{gate}{item.reason}{known}{wished}", work, minutes, parts, cost, kept)


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
