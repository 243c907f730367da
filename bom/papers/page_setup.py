"""How a finished sheet prints, and how high its rows are."""

import re
from functools import lru_cache
from textwrap import wrap

from openpyxl.utils import get_column_letter
from openpyxl.worksheet.header_footer import HeaderFooterItem
from openpyxl.worksheet.properties import PageSetupProperties

from bom.papers.page import Page

A4 = 9  # the workbook format's number of the paper
LINE_POINTS = 1.3  # points of a line over the size of its letters
LETTER_WIDTH = 0.84  # of a usual letter over the digit that column widths count
BOLD_WIDTH = 1.08  # of bold letters over plain ones
INDENT = 1.5  # digits that a word at the right keeps from the next column
FOOT = "Verdicts do not follow an edit of this sheet; money does."


def set_up(page: Page, *, title: str, repeat: int, freeze: str, cover: bool) -> None:
    """Set up A4, one page wide, the first rows repeated, title and page number on each page; the cover upright."""
    _set_heights(page)
    sheet = page.sheet
    sheet.page_setup.paperSize = A4
    sheet.page_setup.orientation = "portrait" if cover else "landscape"
    sheet.page_setup.fitToWidth, sheet.page_setup.fitToHeight = 1, int(cover)
    sheet.sheet_properties.pageSetUpPr = PageSetupProperties(fitToPage=True)
    sheet.print_title_rows = f"1:{repeat}"
    sheet.page_margins.left = sheet.page_margins.right = 0.4
    _write(sheet.oddHeader, _header(title), sheet.title)
    _write(sheet.oddFooter, FOOT, "page &P of &N")
    sheet.freeze_panes = freeze
    sheet.sheet_view.showGridLines = False


def _write(band: HeaderFooterItem | None, left: str, right: str) -> None:
    assert band is not None  # a new sheet has both
    assert band.left is not None
    assert band.right is not None
    band.left.text, band.right.text = left, right


def _header(text: str) -> str:
    """Keep a title from being read as print codes, which begin with "&"."""
    return re.sub(r"[\x00-\x1f]", " ", text)[:100].replace("&", "&&")


def _set_heights(page: Page) -> None:
    """Set each row as high as its longest text wants; programs do not agree on doing it themselves."""
    sheet = page.sheet
    widths = [sheet.column_dimensions[get_column_letter(column)].width for column in range(1, sheet.max_column + 1)]
    heights = {row: _height(1, size) for row, size in page.sizes.items()}
    for row, first, last, look, text in page.wrapped:
        room = sum(widths[first - 1 : last]) - (INDENT if look.align == "right" else 0)
        lines = _lines(text, room * 10 / look.size / (BOLD_WIDTH if look.bold else 1))
        heights[row] = max(heights[row], _height(lines, look.size))
    for row, height in heights.items():
        sheet.row_dimensions[row].height = height


def _height(lines: int, size: float) -> float:
    return lines * size * LINE_POINTS + 2


@lru_cache(maxsize=4096)
def _lines(text: str, width: float) -> int:
    """Count the lines a text takes, broken between words; many cells hold the same text."""
    letters = max(1, int(width / LETTER_WIDTH))
    return sum(1 if len(part) <= letters else len(wrap(part, letters)) for part in text.split("\n"))
