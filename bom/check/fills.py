"""A part with some of its figures filled in, as if they were known: what the rules would say then.

Nothing here is believed. A fill only asks the same rules again, to learn whether a figure is worth asking for.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from typing import Generic, TypeVar

import numpy as np

from bom.judge.compare import HEARSAY
from bom.parts import Parts
from bom.read.families import BY_NAME, COMMON, EVIDENCE, SPANS, Column

KNOWN = EVIDENCE[0]
Row = Mapping[str, object]
Figure = float | str | tuple[Row, ...] | None  # None: the figure as it is, known by its data sheet
Fill = Mapping[str, Figure]
Held = TypeVar("Held")
# Points that cover any duty. A part's own points only: a band or curve that many parts share is a word of the part.
AMPLE_POINTS: Mapping[str, Row] = {
    "breaking_points": {
        "volts_v": SPANS["v"][1],
        "breaks_a": SPANS["breaks_a"][1],
        "time_constant_ms": SPANS["ms"][1],
        "direction": "both",
        "evidence": KNOWN,
    },
    "connector_amps": {"area_mm2": 0.0, "ambient_c": SPANS["c"][1], "carry_a": SPANS["a"][1], "evidence": KNOWN},
}
SHARED = {"time_band": "fuse_time_bands", "rerating": "fuse_rerating"}


class _Noted(Mapping[str, Held], Generic[Held]):
    """A table of columns that notes which of them are read."""

    def __init__(self, columns: Mapping[str, Held], read: set[str]) -> None:
        self._columns, self._read = columns, read

    def __getitem__(self, name: str) -> Held:
        self._read.add(name)
        return self._columns[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._columns)

    def __len__(self) -> int:
        return len(self._columns)


def noted(part: Parts) -> tuple[Parts, set[str]]:
    """Give the same part as one that notes in a set which of its columns are read."""
    read: set[str] = set()
    columns = _Noted(part.numbers, read), _Noted(part.words, read), _Noted(part.curves, read)
    return replace(part, numbers=columns[0], words=columns[1], curves=columns[2], whole=None), read


def read_by(part: Parts, ask: Callable[[Parts], object]) -> set[str]:
    """List the columns and curves of a part that a question reads."""
    own, read = noted(part)
    ask(own)
    return read - {column.name for column in COMMON}


def is_blank(part: Parts, figure: str) -> bool:
    """Tell whether a figure is missing."""
    if figure in AMPLE_POINTS:
        return not part.rows(figure, part.ids[0])
    if figure in part.numbers:
        return bool(np.isnan(part.number(figure)[0]))
    return figure in part.words and part.word(figure)[0] == ""


def is_hearsay(part: Parts, figure: str) -> bool:
    """Tell whether a figure that is there is only the seller's word, or of unknown origin."""
    if figure in AMPLE_POINTS:
        return any(row["evidence"] in HEARSAY for row in part.rows(figure, part.ids[0]))
    told = figure in part.numbers or figure in part.words
    return told and not is_blank(part, figure) and str(part.evidence_of(figure)[0]) in HEARSAY


def filled_in(part: Parts, fill: Fill) -> Parts:
    """Give the part with these figures, each as if its data sheet said so."""
    numbers, words, curves = dict(part.numbers), dict(part.words), dict(part.curves)
    for name, figure in fill.items():
        if name in AMPLE_POINTS:
            rows = figure if isinstance(figure, tuple) else _confirmed(part.rows(name, part.ids[0]))
            curves[name] = {part.ids[0]: rows}
        elif isinstance(figure, str):
            words[name] = (figure,)
        elif isinstance(figure, float):
            numbers[name] = np.array([figure])
    own = (part.word("exceptions")[0], *(f"{name}={KNOWN}" for name in fill))
    words["exceptions"] = (";".join(filter(None, own)),)
    return Parts(part.family, part.ids, numbers, words, curves, (part.is_donor(0),))


def _confirmed(rows: tuple[Row, ...]) -> tuple[Row, ...]:
    return tuple({**row, "evidence": KNOWN} for row in rows)


def candidates_for(part: Parts, figure: str, wanted: tuple[float, ...], words: tuple[str, ...]) -> list[Figure]:
    """List figures that might be good: what the rules ask for, and both ends of what the column may hold."""
    if figure in AMPLE_POINTS:
        return [({**AMPLE_POINTS[figure], "part_id": part.ids[0]},)]
    column = _column(part.family, figure)
    if column.kind == "number":
        asked = [value for value in wanted if column.low <= value <= column.high]
        return [*dict.fromkeys((*asked, column.low, column.high))]
    if figure in SHARED:
        return [*sorted(part.curves.get(SHARED[figure], {}))]
    return [*dict.fromkeys(column.choices or words)]


def _column(family: str, figure: str) -> Column:
    return next(column for column in BY_NAME[family].columns if column.name == figure)
