"""The margins and assumptions that rules use: one table, each with its source, each printed."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from bom.errors import Fault
from bom.read.families import Column
from bom.read.tables import nearest, read_table

COLUMNS = (
    Column("name", "text", required=True),
    Column("value", required=True),
    Column("unit", "text"),
    Column("low"),
    Column("high"),
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


@dataclass(frozen=True)
class Margins:
    """All margins by name. Attribute access gives the value: `margins.fuse_loading`."""

    entries: Mapping[str, Margin]

    def __getattr__(self, name: str) -> float:
        """Give a margin's value; an unknown name is a programming error."""
        if name.startswith("_") or name not in self.entries:
            raise AttributeError(name)
        return self.entries[name].value

    def overridden(
        self, values: Mapping[str, float], file: str, line_of: Mapping[str, int], faults: list[Fault]
    ) -> "Margins":
        """Apply a job's own values; unknown names and values out of range become faults."""
        entries = dict(self.entries)
        for name, value in values.items():
            line = line_of.get(name, 0)
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


def read_margins(path: Path, faults: list[Fault]) -> Margins:
    """Read the margins table."""
    table = read_table(path, COLUMNS, faults)
    return Margins(
        {
            str(row["name"]): Margin(
                str(row["name"]),
                float(row["value"]),
                str(row["unit"]),
                float(row["low"]),
                float(row["high"]),
                str(row["meaning"]),
                str(row["source"]),
            )
            for row in table.rows
        }
    )
