"""A family's parts as columns: the same attribute serves one part and the whole table."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache, partial
from typing import TypeVar

import numpy as np
import numpy.typing as npt

from bom.span import Span
from bom.trace import Fact, Origin, Step, Trace, resolved

Column = npt.NDArray[np.float64]
Texts = npt.NDArray[np.object_]
Picked = TypeVar("Picked")
Curve = Mapping[str, tuple[Mapping[str, object], ...]]
DONOR = "donor: "
# What a column's figures are, by the unit its name ends in; others are plain numbers with a unit beside them.
DIMENSIONS = {
    "v": "voltage",
    "a": "current",
    "ohm": "resistance",
    "w": "power",
    "s": "time",
    "mm2": "area",
    "c": "temperature",
    "j": "energy",
    "ah": "charge",
}
UNITS = {"ma": "mA", "mv": "mV", "mm": "mm", "ms": "ms", "uf": "µF", "pct": "%"}


@dataclass(frozen=True)
class Rating:
    """Ratings of a column (or, spread out, a grid) of parts, each with how it is known.

    values    NaN is not known
    evidence  one word of evidence for each value
    trace     where the first part's value comes from: who asks asks one part, or one pair, alone
    """

    values: Column
    evidence: Texts
    trace: Trace | None = field(default=None, compare=False, repr=False)

    def down(self) -> "Rating":
        """Spread the parts over the rows of a grid of pairs."""
        return Rating(self.values[:, None], self.evidence[:, None], self.trace)

    def across(self) -> "Rating":
        """Spread the parts over the columns of a grid of pairs."""
        return Rating(self.values[None, :], self.evidence[None, :], self.trace)

    def or_greater(self, other: "Rating") -> "Rating":
        """Take the greater of two figures, each known as it is; one that is not known counts as the lesser."""
        wins = np.nan_to_num(other.values, nan=-np.inf) > np.nan_to_num(self.values, nan=-np.inf)
        values = np.where(wins, other.values, self.values)
        return Rating(
            values, np.where(wins, other.evidence, self.evidence), lambda: self._greater(other, bool(np.ravel(wins)[0]))
        )

    def _greater(self, other: "Rating", wins: bool) -> Step | Origin:
        """Show both figures where both are known, else the one there is."""
        one, two = self.first("current"), other.first("current")
        if np.isnan(one.low) or np.isnan(two.low):
            kept = (two if wins else one).origin()
            assert kept is not None  # both are read from a column
            return kept
        return Step("max(a, b)", {"a": one, "b": two})

    def first(self, dimension: str = "") -> Span:
        """Give the first part's figure with where it comes from; what it is, where its column does not say."""
        value, trace = float(np.ravel(self.values)[0]), self.trace
        own = trace() if callable(trace) else trace
        column = own.name if isinstance(own, Origin) else ""
        return Span(value, value, dimension or dimension_of(column), "", "", own if isinstance(own, Origin) else trace)

    def with_values(self, values: Column, trace: Trace | None = None) -> "Rating":
        """Give other figures worked out from these, known as these are."""
        return Rating(values, self.evidence, trace)


@dataclass(frozen=True)
class Words:
    """Words of a column of parts, each with how it is known, and where the first comes from."""

    values: tuple[str, ...]
    evidence: Texts
    trace: Trace | None = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, eq=False)
