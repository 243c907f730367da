"""The best of every combination of a network of choices, found by putting one choice after another aside.

A choice that is put aside leaves a table behind: for each setting of its neighbours the least that it, and all that
was put aside before it, can cost. Wires, fuses and joints hang together like the branches of a tree, so that few
neighbours ever meet in one table. Exact, in whole numbers.
Source: variable elimination for sums of small tables (nonserial dynamic programming), textbook method.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

Weights = npt.NDArray[np.int64]
Settings = npt.NDArray[np.intp]
Scope = tuple[int, ...]


@dataclass(frozen=True)
class _Aside:
    """A choice that was put aside: which setting is best for each setting of its neighbours."""

    choice: int
    neighbours: Scope
    best: Settings


@dataclass
class _Tables:
    """The tables that are left, each by the choices it is about, in their order."""

    sizes: Sequence[int]
    by_scope: dict[Scope, Weights]
    of_choice: list[set[Scope]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.of_choice = [set() for _ in self.sizes]
        for scope in self.by_scope:
            for choice in scope:
                self.of_choice[choice].add(scope)

    def neighbours(self, choice: int) -> Scope:
        return tuple(sorted({other for scope in self.of_choice[choice] for other in scope} - {choice}))

    def cells(self, choice: int) -> int:
        """Count the cells of the table that putting a choice aside would take."""
        count = self.sizes[choice]
        for other in self.neighbours(choice):
            count *= self.sizes[other]
        return count

    def take(self, scope: Scope) -> Weights:
        for choice in scope:
            self.of_choice[choice].discard(scope)
        return self.by_scope.pop(scope)

    def add(self, scope: Scope, table: Weights) -> None:
        if scope in self.by_scope:
            self.by_scope[scope] = self.by_scope[scope] + table
            return
        self.by_scope[scope] = table
        for choice in scope:
            self.of_choice[choice].add(scope)

    def put_aside(self, choice: int) -> _Aside:
        neighbours = self.neighbours(choice)
        axes = (*neighbours, choice)
        total: Weights = np.zeros((1,) * len(axes), dtype=np.int64)
        for scope in sorted(self.of_choice[choice]):
            total = total + _spread(self.take(scope), scope, axes)
        if neighbours:
            self.add(neighbours, total.min(axis=-1))
        return _Aside(choice, neighbours, total.argmin(axis=-1))


def _spread(table: Weights, scope: Scope, axes: Scope) -> Weights:
    """Turn a table so that each of its choices lies along its own axis of a greater one."""
    turned = table.transpose(sorted(range(len(scope)), key=lambda axis: axes.index(scope[axis])))
    sizes = iter(turned.shape)
    return turned.reshape([next(sizes) if choice in scope else 1 for choice in axes])


def least(sizes: Sequence[int], tables: Mapping[Scope, Weights]) -> list[int]:
    """Give the setting of each choice with which all tables together are least.

    sizes   how many settings each choice has
    tables  what each combination of the settings of some choices adds; their numbers in rising order
    Of equal combinations the one with the earlier settings of what is put aside last.
    """
    left = _Tables(sizes, dict(tables))
    settings = [0] * len(sizes)
    for aside in reversed(list(_all_aside(left))):
        settings[aside.choice] = int(aside.best[tuple(settings[other] for other in aside.neighbours)])
    return settings


def _all_aside(left: _Tables) -> Iterator[_Aside]:
    """Put every choice aside, the one that takes the smallest table first."""
    cells = {choice: left.cells(choice) for choice in range(len(left.sizes))}
    while cells:
        choice = min(cells, key=lambda number: (cells[number], number))
        aside = left.put_aside(choice)
        del cells[choice]
        for other in aside.neighbours:
            cells[other] = left.cells(other)
        yield aside
