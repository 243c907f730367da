"""How the pack's volts and resistance were worked out, for those who ask; `bom.duties.volts` makes the figures."""

from bom.physics.pack import CHEMISTRIES, GREATEST_CELL_PRODUCT_MOHM_AH, LEAST_CELL_PRODUCT_MOHM_AH
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, step

_PRODUCT = "resistance x capacity of cells of seven builds, public pages and memory"


def cell_v(job: JobFile, name: str) -> Span:
    """Give one of the volts of a cell of the pack's chemistry."""
    cell, kind = CHEMISTRIES[job.pack.chemistry], job.pack.chemistry
    value: float = getattr(cell, name)
    words = {"full_v": "full", "nominal_v": "nominal", "empty_v": "empty", "fifth_v": "one-fifth full"}[name]
    return Span.of(value, "voltage", f"{words} {kind} cell", Origin("chemistry", name, kind, cell.source_of(name)))


def series_of(job: JobFile) -> Span:
    """Give the cells in series, as said or from the volts measured."""
    pack = job.pack
    if pack.series:
        return Span.given(float(pack.series), "", "cells in series", "pack.series")
    measured = pack.full_charge or 0.0
    count = float(round(measured / CHEMISTRIES[pack.chemistry].full_v))
    volts = Span.given(measured, "voltage", "full charge as measured", "pack.full_charge")
    return Span.of(
        count, "", "cells in series", lambda: step("rounded(U / U_cell)", U=volts, U_cell=cell_v(job, "full_v"))
    )


def cells(job: JobFile, name: str) -> Step:
    """Work out pack volts from its cells; the battery management's low cut stands over empty cells."""
    low_cut = job.pack.bms.low_cut
    if name != "empty_v" or low_cut is None:
        return step("n * U_cell", n=series_of(job), U_cell=cell_v(job, name))
    cut = Span.given(low_cut, "voltage", "low cut of the battery management", "pack.bms.low_cut")
    return step("max(n * U_cell, U_cut)", n=series_of(job), U_cell=cell_v(job, name), U_cut=cut)


def pack_ohm(job: JobFile, margins: Margins) -> Step:
    """Work out the resistance of a pack that does not give its own."""
    pack = job.pack
    side = Span.given(float(pack.parallel), "", "cells side by side", "pack.parallel")
    if pack.cell_resistance is not None:
        cell = Span.given(pack.cell_resistance, "resistance", "of one cell", "pack.cell_resistance")
        return step("R_cell * n / p", R_cell=cell, n=series_of(job), p=side)
    if pack.capacity is None:
        low, high = (
            margins.of(name, "resistance", "cell of unknown size")
            for name in ("unknown_cell_low_ohm", "unknown_cell_high_ohm")
        )
        cell = Span(low.low, high.high, "resistance", "one cell", "", lambda: step("R_a to R_b", R_a=low, R_b=high))
        return step("n * R_cell", n=series_of(job), R_cell=cell)
    capacity = Span.given(pack.capacity, "charge", "of the whole pack", "pack.capacity")
    return step("R_cell * n / p", R_cell=_cell_ohm(capacity, side), n=series_of(job), p=side)


def _cell_ohm(capacity: Span, side: Span) -> Span:
    """Work out the span a cell's resistance lies in, from its capacity alone."""
    low, high = (
        Span.fixed(product / 1000, "", "ohm x Ah of a cell", _PRODUCT)
        for product in (LEAST_CELL_PRODUCT_MOHM_AH, GREATEST_CELL_PRODUCT_MOHM_AH)
    )
    each = capacity.low / side.low
    cell_ah = Span.of(each, "charge", "of one cell", lambda: step("C / p", C=capacity, p=side))
    return Span(
        low.low / each,
        high.low / each,
        "resistance",
        "of one cell, by its capacity alone",
        "",
        lambda: step("k_a / C_cell to k_b / C_cell", k_a=low, k_b=high, C_cell=cell_ah),
    )
