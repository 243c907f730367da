"""A part with one figure changed: the ways to make a rating worse, better, or not known."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np

from bom.check.figures import is_blank
from bom.parts import Parts
from bom.read.families import BY_NAME, CURVES, Column
from tests.sweep.table import Direction, column_of, directions

WORSE, BETTER, BLANK = "worse", "better", "blank"
SHORT, OVER = 0.97, 1.03
SCALE = 1000.0
# Which column of a part names its rows of a curve; the others go by the part's own id.
NAMED_BY = {"fuse_time_bands": "time_band", "fuse_rerating": "rerating"}
Row = Mapping[str, object]


@dataclass(frozen=True)
class Mutation:
    """One figure of one part changed.

    family  of the part, or the curve
    value   the new figure or word; of a curve a bound that every row is cut to, NaN where its figure is blanked
    up      of a curve: rows are raised to the bound, not lowered
    """

    family: str
    column: str
    kind: str
    value: float | str
    up: bool = False

    @property
    def of_curve(self) -> bool:
        return self.family in CURVES


Needs = Callable[[Direction, str], Sequence[float]]


def mutations(part: Parts, needs: Needs, earth: str = "") -> Iterator[Mutation]:
    """List every change of every rating; needs gives the figures a rating must reach (or stay under) here."""
    for column in BY_NAME[part.family].columns:
        entry = directions()[part.family, column.name]
        if entry.way != "no rating":
            yield from of_column(part, within(part, column), entry, needs, earth)
    for curve, columns in CURVES.items():
        if part.rows(curve, key_of(part, curve)):
            for column in columns:
                if (curve, column.name) in directions():
                    yield from of_curve(directions()[curve, column.name], column, needs)


def within(part: Parts, column: Column) -> Column:
    """Keep the copper of a cable inside its cover: the catalogue takes no other."""
    if column.name == "conductor_mm" and not is_blank(part, "outside_mm"):
        return replace(column, high=float(part.number("outside_mm")[0]))
    if column.name == "outside_mm" and not is_blank(part, "conductor_mm"):
        return replace(column, low=float(part.number("conductor_mm")[0]))
    return column


def of_column(part: Parts, column: Column, entry: Direction, needs: Needs, earth: str) -> Iterator[Mutation]:
    def change(kind: str, value: float | str) -> Mutation:
        return Mutation(part.family, column.name, kind, value)

    if not is_blank(part, column.name) and not column.required:
        yield change(BLANK, np.nan if column.kind == "number" else "")
    if entry.way == "measure":
        return
    if column.kind == "number":
        own = float(part.number(column.name)[0])
        yield from (change(WORSE, value) for value in worse_figures(own, column, entry, needs))
        if entry.way != "window" and not entry.raised:
            yield from (change(BETTER, value) for value in better_figures(own, column, entry))
        return
    worse, better = ranked(part.word(column.name)[0], column, entry, earth)
    yield from (change(WORSE, word) for word in worse)
    yield from (change(BETTER, word) for word in better)


def short_of(figures: Sequence[float], end: float, sense: str) -> list[float]:
    """Give the figures to try: just short of what is needed, and the end of what a catalogue accepts.

    That end is none where it is not short of what is needed.
    """
    factor, sign = (SHORT, 1) if sense == "at least" else (OVER, -1)
    ends = [end] if all(sign * end < sign * need for need in figures) else []
    return [factor * need for need in figures] + ends


def worse_figures(own: float, column: Column, entry: Direction, needs: Needs) -> list[float]:
    found = []
    if entry.way in ("at least", "window"):
        found += short_of(needs(entry, "at least"), column.low, "at least")
    if entry.way in ("at most", "window"):
        found += short_of(needs(entry, "at most"), column.high, "at most")
    if entry.way == "window" or np.isnan(own):
        return [figure for figure in dict.fromkeys(found) if figure != own]
    sign = 1 if entry.way == "at least" else -1
    return [
        figure for figure in dict.fromkeys(found) if sign * figure < sign * own and column.low <= figure <= column.high
    ]


def better_figures(own: float, column: Column, entry: Direction) -> list[float]:
    end = column.high if entry.way == "at least" else column.low
    near = own * (1.1 if entry.way == "at least" else 0.9)
    figures = [end] if np.isnan(own) or not column.low <= near <= column.high else [near, end]
    return [figure for figure in figures if figure != own]


def ranked(own: str, column: Column, entry: Direction, earth: str) -> tuple[list[str], list[str]]:
    """Give the words that are worse than the part's own, and those that are better."""
    if entry.words.startswith("*"):
        fine = entry.words.format(earth=earth).partition(" but ")[2].split(" or ")
        others = [word for word in column.choices if word not in (own, *fine)]
        return (others or [f"not {own}"]), []
    order = entry.words.split(" > ")
    if len(order) == 1:
        return [word for word in order if word != own], []
    place = order.index(own) if own in order else len(order)
    return order[place + 1 :] or ([order[-1]] if not own else []), order[:place]


