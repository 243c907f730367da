"""How cells look: one set of fonts, fills and number formats; every verdict still differs in grey."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from openpyxl.styles import Alignment, Border, Font, PatternFill, Side

from bom.judge.verdict import Verdict

if TYPE_CHECKING:
    from openpyxl.cell.cell import Cell, MergedCell

INK, PAPER, BAND, LINE, HATCH = "22313A", "FFFFFF", "E3E8E6", "9AA5A3", "6B7472"
THIN = Side(style="thin", color=LINE)
BOX = Border(bottom=THIN)
LETTERS = "Arial"
NORMAL = Font(name=LETTERS, size=10)  # its digits are what column widths count


@dataclass(frozen=True)
class Look:
    """How a cell looks."""

    bold: bool = False
    size: float = 10
    colour: str = INK
    fill: str = ""
    hatch: bool = False
    number: str = "General"
    align: str = "left"
    italic: bool = False
    border: bool = True
    wrap: bool = True


TEXT = Look()
BOLD = Look(bold=True)
PLAIN = Look(border=False)
NOTE = Look(italic=True, border=False, colour="55605E", size=9)
TITLE = Look(bold=True, size=16, border=False, wrap=False)
SECTION = Look(bold=True, size=12, border=False, wrap=False)
HEAD = Look(bold=True, colour=PAPER, fill=INK)
MONEY = Look(number="#,##0.00_0", align="right", wrap=False)
INPUT = Look(number="#,##0.00_0", align="right", fill="F6F1DC", wrap=False)
TOTAL = Look(bold=True, number="#,##0.00_0", align="right", fill=BAND, wrap=False)
TOTAL_WORD = Look(bold=True, fill=BAND)
EDITED = Look(number="0.###_0", align="right", fill="F6F1DC", wrap=False)
VOLTS = Look(number="0.0_0", align="right", wrap=False)
AMPS = Look(number="0.0##_0", align="right", wrap=False)
COUNT = Look(number="0.###_0", align="right", wrap=False)
WHOLE = Look(number="0_0", align="right", wrap=False)
ALARM = Look(bold=True, colour=PAPER, fill="6E1B1B")
VERDICT_LOOKS = {
    Verdict.FAIL: ALARM,
    Verdict.CANT_TELL: Look(bold=True, fill="B9BFBE", hatch=True),
    Verdict.TIGHT: Look(fill="F3E6B8"),
    Verdict.PASS: TEXT,
    Verdict.NOT_ASKED: Look(colour="77807E"),
}


def dress(cell: "Cell | MergedCell", look: Look) -> None:
    """Give a cell its look."""
    cell.font = Font(name=LETTERS, size=look.size, bold=look.bold, italic=look.italic, color=look.colour)
    # A number keeps its distance from the next column by the "_0" of its format, a word by an indent.
    indent = 1 if look.align == "right" and look.number == "General" else 0
    cell.alignment = Alignment(horizontal=look.align, vertical="top", wrap_text=look.wrap, indent=indent)
    cell.number_format = look.number
    if look.fill:
        hatched = PatternFill("lightUp", fgColor=HATCH, bgColor=look.fill)
        cell.fill = hatched if look.hatch else PatternFill("solid", fgColor=look.fill)
    if look.border:
        cell.border = BOX
