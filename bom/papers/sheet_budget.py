"""The 12 V budget: every load in every state, summed by formulas, against what the converter holds."""

from collections.abc import Sequence
from math import isnan, nan

from openpyxl.utils import get_column_letter

from bom.build import Build
from bom.duties.budget import LoadAmps
from bom.judge.ratings import converter_amps
from bom.papers.looks import AMPS, BOLD, COUNT, INPUT, NOTE, SECTION, TEXT, TOTAL, TOTAL_WORD
from bom.papers.page import Heading, Page
from bom.read.states import State

LEFT = (
    Heading("load", 24, BOLD),
    Heading("watts each", 9, INPUT),
    Heading("how many", 8, COUNT),
    Heading("amps", 8, AMPS),
)
RIGHT = (Heading("where the watts come from", 46),)
FIRST_STATE = len(LEFT) + 1
RAIL = "$D$3"
FIRST = 5


def write_budget(page: Page, build: Build) -> None:
    """Write the sheet."""
    budget = build.facts.budget
    headings = (*LEFT, *(Heading(state.name, 15, AMPS) for state in budget.kinds), *RIGHT)
    page.put(1, 1, "12 V budget", SECTION)
    page.line(
        2,
        "Amps of each load in each state of the bike. Edit watts or volts and the sums follow; the checks do not.",
        NOTE,
        len(headings),
    )
    page.line_in(3, 1, 3, "volts of the 12 V side", BOLD)
    page.put(3, 4, budget.rail_v, INPUT)
    page.heading(FIRST - 1, headings)
    row = FIRST - 1
    for entry in budget.loads.values():
        row += 1
        _load(page, row, entry, budget.kinds, len(headings))
    row += 1
    _coils(page, row, build, len(headings))
    _sums(page, row + 1, build, len(headings))


def _load(page: Page, row: int, entry: LoadAmps, kinds: Sequence[State], width: int) -> None:
    load = entry.load
    page.put(row, 1, load.name, BOLD)
    page.put(row, 2, entry.each_w, INPUT)
    page.put(row, 3, load.count, COUNT)
    if load.current is None:
        page.formula(row, 4, f"B{row}*C{row}/{RAIL}", entry.amps, AMPS)
    else:
        page.put(row, 4, entry.amps, AMPS)
    for index, state in enumerate(kinds):
        if state.conditions & set(load.on):
            page.formula(row, FIRST_STATE + index, f"$D{row}", entry.amps, AMPS)
        else:
            page.put(row, FIRST_STATE + index, "", AMPS)
    page.put(row, width, entry.source, TEXT)


def _coils(page: Page, row: int, build: Build, width: int) -> None:
    coils = build.facts.counted
    page.put(row, 1, "coils", BOLD)
    for column in (2, 3):
        page.put(row, column, "", TEXT)
    page.put(row, 4, coils.hold_a, AMPS)
    for index, state in enumerate(build.facts.budget.kinds):
        if state.key:
            page.formula(row, FIRST_STATE + index, f"$D{row}", coils.hold_a, AMPS)
        else:
            page.put(row, FIRST_STATE + index, "", AMPS)
    page.put(row, width, coils.because, TEXT)


def _sums(page: Page, row: int, build: Build, width: int) -> None:
    """Write the sum of each state, what the converter holds, what is left, and the pack volts meant."""
    held, how = _held(build)
    words = ("together", "converter holds", "left over", "cells")
    for offset, (word, note) in enumerate(zip(words, ("", how, "below zero the 12 V side sags", ""), strict=True)):
        for column in range(1, width + 1):
            page.put(row + offset, column, "", TOTAL_WORD)
        page.put(row + offset, 1, word, TOTAL_WORD)
        page.put(row + offset, width, note, TOTAL_WORD)
    for index, state in enumerate(build.facts.budget.kinds):
        column = FIRST_STATE + index
        letter, amps = get_column_letter(column), build.facts.budget.states[state.name]
        page.formula(row, column, f"SUM({letter}{FIRST}:{letter}{row - 1})", amps, TOTAL)
        page.put(row + 1, column, held, TOTAL)
        if not isnan(held):
            page.formula(row + 2, column, f"{letter}{row + 1}-{letter}{row}", held - amps, TOTAL)
        page.put(row + 3, column, state.cells, TOTAL_WORD)


def _held(build: Build) -> tuple[float, str]:
    entry, duty = build.filled.get("converter"), build.duties.get("converter")
    if entry is None or duty is None:
        return nan, "no converter stands"
    warm = duty.ambient_c.high
    held = converter_amps(entry.part, ambient_c=warm, label_fraction=build.facts.margins.converter_label_fraction)
    return float(held.values[0]), f"{entry.part_id} at {warm:g} °C"
