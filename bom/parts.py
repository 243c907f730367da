"""A family's parts as columns: the same attribute serves one part and the whole table."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

Column = npt.NDArray[np.float64]
Flags = npt.NDArray[np.bool_]
HEARSAY = ("seller's word", "unknown")
Curve = Mapping[str, tuple[Mapping[str, object], ...]]


@dataclass(frozen=True)
class Rating:
    """A number column that knows its name, so that an answer can say how the rating is known."""

    column: str
    values: Column


@dataclass(frozen=True)
class Words:
    """A text column that knows its name."""

    column: str
    values: tuple[str, ...]


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
        """Give a number column with its name."""
        return Rating(name, self.numbers[name])

    def words_of(self, name: str) -> Words:
        """Give a text column with its name."""
        return Words(name, self.words[name])

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
        """Keep some parts, in the order given."""
        picked = list(indices)
        return Parts(
            self.family,
            tuple(self.ids[i] for i in picked),
            {name: column[picked] for name, column in self.numbers.items()},
            {name: tuple(column[i] for i in picked) for name, column in self.words.items()},
            self.curves,
            tuple(self.is_donor(i) for i in picked),
            self._taken(picked),
        )

    def _taken(self, picked: Sequence[int]) -> "tuple[Parts, tuple[int, ...]]":
        if self.whole is None:
            return self, tuple(picked)
        table, rows = self.whole
        return table, tuple(rows[i] for i in picked)

    def joined(self, other: "Parts") -> "Parts":
        """Add another table's parts of the same family behind these."""
        curves = {
            name: {**self.curves.get(name, {}), **other.curves.get(name, {})} for name in {*self.curves, *other.curves}
        }
        return Parts(
            self.family,
            self.ids + other.ids,
            {name: np.concatenate([column, other.numbers[name]]) for name, column in self.numbers.items()},
            {name: column + other.words[name] for name, column in self.words.items()},
            curves,
            tuple(self.is_donor(i) for i in range(len(self))) + tuple(other.is_donor(i) for i in range(len(other))),
        )

    def hearsay(self, column: str) -> Flags:
        """Mark the parts whose rating in a column is only the seller's word, or of unknown origin."""
        return np.array([self.evidence(index, column) in HEARSAY for index in range(len(self))], dtype=bool)

    def evidence(self, index: int, column: str) -> str:
        """Say how one rating of one part is known: its own exception, or the part's evidence."""
        for entry in self.words["exceptions"][index].split(";"):
            name, _, evidence = entry.partition("=")
            if name.strip() == column:
                return evidence.strip()
        return self.words["evidence"][index]