def of_curve(entry: Direction, column: Column, needs: Needs) -> Iterator[Mutation]:
    def change(kind: str, value: float | str, *, up: bool) -> Mutation:
        return Mutation(entry.family, entry.column, kind, value, up)

    if column.kind != "number":
        order = entry.words.split(" > ")
        yield from (change(WORSE, word, up=False) for word in order[1:])
        return
    if column.name == "multiple":  # scaled: no two rows may stand at one multiple
        yield change(WORSE, SCALE, up=True)
        return
    if entry.way in ("at least", "window"):
        for figure in short_of(needs(entry, "at least"), column.low, "at least"):
            yield change(WORSE, figure, up=False)
    if entry.way in ("at most", "window"):
        for figure in short_of(needs(entry, "at most"), column.high, "at most"):
            yield change(WORSE, figure, up=True)
    if entry.way != "window" and not entry.raised:
        up = entry.way == "at least"
        yield change(BETTER, column.high if up else column.low, up=up)
    yield change(BLANK, np.nan, up=False)


def key_of(part: Parts, curve: str) -> str:
    return part.word(NAMED_BY[curve])[0] if curve in NAMED_BY and NAMED_BY[curve] in part.words else part.ids[0]


def changed(part: Parts, changes: Sequence[Mutation]) -> Parts:
    """Make a table of the part, a row for each change."""
    ids = tuple(f"{part.ids[0]} #{row}" for row in range(len(changes)))
    numbers = {
        name: np.repeat(np.asarray(column, dtype=np.float64), len(changes)) for name, column in part.numbers.items()
    }
    words = {name: [column[0]] * len(changes) for name, column in part.words.items()}
    curves = {name: dict(part.curves.get(name, {})) for name in {*part.curves, *CURVES}}
    for row, change in enumerate(changes):
        own = {name: part.rows(name, key_of(part, name)) for name in curves}
        if change.of_curve:
            own[change.family] = cut(own[change.family], change)
        for name, points in curves.items():
            if name not in NAMED_BY:
                points[ids[row]] = own[name]
        if change.family in NAMED_BY:
            words[NAMED_BY[change.family]][row] = ids[row]
            curves[change.family][ids[row]] = own[change.family]
        elif not change.of_curve:
            here = numbers if change.column in numbers else words
            here[change.column][row] = change.value
    donor = (part.is_donor(0),) * len(changes)
    return Parts(part.family, ids, numbers, {name: tuple(column) for name, column in words.items()}, curves, donor)


def cut(rows: Sequence[Row], change: Mutation) -> tuple[Row, ...]:
    """Change every row of a curve; one whose figure must stand goes where it is blanked."""
    name, value = change.column, change.value
    if isinstance(value, str):
        return tuple({**row, name: value} for row in rows)
    own = [float(str(row[name])) for row in rows]
    if np.isnan(value):
        return () if column_of(change.family, name).required else tuple({**row, name: np.nan} for row in rows)
    if name == "multiple":
        figures = [figure * value for figure in own]
    elif name == "ambient_c":
        figures = [figure + value - max(own) for figure in own]
    else:
        figures = [max(figure, value) if change.up else min(figure, value) for figure in own]
    return tuple({**row, name: figure} for row, figure in zip(rows, figures, strict=True))


def one(table: Parts, row: int) -> Parts:
    """Give one row of a table of changes as a part of its own, under the id of the part it was."""
    part = table.take([row])
    return replace(part, numbers=dict(part.numbers), words=dict(part.words), whole=None)


def kind_of(family: str, column: str) -> str:
    return column_of(family, column).kind
