"""Reading one CSV table against its columns, with every fault of the file at once."""

import csv
import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from bom.errors import Fault
from bom.read.families import Column


@dataclass(frozen=True)
class Table:
    """A table as read: rows of text or numbers by column name, and the line each row stands on."""

    file: str
    rows: tuple[dict[str, float | str], ...]
    lines: tuple[int, ...]


def nearest(word: str, known: Sequence[str]) -> str:
    """Name the known word nearest to a mistyped one, as a hint; "" when nothing is near."""
    from rapidfuzz import process

    match = process.extractOne(word, known, score_cutoff=60)
    return f' Nearest known: "{match[0]}".' if match else ""


def read_table(path: Path, columns: Sequence[Column], faults: list[Fault]) -> Table:
    """Read a table; whatever is wrong with it is added to `faults` and the rest is still read."""
    name = str(path)
    if not path.is_file():
        faults.append(Fault(name, 0, "", "", "This table is missing; a table without rows still needs its heading."))
        return Table(name, (), ())
    with path.open(encoding="utf-8-sig", newline="") as handle:
        reader = csv.reader(handle)
        heading = [cell.strip() for cell in next(reader, [])]
        _check_heading(name, heading, columns, faults)
        rows, lines = [], []
        for cells in reader:
            if not any(cell.strip() for cell in cells):
                continue
            if len(cells) != len(heading):
                faults.append(
                    Fault(
                        name,
                        reader.line_num,
                        "",
                        f"{len(cells)} cells",
                        f"Write {len(heading)} cells, as in the heading.",
                    )
                )
                continue
            raw = dict(zip(heading, cells, strict=True))
            rows.append(_row(name, reader.line_num, raw, columns, faults))
            lines.append(reader.line_num)
    return Table(name, tuple(rows), tuple(lines))


def _check_heading(name: str, heading: Sequence[str], columns: Sequence[Column], faults: list[Fault]) -> None:
    known = [column.name for column in columns]
    for cell in heading:
        if cell not in known:
            faults.append(Fault(name, 1, cell, cell, f"This column is not known.{nearest(cell, known)}"))
        elif heading.count(cell) > 1:
            faults.append(Fault(name, 1, cell, cell, "Write each column once."))
    for column in columns:
        if column.name not in heading:
            faults.append(Fault(name, 1, column.name, "", "Add this column to the heading; its cells may be blank."))


def _row(
    name: str, line: int, raw: dict[str, str], columns: Sequence[Column], faults: list[Fault]
) -> dict[str, float | str]:
    row: dict[str, float | str] = {}
    for column in columns:
        text = raw.get(column.name, "").strip()
        accepted = ""
        if not text and column.required:
            accepted = "This cell may not be blank."
        elif column.kind == "choice" and text and text not in column.choices:
            accepted = f"Write {_listed(column.choices)}, or leave it blank when it is not known."
        elif column.kind == "number" and text and _number(text) is None:
            accepted = _number_hint(text, column.name)
        if accepted:
            faults.append(Fault(name, line, column.name, text, accepted))
        value = _number(text) if column.kind == "number" else text
        row[column.name] = math.nan if value is None else value
    return row


def _number(text: str) -> float | None:
    try:
        value = float(text)
    except ValueError:
        return None
    return value if math.isfinite(value) and "_" not in text else None


def _number_hint(text: str, column: str) -> str:
    unit = column.rsplit("_", 1)[-1]
    if text.lower().endswith(("k", "ka", "kw")):
        return f"Write a plain number in {unit}, without a prefix: 6000, not 6k."
    return f"Write a plain number in {unit} with a decimal point, or leave it blank when it is not known."


def _listed(words: Sequence[str]) -> str:
    return ", ".join(f'"{word}"' for word in words[:-1]) + f' or "{words[-1]}"' if len(words) > 1 else f'"{words[0]}"'
