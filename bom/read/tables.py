"""Reading one CSV table against its columns, with every fault of the file at once."""

import csv
import io
import math
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from bom.errors import Fault
from bom.read.families import Column
from bom.read.words import nearest
from bom.units import listed

# Texts of one form: the pattern, and how a person is told of it.
FORMS = {
    "currency": (re.compile(r"[A-Z]{3}"), "a three-letter code, like EUR"),
    "date": (re.compile(r"\d{4}-[01]\d-[0-3]\d"), "a date as year-month-day, like 2026-11-20"),
}


@dataclass(frozen=True)
class Table:
    """A table as read: rows of text or numbers by column name, and the line each row stands on.

    dropped   first column of the rows that could not be read, so that nobody calls their names unknown
    readable  False when so little could be read that no name is surely missing
    """

    file: str
    rows: tuple[dict[str, float | str], ...] = ()
    lines: tuple[int, ...] = ()
    dropped: frozenset[str] = frozenset()
    readable: bool = False


def read_table(path: Path, columns: Sequence[Column], faults: list[Fault]) -> Table:
    """Read a table; whatever is wrong with it is added to `faults` and the rest is still read."""
    name = str(path)
    text = _text(path, faults)
    if text is None:
        return Table(name)
    first = text.partition("\n")[0]
    if max(first.count(";"), first.count("\t")) > first.count(","):
        accepted = "Separate the cells with commas: save the table as CSV UTF-8 with the comma as separator."
        faults.append(Fault(name, 1, "", "", accepted))
        return Table(name)
    reader = csv.reader(io.StringIO(text, newline=""))
    whole: dict[int, dict[str, float | str]] = {}
    dropped: set[str] = set()
    try:
        heading = [cell.strip() for cell in next(reader, [])]
        _check_heading(name, heading, columns, faults)
        for cells in reader:
            raw = dict(zip(heading, cells, strict=False))
            if len(cells) == len(heading) and any(cell.strip() for cell in cells):
                whole[reader.line_num] = _row(name, reader.line_num, raw, columns, faults)
            elif any(cell.strip() for cell in cells):
                accepted = f"Write {len(heading)} cells, as in the heading."
                faults.append(Fault(name, reader.line_num, "", f"{len(cells)} cells", accepted))
                dropped.add(raw.get(columns[0].name, "").strip())
    except csv.Error as error:
        accepted = f"From here on the table cannot be read ({error}). Close every quote; save it as CSV UTF-8."
        faults.append(Fault(name, reader.line_num, "", "", accepted))
        return Table(name, tuple(whole.values()), tuple(whole))
    readable = columns[0].name in heading
    return Table(name, tuple(whole.values()), tuple(whole), frozenset(dropped), readable)


def check_known(table: Table, column: str, named: Iterable[Table], accepted: str, faults: list[Fault]) -> None:
    """Find names that no other table holds; a row or table that could not be read makes none unknown."""
    known: set[object] = {""}  # a blank cell has its own fault
    for other in named:
        if not other.readable:
            return
        known |= {row[column] for row in other.rows} | other.dropped
    lost: dict[str, list[int]] = {}
    for row, line in zip(table.rows, table.lines, strict=True):
        if row[column] not in known:
            lost.setdefault(str(row[column]), []).append(line)
    for word, lines in lost.items():
        more = f" The same in {len(lines) - 1} more rows." if len(lines) > 1 else ""
        hint = nearest(word, sorted(str(name) for name in known if name))
        faults.append(Fault(table.file, lines[0], column, word, f"{accepted}{hint}{more}"))


def _text(path: Path, faults: list[Fault]) -> str | None:
    if not path.is_file():
        accepted = "This table is missing; a table without rows still needs its heading."
        faults.append(Fault(str(path), 0, "", "", accepted))
        return None
    raw = path.read_bytes()
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        faults.append(Fault(str(path), line, "", "", "Save the table as CSV UTF-8."))
        return None


def _check_heading(name: str, heading: Sequence[str], columns: Sequence[Column], faults: list[Fault]) -> None:
    known = [column.name for column in columns]
    for cell in heading:
        if cell not in known:
            faults.append(Fault(name, 1, cell, cell, f"This column is not known.{nearest(cell, known)}"))
        elif heading.count(cell) > 1:
            faults.append(Fault(name, 1, cell, cell, "Write each column once."))
    for column in columns:
        if column.name not in heading:
            cells = "may not" if column.required else "may"
            accepted = f"Add this column to the heading; its cells {cells} be blank."
            faults.append(Fault(name, 1, column.name, "", accepted))


def _row(
    name: str, line: int, raw: dict[str, str], columns: Sequence[Column], faults: list[Fault]
) -> dict[str, float | str]:
    row: dict[str, float | str] = {}
    before = len(faults)
    for column in columns:
        text = raw.get(column.name, "").strip()
        row[column.name] = text
        if column.kind == "number":
            value = _number(text)
            row[column.name] = math.nan if value is None else value
            if value is not None and column.low <= value <= column.high:
                continue
        accepted = _wrong(text, column) if column.name in raw else ""
        if accepted:
            faults.append(Fault(name, line, column.name, text, accepted))
    for column in columns if len(faults) == before else ():  # a slip in one cell is not two faults
        if column.kind != "number" or column.at_most not in row:
            continue
        low, high = row[column.name], row[column.at_most]
        if float(low) > float(high):
            accepted = f"Write at most {column.at_most}, which is {float(high):.12g}."
            faults.append(Fault(name, line, column.name, f"{float(low):.12g}", accepted))
    return row


def _wrong(text: str, column: Column) -> str:
    """Say what to write in a cell instead; "" when nothing is wrong with it."""
    unless = "" if column.required else ", or leave it blank when it is not known"
    if not text:
        return "This cell may not be blank." if column.required else ""
    if column.kind == "choice" and text not in column.choices:
        return f"Write {listed(column.choices)}{unless}.{nearest(text, column.choices)}"
    if column.form and not FORMS[column.form][0].fullmatch(text):
        return f"Write {FORMS[column.form][1]}{unless}."
    return _wrong_number(text, column, unless) if column.kind == "number" else ""


def _wrong_number(text: str, column: Column, unless: str) -> str:
    number = _number(text)
    if number is None:
        unit = column.name.rsplit("_", 1)[-1]
        unit = {"c": "°C"}.get(unit, unit)
        if text.lower().endswith(("k", "ka", "kw")):
            return f"Write a plain number in {unit}, without a prefix: 6000, not 6k."
        return f"Write a plain number in {unit} with a decimal point{unless}."
    if not column.low <= number <= column.high:
        return f"Write {column.low:.12g} to {column.high:.12g}{unless}."
    return ""


def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) and "_" not in text else None