class Parts:
    """Parts of one family.

    family    its name
    ids       part ids, in the order of every column
    numbers   number columns; NaN is not known
    words     text columns; "" is not known
    curves    child rows of each part, by curve name then by part id (or by the curve's own key)
    donor     True for the donor's own part, False for one of the catalogue
    told      of the donor's own part: where figures come from that were worked out of the job, by column
    whole     the table these were taken from, with their rows in it; None for a table of its own.
              Figures that cost much are worked out once for the whole table.
    """

    family: str
    ids: tuple[str, ...]
    numbers: Mapping[str, Column]
    words: Mapping[str, tuple[str, ...]]
    curves: Mapping[str, Curve] = field(default_factory=dict)
    donor: tuple[bool, ...] = ()
    whole: "tuple[Parts, tuple[int, ...]] | None" = None
    told: Mapping[str, Trace] = field(default_factory=dict)

    def __len__(self) -> int:
        """Count the parts."""
        return len(self.ids)

    def number(self, name: str) -> Column:
        """Give a number column; a name the family does not have is a programming error."""
        return self.numbers[name]

    def word(self, name: str) -> tuple[str, ...]:
        """Give a text column."""
        return self.words[name]

    def rating(self, name: str) -> Rating:
        """Give a number column with the evidence of each figure."""
        return Rating(self.numbers[name], self.evidence_of(name), self.cell(name))

    def words_of(self, name: str) -> Words:
        """Give a text column with the evidence of each word."""
        return Words(self.words[name], self.evidence_of(name), self.cell(name))

    def cell(self, name: str) -> Callable[[], Origin | Step | None]:
        """Tell, when asked, which cell of which part the first figure of a column is."""
        return partial(_traced, self, name)

    def decided_by(self, name: str) -> Callable[[], Origin]:
        """Name the cell whose word makes a figure what it is, with the word."""
        return lambda: replace(_cell(self, name), note=f'it says "{self.words[name][0] or "nothing"}"')

    def first(self, name: str) -> Span:
        """Give the first part's figure of a column with where it comes from."""
        value = float(self.numbers[name][0])
        return Span(value, value, dimension_of(name), "", "", self.cell(name))

    def first_word(self, name: str) -> Fact:
        """Give the first part's word of a column with where it comes from."""
        word = self.words[name][0]
        return Fact(word or "not known", word, _cell(self, name))

    def points(self, curve: str, key: str, *columns: str) -> Fact:
        """Give the rows of a curve with where they stand, sorted, as a formula takes them."""
        rows = sorted(tuple(float(str(row[name])) for name in columns) for row in self.rows(curve, key))
        text = f"{len(rows)} points of {', '.join(columns)}"
        return Fact(text, rows, Origin("curve", curve, key))

    def evidence_of(self, column: str) -> Texts:
        """Say how each part's rating in a column is known; worked out once for the whole table."""
        if self.whole is None:
            return _evidence(self, column)
        table, rows = self.whole
        return _evidence(table, column)[list(rows)]

    def rows(self, curve: str, key: str) -> tuple[Mapping[str, object], ...]:
        """Give the child rows of one key of a curve, none when it has none."""
        return self.curves.get(curve, {}).get(key, ())

    def is_donor(self, index: int) -> bool:
        """Tell whether a part is the donor's own."""
        return bool(self.donor) and self.donor[index]

    def index(self, part_id: str) -> int:
        """Find a part; KeyError when it is not here."""
        try:
            return self.ids.index(part_id)
        except ValueError:
            raise KeyError(part_id) from None

    def take(self, indices: Sequence[int]) -> "Parts":
        """Keep some parts, in the order given; the same ones of the same table are the same object."""
        if self.whole is None:
            return _taken(self, tuple(indices))
        table, rows = self.whole
        return _taken(table, tuple(rows[i] for i in indices))

    def joined(self, other: "Parts") -> "Parts":
        """Add another table's parts of the same family behind these."""
        curves = {
            name: {**self.curves.get(name, {}), **other.curves.get(name, {})}
            for name in dict.fromkeys((*self.curves, *other.curves))
        }
        return Parts(
            self.family,
            self.ids + other.ids,
            {name: np.concatenate([column, other.numbers[name]]) for name, column in self.numbers.items()},
            {name: column + other.words[name] for name, column in self.words.items()},
            curves,
            tuple(self.is_donor(i) for i in range(len(self))) + tuple(other.is_donor(i) for i in range(len(other))),
            None,
            {**other.told, **self.told},
        )


class _Picked(Mapping[str, Picked]):
    """Some rows of every column, cut out when a column is asked for: a rule reads few of them."""

    def __init__(self, columns: Mapping[str, Picked], pick: Callable[[Picked], Picked]) -> None:
        self._columns, self._pick = columns, pick

    def __getitem__(self, name: str) -> Picked:
        return self._pick(self._columns[name])

    def __iter__(self) -> Iterator[str]:
        return iter(self._columns)

    def __len__(self) -> int:
        return len(self._columns)


@lru_cache(maxsize=8192)
def _taken(table: Parts, rows: tuple[int, ...]) -> Parts:
    picked = list(rows)
    return Parts(
        table.family,
        tuple(table.ids[i] for i in picked),
        _Picked(table.numbers, lambda column: column[picked]),
        _Picked(table.words, lambda column: tuple(column[i] for i in picked)),
        table.curves,
        tuple(table.is_donor(i) for i in picked),
        (table, rows),
    )


def _traced(parts: Parts, column: str) -> Origin | Step | None:
    """Tell how a donor's figure was worked out, where it was; else name the cell."""
    told = (parts.whole[0] if parts.whole else parts).told
    return resolved(told[column]) if parts.is_donor(0) and column in told else _cell(parts, column)


def _cell(parts: Parts, column: str) -> Origin:
    known = str(parts.evidence_of(column)[0])
    part = parts.ids[0]
    if parts.is_donor(0):
        return Origin("donor", column, part.removeprefix(DONOR), known, _unit(column))
    return Origin("catalogue", column, part, known, _unit(column))


def dimension_of(column: str) -> str:
    """Name the dimension of a column's figures by the unit its name ends in; "" for a plain number."""
    return "" if column.endswith("mohm_per_m") else DIMENSIONS.get(column.rsplit("_", 1)[-1], "")


def _unit(column: str) -> str:
    return "mohm/m" if column.endswith("mohm_per_m") else UNITS.get(column.rsplit("_", 1)[-1], "")


@lru_cache(maxsize=1024)
def _evidence(table: Parts, column: str) -> Texts:
    """Take the exception a part states for a column, else the part's own evidence."""
    out = []
    for general, exceptions in zip(table.words["evidence"], table.words["exceptions"], strict=True):
        stated = dict(entry.split("=", 1) for entry in exceptions.split(";") if "=" in entry)
        own = {name.strip(): word.strip() for name, word in stated.items()}
        out.append(own.get(column, general))
    return np.array(out, dtype=object)
