"""The table of tests on parts that arrive: what settles a figure before the part is energised."""

from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from bom.errors import Fault
from bom.read.families import BY_NAME, COMMON, CURVES, Column
from bom.read.tables import Table, read_table
from bom.read.words import nearest

Proves = Literal["settles", "finds faults only", "nothing"]
PROVES: tuple[Proves, ...] = ("settles", "finds faults only", "nothing")
NEED = "{need}"
GOODS_IN = (
    Column("family", "text"),
    Column("column", "text", required=True),
    Column("proves", "choice", PROVES, required=True),
    Column("test", "text", required=True),
    Column("passes", "text", required=True),
    Column("minutes", required=True, low=0, high=600),
    Column("source", "text", required=True),
)


@dataclass(frozen=True)
class GoodsIn:
    """A test on a part that has arrived.

    family  "" for every family that has the column
    column  of the part's table, or a curve
    proves  whether it settles the figure, can only find that the part is faulty, or settles nothing
    passes  the reading to pass; "{need}" stands for what this bike asks
    """

    family: str
    column: str
    proves: Proves
    test: str
    passes: str
    minutes: float
    source: str


def read_goods_in(path: Path, faults: list[Fault]) -> tuple[GoodsIn, ...]:
    """Read the tests; each names a column of a family, or of every family that has it."""
    table = read_table(path, GOODS_IN, faults)
    rows = []
    for row, line in zip(table.rows, table.lines, strict=True):
        _check(table, line, str(row["family"]), str(row["column"]), str(row["passes"]), faults)
        words = {name: str(row[name]) for name in ("family", "column", "test", "passes", "source")}
        proves = next((word for word in PROVES if word == row["proves"]), PROVES[-1])
        rows.append(GoodsIn(proves=proves, minutes=float(row["minutes"]), **words))
    return tuple(rows)


def _check(table: Table, line: int, family: str, column: str, passes: str, faults: list[Fault]) -> None:
    if family and family not in BY_NAME:
        accepted = f"No family has this name.{nearest(family, list(BY_NAME))}"
        faults.append(Fault(table.file, line, "family", family, accepted))
        return
    families = [BY_NAME[family]] if family else list(BY_NAME.values())
    known = [entry.name for entry in COMMON] + [entry.name for each in families for entry in each.columns]
    if column not in (*known, *CURVES):
        accepted = f"No such column, and no such curve.{nearest(column, [*known, *CURVES])}"
        faults.append(Fault(table.file, line, "column", column, accepted))
    if NEED not in passes:
        accepted = f"Write {NEED} where the figure that this bike asks is to stand."
        faults.append(Fault(table.file, line, "passes", passes, accepted))


def test_of(family: str, column: str, rows: tuple[GoodsIn, ...]) -> GoodsIn | None:
    """Give the family's own test of a column, else the one for every family; None where there is none."""
    alike = [row for row in rows if row.column == column and row.family in (family, "")]
    return min(alike, key=lambda row: row.family == "", default=None)
