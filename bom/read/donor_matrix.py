"""What becomes of each kind of donor item on each kind of donor: the table that comes with the catalogue."""

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import get_args

from bom.errors import Fault
from bom.read.families import Column
from bom.read.job import ItemKind
from bom.read.tables import read_table

VERDICTS = ("stays", "stays if", "test first", "goes")  # worst last
# The gates, in the order a builder walks them; "always" is the plain case: 12 V DC, negative earth, filaments,
# lamps that return through the frame, an isolated converter, the key at 12 V, switches that carry the lamps' own amps.
GATES = (
    "always",
    "common minus",
    "positive earth",
    "6 V",
    "AC-lit",
    "LED lamps",
    "key at pack volts",
    "two-wire",
    "electronic",
)
LAMP_KINDS = ("head lamp", "tail lamp", "indicators", "dash lamps")

COLUMNS = (
    Column("kind", "choice", (*get_args(ItemKind), *LAMP_KINDS), required=True),
    Column("when", "choice", GATES, required=True),
    Column("verdict", "choice", VERDICTS, required=True),
    Column("because", "text", required=True),
    Column("change", "text"),
    Column("takes", "choice", ("relay", "lead")),
    Column("minutes", low=0, high=10_000),
    Column("test", "text"),
    Column("settles", "text"),
    Column("source", "text", required=True),
)


@dataclass(frozen=True)
class Cell:
    """One cell of the matrix.

    gate     condition under which it holds
    verdict  one of VERDICTS
    because  reason in words
    change   what must be done for it to stay, or what takes its place; "" for nothing
    takes    what must be bought for it that this loom does not lay by itself: "relay", "lead" or ""
    minutes  of that work, a rough estimate; NaN where none
    test     the two-minute test, "" for none
    settles  reading that would let it stay
    source   where the cell comes from
    """

    gate: str
    verdict: str
    because: str
    change: str
    takes: str
    minutes: float
    test: str
    settles: str
    source: str


Matrix = Mapping[tuple[str, str], Cell]


def read_donor_matrix(path: Path, faults: list[Fault]) -> Matrix:
    """Read the matrix: each kind has its plain case, and each cell stands once."""
    table = read_table(path, COLUMNS, faults)
    cells: dict[tuple[str, str], Cell] = {}
    for row, line in zip(table.rows, table.lines, strict=True):
        key = (str(row["kind"]), str(row["when"]))
        if key in cells:
            faults.append(Fault(table.file, line, "when", key[1], f"Write each cell of the {key[0]} once."))
        cells[key] = Cell(
            key[1],
            str(row["verdict"]),
            str(row["because"]),
            str(row["change"]),
            str(row["takes"]),
            float(row["minutes"]),
            str(row["test"]),
            str(row["settles"]),
            str(row["source"]),
        )
    for kind in (*get_args(ItemKind), *LAMP_KINDS):
        if table.readable and (kind, "always") not in cells:
            faults.append(Fault(table.file, 0, kind, "", 'Its plain case is missing: a row with "always".'))
    return cells
