"""One part with some of its figures filled in, as a table: a row for each way to fill them."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

import numpy as np

from bom.judge.compare import HEARSAY
from bom.parts import Curve, Parts
from bom.read.families import BY_NAME, COMMON, CURVES, Column

Figure = float | str
Figures = Mapping[str, Figure]
Value = TypeVar("Value")

KNOWN = "data sheet"
# Stands for the figure there is, once its data sheet has come.
AS_IT_IS = "as it is"
# A row of each curve that covers any duty: a contact that breaks anything, a connector that carries anything.
AMPLE_ROWS: Mapping[str, Mapping[str, Figure]] = {
    "breaking_points": {
        "volts_v": 2000.0,
        "breaks_a": 200_000.0,
        "time_constant_ms": 10_000.0,
        "direction": "both",
        "evidence": KNOWN,
    },
    "connector_amps": {"area_mm2": 0.05, "ambient_c": 250.0, "carry_a": 5000.0, "evidence": KNOWN},
    "converter_derating": {"ambient_c": 250.0, "fraction": 1.0},
}


class _Seen(Mapping[str, Value]):
    def __init__(self, inner: Mapping[str, Value], seen: set[str]) -> None:
        self._inner, self._seen = inner, seen

    def __getitem__(self, name: str) -> Value:
        self._seen.add(name)
        return self._inner[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._inner)

    def __len__(self) -> int:
        return len(self._inner)


def watched(part: Parts, seen: set[str]) -> Parts:
    """Give the part so that the names of the columns and curves a rule reads are noted."""
    numbers, words, curves = _Seen(part.numbers, seen), _Seen(part.words, seen), _Seen(part.curves, seen)
    return replace(part, numbers=numbers, words=words, curves=curves, whole=None)


def lacking(part: Parts, read: set[str]) -> dict[str, bool]:
    """List those of the figures read that are blank (True), or known by word of mouth alone (False).

    A curve may lack a row for any duty, however many it has.
    """
    found = {}
    for name in _own_columns(part):
        if name in read and is_blank(part, name):
            found[name] = True
        elif name in read and str(part.evidence_of(name)[0]) in HEARSAY:
            found[name] = False
    for curve in AMPLE_ROWS:
        if curve in read:
            rows = part.rows(curve, part.ids[0])
            found[curve] = not any(str(row.get("evidence")) in HEARSAY for row in rows)
    return found


def _own_columns(part: Parts) -> list[str]:
    return [column.name for column in BY_NAME[part.family].columns]


def is_blank(part: Parts, column: str) -> bool:
    """Tell whether the one part's cell of a column is blank."""
    if column in part.numbers:
        return bool(np.isnan(part.number(column)[0]))
    return part.word(column)[0] == ""


def ways_to_fill(part: Parts, column: str, asked: Sequence[float]) -> tuple[Figure, ...]:
    """Give the figures to try in a blank cell: both ends of what a catalogue accepts, and what was asked.

    None for a column of free words.
    """
    if column in CURVES:
        return (KNOWN,)
    kind = _column(part, column)
    if kind.kind == "number":
        figures = [figure for figure in asked if kind.low <= figure <= kind.high]
        return tuple(dict.fromkeys((kind.low, kind.high, *figures)))
    return kind.choices


def figure_of(part: Parts, column: str) -> Figure:
    """Give the one part's figure, or an ample one of a curve; "" where it is blank."""
    if column in CURVES:
        return KNOWN
    if is_blank(part, column):
        return ""
    return float(part.number(column)[0]) if column in part.numbers else part.word(column)[0]


def _column(part: Parts, name: str) -> Column:
    return next(column for column in (*COMMON, *BY_NAME[part.family].columns) if column.name == name)


def filled_in(part: Parts, ways: Sequence[Figures]) -> Parts:
    """Make a table of the one part, a row for each way to fill its figures, each known by its data sheet."""
    ids = tuple(f"{part.ids[0]} #{row}" for row in range(len(ways)))
    numbers = {
        name: np.array([_cell(way, name, float(column[0])) for way in ways], dtype=np.float64)
        for name, column in part.numbers.items()
    }
    words = {name: tuple(str(_cell(way, name, column[0])) for way in ways) for name, column in part.words.items()}
    words["exceptions"] = tuple(_exceptions(part.word("exceptions")[0], way) for way in ways)
    curves = {name: _curve(part, name, ids, ways) for name in dict.fromkeys((*part.curves, *AMPLE_ROWS))}
    return Parts(part.family, ids, numbers, words, curves, (part.is_donor(0),) * len(ways))


def _cell(way: Figures, name: str, own: Figure) -> Figure:
    given = way.get(name, AS_IT_IS)
    return own if given == AS_IT_IS else given


def _exceptions(own: str, way: Figures) -> str:
    return "; ".join(filter(None, (own, *(f"{name}={KNOWN}" for name in way if name not in CURVES))))


def _curve(part: Parts, name: str, ids: Sequence[str], ways: Sequence[Figures]) -> Curve:
    """Give each row of the table the part's own rows, and an ample one where the curve is to be filled."""
    whole = part.curves.get(name, {})
    if name not in AMPLE_ROWS:
        return whole
    rows = tuple(whole.get(part.ids[0], ()))
    sure = tuple({**row, "evidence": KNOWN} if "evidence" in row else row for row in rows)
    more = {KNOWN: (*sure, AMPLE_ROWS[name]), AS_IT_IS: sure}
    return {key: more[str(way[name])] if name in way else rows for key, way in zip(ids, ways, strict=True)}
