"""The hand-written table: which way each rating is worse, and where it is asked at all."""

import csv
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from bom.read.families import BY_NAME, CURVES, FAMILIES, Column

TABLE = Path(__file__).parent / "directions.csv"
WAYS = ("at least", "at most", "window", "word", "measure", "no rating")
KEYS_OF_CURVES = ("part_id", "time_band", "rerating", "evidence", "source")


@dataclass(frozen=True)
class Direction:
    """One rating of one family (or of one curve).

    way      at least, at most, window (both ways are worse), word, measure (neither way is worse by itself; not known
             is), or no rating
    duty     names of bom/duties/model.py that the figure must reach or stay under, with spaces between; "scaled": the
             figure that makes what is worked out of it just enough
    words    of a word: the accepted ones, best first; "*" where any other word is worse, "* but A or B" but these; one
             alone is the only worse one; {earth} is what the bike says of its earth
    asked    where it is asked: see `asked_here`; blank is everywhere
    blank    why a blank may pass; blank is that it may not
    raised   why a better figure may be answered worse; blank is that it may not
    why      the reason for a window, for no rating, or for a place where it is not asked
    """

    family: str
    column: str
    way: str
    duty: str
    words: str
    asked: str
    blank: str
    raised: str
    why: str

    @property
    def key(self) -> tuple[str, str]:
        return self.family, self.column


@cache
def directions() -> dict[tuple[str, str], Direction]:
    with TABLE.open(encoding="utf-8", newline="") as lines:
        rows = [Direction(**row) for row in csv.DictReader(lines)]
    found = {row.key: row for row in rows}
    assert len(found) == len(rows), "a rating stands twice"
    return found


def ratings() -> Iterator[tuple[str, Column]]:
    """Give every column that is a rating or might be one, with its family or curve."""
    for family in FAMILIES:
        yield from ((family.name, column) for column in family.columns)
    for curve, columns in CURVES.items():
        yield from ((curve, column) for column in columns if column.name not in KEYS_OF_CURVES)


def column_of(family: str, name: str) -> Column:
    columns = BY_NAME[family].columns if family in BY_NAME else CURVES[family]
    return next(column for column in columns if column.name == name)
