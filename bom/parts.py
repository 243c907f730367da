"""A family's parts as columns: the same attribute serves one part and the whole table."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from typing import TypeVar

import numpy as np
import numpy.typing as npt

Column = npt.NDArray[np.float64]
Texts = npt.NDArray[np.object_]
Picked = TypeVar("Picked")
Curve = Mapping[str, tuple[Mapping[str, object], ...]]


@dataclass(frozen=True)
class Rating:
    """Ratings of a column (or, spread out, a grid) of parts, each with how it is known.

    values    NaN is not known
    evidence  one word of evidence for each value
    """

    values: Column
    evidence: Texts

    def down(self) -> "Rating":
        """Spread the parts over the rows of a grid of pairs."""
        return Rating(self.values[:, None], self.evidence[:, None])

    def across(self) -> "Rating":
        """Spread the parts over the columns of a grid of pairs."""
        return Rating(self.values[None, :], self.evidence[None, :])

    def or_greater(self, other: "Rating") -> "Rating":
        """Take the greater of two figures, each known as it is; one that is not known counts as the lesser."""
        wins = np.nan_to_num(other.values, nan=-np.inf) > np.nan_to_num(self.values, nan=-np.inf)
        return Rating(np.where(wins, other.values, self.values), np.where(wins, other.evidence, self.evidence))

    def with_values(self, values: Column) -> "Rating":
        """Give other figures worked out from these, known as these are."""
        return Rating(values, self.evidence)


@dataclass(frozen=True)
class Words:
    """Words of a column of parts, each with how it is known."""

    values: tuple[str, ...]
    evidence: Texts


@dataclass(frozen=True, eq=False)
class Parts:
    """Parts of one family.

    family    its name
    ids       part ids, in the order of every column
    numbers   number columns; NaN is not known
    words     text columns; "" is not known
    curves    child rows of each part, by curve name then by part id (or by the curve's own key)
    donor     True for the donor's own part, False for one of the catalogue
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
        return Rating(self.numbers[name], self.evidence_of(name))

    def words_of(self, name: str) -> Words:
        """Give a text column with the evidence of each word."""
        return Words(self.words[name], self.evidence_of(name))

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


@lru_cache(maxsize=1024)
def _evidence(table: Parts, column: str) -> Texts:
    """Take the exception a part states for a column, else the part's own evidence."""
    out = []
    for general, exceptions in zip(table.words["evidence"], table.words["exceptions"], strict=True):
        stated = dict(entry.split("=", 1) for entry in exceptions.split(";") if "=" in entry)
        own = {name.strip(): word.strip() for name, word in stated.items()}
        out.append(own.get(column, general))
    return np.array(out, dtype=object)
