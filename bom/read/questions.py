"""The tables of a shop's own know-how: the quick way to a figure, and what to ask a supplier."""

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from bom.errors import Fault
from bom.read.families import BY_NAME, COMMON, Column
from bom.read.tables import Table, read_table
from bom.read.words import nearest

WAYS = (
    Column("keyword", "text"),
    Column("way", "text", required=True),
    Column("minutes", required=True),
    Column("source", "text", required=True),
)
QUESTIONS = (
    Column("family", "text", required=True),
    Column("column", "text", required=True),
    Column("question", "text", required=True),
)


@dataclass(frozen=True)
class Way:
    """The quick way to every figure whose name holds the keyword, in lower case; minutes are a rough estimate."""

    keyword: str
    way: str
    minutes: float


@dataclass(frozen=True)
class Question:
    """What to ask a supplier where a column of a part is blank."""

    family: str
    column: str
    question: str


def read_ways(path: Path, faults: list[Fault]) -> tuple[Way, ...]:
    """Read the quick ways; the last must serve every figure that no keyword names."""
    table = read_table(path, WAYS, faults)
    if path.is_file() and not (table.rows and table.rows[-1]["keyword"] == ""):
        accepted = "Leave the keyword of the last row blank: it serves every figure that no other row names."
        faults.append(Fault(table.file, max(table.lines, default=1), "keyword", "", accepted))
    return tuple(Way(str(row["keyword"]).lower(), str(row["way"]), float(row["minutes"])) for row in table.rows)


def read_questions(path: Path, faults: list[Fault]) -> tuple[Question, ...]:
    """Read the questions; each names a column of a family."""
    table = read_table(path, QUESTIONS, faults)
    for row, line in zip(table.rows, table.lines, strict=True):
        _check(table, line, str(row["family"]), str(row["column"]), faults)
    return tuple(Question(str(row["family"]), str(row["column"]), str(row["question"])) for row in table.rows)


def quick_way(datum: str, ways: Sequence[Way]) -> Way:
    """Give the quickest way to a figure: the first whose keyword the datum holds; the last one's is blank."""
    text = datum.lower()
    return next(way for way in ways if way.keyword in text)


def _check(table: Table, line: int, family: str, column: str, faults: list[Fault]) -> None:
    if family not in BY_NAME:
        accepted = f"No family has this name.{nearest(family, list(BY_NAME))}"
        faults.append(Fault(table.file, line, "family", family, accepted))
        return
    known = [entry.name for entry in (*COMMON, *BY_NAME[family].columns)]
    if column not in known:
        accepted = f"The family has no such column.{nearest(column, known)}"
        faults.append(Fault(table.file, line, "column", column, accepted))
