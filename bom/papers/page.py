"""One sheet of the workbook: text that can't run, and formulas that are ours."""

from collections.abc import Sequence
from copy import copy
from dataclasses import dataclass, field, replace
from math import isinf, isnan
from typing import NamedTuple

from openpyxl.cell.cell import ILLEGAL_CHARACTERS_RE, Cell, MergedCell
from openpyxl.styles.cell_style import StyleArray
from openpyxl.utils import get_column_letter
from openpyxl.worksheet.worksheet import Worksheet

from bom.judge.verdict import Verdict
from bom.papers.looks import HEAD, TEXT, VERDICT_LOOKS, Look, dress
from bom.papers.save import Result
from bom.papers.standing import MARKS, marked

LONGEST_TEXT = 32_000  # a cell holds 32 767 characters
SHORT_TEXT = 4  # letters that fit into the narrowest column
RISKY = ("=", "+", "-", "@", "\t", "\r", "\n")


@dataclass(frozen=True)
class Heading:
    """One column: its heading, its width in characters, and how its cells look."""

    text: str
    width: float
    look: Look = TEXT


class Wrapped(NamedTuple):
    """A text that may take several lines: its row, its first and last column, its look."""

    row: int
    first: int
    last: int
    look: Look
    text: str


@dataclass
class Page:
    """A sheet being written.

    styles   style of each look, shared by the sheets of a book
    results  what each formula comes to, by cell
    sizes    points of the largest letters of each row
    wrapped  texts that may want a higher row
    """

    sheet: Worksheet
    styles: dict[Look, StyleArray]
    results: dict[str, Result] = field(default_factory=dict)
    sizes: dict[int, float] = field(default_factory=dict)
    wrapped: list[Wrapped] = field(default_factory=list)

    def put(self, row: int, column: int, value: object, look: Look = TEXT) -> None:
        """Write text or a number. Text stays text whatever it begins with; NaN and infinity become words."""
        if isinstance(value, Verdict):
            self._text(self._cell(row, column, VERDICT_LOOKS[value]), marked(value))
            return
        cell = self._cell(row, column, look)
        if isinstance(value, int | float) and not isinstance(value, bool):
            number = float(value)
            if isnan(number) or isinf(number):
                self._text(cell, "not known" if isnan(number) else "no limit")
            else:
                cell.value = int(value) if number.is_integer() else number
        else:
            text = str(value)
            self._text(cell, text)
            if look.wrap and len(text) > SHORT_TEXT:
                self.wrapped.append(Wrapped(row, column, column, look, text))

    def formula(self, row: int, column: int, text: str, result: Result, look: Look = TEXT) -> None:
        """Write a formula of ours, which holds nothing that came from a file, and what it comes to."""
        cell = self._cell(row, column, look)
        cell.value = f"={text}"
        self.results[cell.coordinate] = result

    def row(self, row: int, values: Sequence[object], headings: Sequence[Heading]) -> None:
        """Write one row of a table."""
        for column, (value, heading) in enumerate(zip(values, headings, strict=True), start=1):
            self.put(row, column, value, heading.look)

    def heading(self, row: int, headings: Sequence[Heading], *, widths: bool = True) -> None:
        """Write the heading row of a table and set the widths of its columns."""
        for column, heading in enumerate(headings, start=1):
            self.head(row, column, heading.text, heading, widths=widths)

    def head(self, row: int, column: int, text: str, heading: Heading, *, widths: bool = True) -> None:
        """Write the heading of one column."""
        self.put(row, column, text, replace(HEAD, align=heading.look.align))
        if widths:
            self.sheet.column_dimensions[get_column_letter(column)].width = heading.width

    def line(self, row: int, text: str, look: Look, columns: int) -> None:
        """Write text across the first columns."""
        self.line_in(row, 1, columns, text, look)

    def line_in(self, row: int, first: int, last: int, text: str, look: Look) -> None:
        """Write text across the columns from `first` to `last`."""
        self._text(self._cell(row, first, look), text)
        if look.wrap:
            self.wrapped.append(Wrapped(row, first, last, look, text))
        for column in range(first + 1, last + 1):
            self._dress(self.sheet.cell(row, column), look)
        # Its cells are dressed already: the sheet's own way of joining would do each of them again.
        self.sheet.merged_cells.add(f"{get_column_letter(first)}{row}:{get_column_letter(last)}{row}")

    def _cell(self, row: int, column: int, look: Look) -> Cell:
        cell = self.sheet.cell(row, column)
        assert isinstance(cell, Cell)  # nothing is written into joined cells but their first
        self._dress(cell, look)
        self.sizes[row] = max(self.sizes.get(row, 0.0), look.size)
        return cell

    def _dress(self, cell: Cell | MergedCell, look: Look) -> None:
        """Dress a cell. Cells of one look share its style: making one takes most of the time."""
        if look not in self.styles:
            cell._style = StyleArray()  # type: ignore[union-attr]  # the stubs leave it out; its last one is shared
            dress(cell, look)
            self.styles[look] = cell._style  # type: ignore[union-attr]
        cell._style = self.styles[look]  # type: ignore[union-attr]

    def _text(self, cell: Cell, text: str) -> None:
        kept = clean(text)[:LONGEST_TEXT]
        cell.value, cell.data_type = kept, "s"
        if kept.startswith(RISKY):
            cell._style = copy(cell._style)  # type: ignore[attr-defined]  # the mark is the cell's own, not its look's
            cell.quotePrefix = True


def clean(text: str) -> str:
    """Drop the control characters that a workbook can't hold."""
    return ILLEGAL_CHARACTERS_RE.sub("", text)


def counted(verdict: Verdict, column: str, times: str, sheet: str) -> str:
    """Write the formula that counts one verdict on a sheet whose rows may each stand for several."""
    return f'SUMIF({sheet}!{column}:{column},"{MARKS[verdict]} {verdict.word}",{sheet}!{times}:{times})'


def four(value: float) -> float:
    """Round to four digits; what is not known, or has no limit, stays so."""
    return float(f"{value:.4g}")


def some_of(places: Sequence[str], most: int) -> str:
    """Name the first of several places, and how many more there are."""
    more = len(places) - most
    return ", ".join(places[:most]) + (f" and {more} more" if more > 0 else "")
