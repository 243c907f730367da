"""Volts of a pack nearly empty, under the controller's amps, and the low cut they are held against."""

from bom.duties.circuits import Facts
from bom.duties.pack_traces import cell_v, series_of
from bom.physics.pack import CHEMISTRIES
from bom.span import Span
from bom.trace import Step, step


def nearly_empty_v(facts: Facts) -> Span:
    """Give the pack's volts at rest with a fifth of its charge left."""
    job, series = facts.job, series_of(facts.job)
    volts = round(series.low * CHEMISTRIES[job.pack.chemistry].fifth_v, 3)
    because = f"{series.low:g} {job.pack.chemistry} cells with a fifth of their charge left"
    return Span.of(
        volts, "voltage", because, lambda: step("n * U_cell", n=series_of(job), U_cell=cell_v(job, "fifth_v"))
    )


def sagged_v(facts: Facts, amps: Span) -> Span:
    """Give the volts of that pack while it feeds these amps: at rest, less amps times resistance."""
    rest, ohm = nearly_empty_v(facts), facts.pack.resistance_ohm
    return Span(
        rest.low - amps.high * ohm.high,
        rest.high - amps.low * ohm.low,
        "voltage",
        f"{rest} at rest with a fifth of the charge left, less {amps} through {ohm}",
        ohm.datum,
        lambda: step("U_fifth - I * R", U_fifth=rest, I=amps, R=ohm),
    )


def low_cut_v(facts: Facts) -> Span:
    """Give the battery management's low cut; unsaid, from empty cells to a margin above them."""
    job, margins = facts.job, facts.margins
    if job.pack.bms.low_cut is not None:
        return Span.given(job.pack.bms.low_cut, "voltage", "low cut of the battery management", "pack.bms.low_cut")
    empty = round(series_of(job).low * CHEMISTRIES[job.pack.chemistry].empty_v, 3)
    factor = margins.of("unknown_cut_factor")

    def traced() -> Step:
        series, cell = series_of(job), cell_v(job, "empty_v")
        return step("n * U_cell to n * U_cell * k", n=series, U_cell=cell, k=factor)

    because, datum = "low cut not given: empty cells and somewhat above", "the battery management's low cut volts"
    return Span(empty, round(empty * factor.high, 3), "voltage", because, datum, traced)
