"""The sheet of the pack's volts and of the fuses."""

from math import isnan

from bom.build import Build
from bom.papers.fuse_rows import FuseRow, fuse_rows
from bom.papers.looks import AMPS, BOLD, COUNT, HEAD, NOTE, SECTION, TEXT, VOLTS, WHOLE
from bom.papers.page import Heading, Page
from bom.read.catalogue import Catalogue
from bom.span import Span

VOLT_TABLE = (
    Heading("volts and amps of the pack", 34, BOLD),
    Heading("least", 12, VOLTS),
    Heading("most", 12, VOLTS),
    Heading("unit", 10),
)
FUSES = (
    Heading("fuse at", 34, BOLD),
    Heading("part", 12),
    Heading("rated A", 12, COUNT),
    Heading("DC volts", 10, COUNT),
    Heading("breaks A", 10, WHOLE),
    Heading("runs A", 9, AMPS),
    Heading("least fault A", 10, WHOLE),
    Heading("most fault A", 10, WHOLE),
    Heading("guards", 34),
    Heading("carries for ever A", 10, AMPS),
    Heading("thinnest wire A", 10, AMPS),
    Heading("ratings that pass", 30),
)
UNITS = {"voltage": ("V", 1, VOLTS), "current": ("A", 1, WHOLE), "resistance": ("mohm", 1000, AMPS)}
NOTES = (
    "Parts on the pack side are judged by the highest bus volts, not by the name on the pack.",
    "A fuse must hold its load and open before its wire burns. Ratings that fit are those of the same body in the "
    "catalogue that pass both, by load and wire alone.",
)


def pack_rows(build: Build) -> list[tuple[str, Span]]:
    """Name the figures of the pack, highest volts first."""
    pack = build.facts.pack
    return [
        ("highest the bus can reach", pack.highest_bus_v),
        ("full charge, at rest", pack.full_charge_v),
        ("nominal", pack.nominal_v),
        ("empty, at rest", pack.lowest_rest_v),
        ("empty, at peak amps", pack.lowest_sag_v),
        ("pack resistance", pack.resistance_ohm),
        ("greatest fault", pack.fault_high_a),
        ("least fault", pack.fault_low_a),
    ]


def write_volts_and_fuses(page: Page, build: Build, catalogue: Catalogue) -> None:
    """Write the pack's figures and the fuse table."""
    page.put(1, 1, "Volts and fuses", SECTION)
    page.line(2, NOTES[0], NOTE, len(FUSES))
    page.heading(3, VOLT_TABLE, widths=False)
    page.line_in(3, len(VOLT_TABLE) + 1, len(FUSES), "because", HEAD)
    row = 3
    for name, span in pack_rows(build):
        row += 1
        _volts(page, row, name, span)
    page.put(row + 2, 1, "Fuses", SECTION)
    page.line(row + 3, NOTES[1], NOTE, len(FUSES))
    page.heading(row + 4, FUSES)
    for index, fuse in enumerate(fuse_rows(build, catalogue), start=row + 5):
        page.row(index, _cells(fuse), FUSES)


def _volts(page: Page, row: int, name: str, span: Span) -> None:
    unit, factor, look = UNITS[span.dimension]
    page.put(row, 1, name, BOLD)
    page.put(row, 2, span.low * factor, look)
    page.put(row, 3, span.high * factor, look)
    page.put(row, 4, unit)
    page.line_in(row, 5, len(FUSES), span.because + (f"; to settle: {span.datum}" if span.datum else ""), TEXT)


def _cells(fuse: FuseRow) -> tuple[object, ...]:
    """Give the cells of one fuse; a dash where a converter's own limit is the least fault."""
    fits = ", ".join(f"{rated:g}" for rated in fuse.fits) + " A" if fuse.fits else "none listed"
    least_fault = "–" if isnan(fuse.fault_low_a) else fuse.fault_low_a
    rated = (fuse.place, fuse.part, fuse.rated_a, fuse.dc_volts_v, fuse.breaking_a)
    amps = (round(fuse.carry_a, 2), least_fault, fuse.fault_high_a, ", ".join(fuse.wires) or "none")
    return (*rated, *amps, round(fuse.holds_a, 1), round(fuse.wire_a, 1), fits)
