"""The margins and assumptions that rules use: one table, each with its source, each printed."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from bom.data import folder
from bom.errors import Fault
from bom.read.families import Column
from bom.read.locate import Lines
from bom.read.tables import Table, read_table
from bom.read.words import nearest
from bom.span import Span
from bom.trace import Origin

COLUMNS = (
    Column("name", "text", required=True),
    Column("value", required=True),
    Column("unit", "text"),
    Column("low", required=True),
    Column("high", required=True),
    Column("meaning", "text", required=True),
    Column("source", "text", required=True),
)


@dataclass(frozen=True)
class Margin:
    """One margin: its value, the range a shop may set it in, and where the value comes from."""

    name: str
    value: float
    unit: str
    low: float
    high: float
    meaning: str
    source: str


@dataclass(frozen=True, eq=False)
class Margins:
    """All margins by name. Attribute access gives the value: `margins.fuse_loading`."""

    entries: Mapping[str, Margin]

    def __getattr__(self, name: str) -> float:
        """Give a margin's value; an unknown name is a programming error."""
        if name.startswith("_") or name not in self.entries:
            raise AttributeError(name)
        return self.entries[name].value

    def of(self, name: str, dimension: str = "", because: str = "") -> Span:
        """Give a margin as a figure that knows where it comes from."""
        entry = self.entries[name]
        value = entry.value
        return Span(value, value, dimension, because or entry.meaning, "", _origin(name, entry.unit))

    def overridden(self, values: Mapping[str, float], file: str, lines: Lines, faults: list[Fault]) -> "Margins":
        """Apply a job's own values; unknown names and values out of range become faults."""
        entries = dict(self.entries)
        for name, value in values.items():
            line = lines.line(("margins", name))
            margin = entries.get(name)
            if margin is None:
                hint = nearest(name, list(entries))
                faults.append(Fault(file, line, f"margins.{name}", name, f"No margin has this name.{hint}"))
            elif not margin.low <= value <= margin.high:
                accepted = f"Write a number from {margin.low:g} to {margin.high:g} ({margin.meaning})."
                faults.append(Fault(file, line, f"margins.{name}", f"{value:g}", accepted))
            else:
                entries[name] = Margin(
                    name, value, margin.unit, margin.low, margin.high, margin.meaning, f"job line {line}"
                )
        return Margins(entries)


@cache
def _origin(name: str, unit: str) -> Origin:
    return Origin("margin", name, unit=unit)


def read_margins(path: Path, faults: list[Fault]) -> Margins:
    """Read a margins table; it holds every margin of the shipped one, each once and within its own limits."""
    table = read_table(path, COLUMNS, faults)
    _check(table, faults)
    margins = sorted((_margin(row) for row in table.rows), key=lambda margin: margin.name)
    return Margins({margin.name: margin for margin in margins})


def shipped_margins() -> Margins:
    """Give the margins that came with the program, whose names every catalogue's have."""
    return read_margins(folder("catalog") / "settings" / "margins.csv", [])


def _margin(row: Mapping[str, float | str]) -> Margin:
    value, low, high = (float(row[name]) for name in ("value", "low", "high"))
    return Margin(str(row["name"]), value, str(row["unit"]), low, high, str(row["meaning"]), str(row["source"]))


def _check(table: Table, faults: list[Fault]) -> None:
    shipped = read_table(folder("catalog") / "settings" / "margins.csv", COLUMNS, [])
    names = [str(row["name"]) for row in shipped.rows]
    seen: set[str] = set()
    for row, line in zip(table.rows, table.lines, strict=True):
        margin = _margin(row)
        if margin.name in seen:
            faults.append(Fault(table.file, line, "name", margin.name, "Write each margin once."))
        elif margin.name and margin.name not in names:
            accepted = f"No margin has this name.{nearest(margin.name, names)}"
            faults.append(Fault(table.file, line, "name", margin.name, accepted))
        seen.add(margin.name)
        if margin.low > margin.high:
            accepted = f"Write a low of at most the high, {margin.high:g}."
            faults.append(Fault(table.file, line, "low", f"{margin.low:g}", accepted))
        elif margin.value < margin.low or margin.value > margin.high:  # false where one of them has a fault
            accepted = f"Write {margin.low:g} to {margin.high:g}, the limits of this row."
            faults.append(Fault(table.file, line, "value", f"{margin.value:g}", accepted))
    for name in names:
        if table.readable and name not in seen | table.dropped:
            accepted = "This margin is missing: copy its row from the shipped table."
            faults.append(Fault(table.file, 0, name, "", accepted))
