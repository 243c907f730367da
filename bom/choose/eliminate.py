"""The best of every combination of a network of choices, found by putting one choice after another aside.

A choice that is put aside leaves a table behind: for each setting of its neighbours the least that it, and all that
was put aside before it, can cost. Wires, fuses and joints hang together like the branches of a tree, so that few
neighbours ever meet in one table. Exact, in whole numbers.
Source: variable elimination for sums of small tables (nonserial dynamic programming), textbook method.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from heapq import heapify, heappop, heappush
from math import prod

import numpy as np
import numpy.typing as npt

Weights = npt.NDArray[np.int64]
Settings = npt.NDArray[np.intp]
Scope = tuple[int, ...]


MANY = 200_000  # cells of a table from which it pays to drop the settings that another can replace


@dataclass(frozen=True)
class _Aside:
    """A choice that was put aside: which of its settings is best for each of those its neighbours had then."""

    choice: int
    neighbours: Scope
    best: Settings
    kept: list[int]
    neighbours_kept: list[list[int]]


class _Tables:
    """The tables that are left, each by the choices it is about, in their order; and the settings that are left."""

    def __init__(self, sizes: Sequence[int], tables: Mapping[Scope, Weights]) -> None:
        self.kept = [list(range(size)) for size in sizes]
        self.by_scope = dict(tables)
        self.of_choice: list[set[Scope]] = [set() for _ in sizes]
        for scope in tables:
            for choice in scope:
                self.of_choice[choice].add(scope)

    def neighbours(self, choice: int) -> Scope:
        return tuple(sorted({other for scope in self.of_choice[choice] for other in scope} - {choice}))

    def cells(self, choice: int) -> int:
        """Count the cells of the table that putting a choice aside would take."""
        return prod(len(self.kept[other]) for other in (choice, *self.neighbours(choice)))

    def put_aside(self, choice: int) -> _Aside:
        neighbours = self.neighbours(choice)
        axes = (*neighbours, choice)
        spread = [_spread(self._take(scope), scope, axes) for scope in sorted(self.of_choice[choice])]
        total = sum(spread[1:], start=spread[0])
        if neighbours:
            self._add(neighbours, total.min(axis=-1))
        return _Aside(choice, neighbours, total.argmin(axis=-1), self.kept[choice], [self.kept[n] for n in neighbours])

    def slim(self, choice: int) -> None:
        """Drop the settings that another is at least as good as, whatever its neighbours do."""
        size = len(self.kept[choice])
        more = np.zeros((size, size), dtype=np.int64)  # by how much the column may be worse than the row, at most
        for scope in self.of_choice[choice]:
            rows = np.moveaxis(self.by_scope[scope], scope.index(choice), 0).reshape(size, -1)
            more += np.array([(rows - row).max(axis=1) for row in rows])
        replaceable = (more < 0) | ((more == 0) & np.tri(size, k=-1, dtype=bool))
        keep = np.flatnonzero(~replaceable.any(axis=1)).tolist()
        self.kept[choice] = [self.kept[choice][index] for index in keep]
        for scope in self.of_choice[choice]:
            self.by_scope[scope] = self.by_scope[scope].take(keep, axis=scope.index(choice))

    def _take(self, scope: Scope) -> Weights:
        for choice in scope:
            self.of_choice[choice].discard(scope)
        return self.by_scope.pop(scope)

    def _add(self, scope: Scope, table: Weights) -> None:
        there = self.by_scope.get(scope)
        self.by_scope[scope] = table if there is None else there + table
        for choice in scope:
            self.of_choice[choice].add(scope)


def _spread(table: Weights, scope: Scope, axes: Scope) -> Weights:
    """Turn a table so that each of its choices lies along its own axis of a greater one."""
    last = scope.index(axes[-1])
    turned = table.transpose([*range(last), *range(last + 1, len(scope)), last])
    sizes = dict(zip(scope, table.shape, strict=True))
    return turned.reshape([sizes.get(choice, 1) for choice in axes])


def least(sizes: Sequence[int], tables: Mapping[Scope, Weights], many: int = MANY) -> list[int]:
    """Give the setting of each choice with which all tables together are least; of equal ones always the same.

    sizes   how many settings each choice has
    tables  what each combination of the settings of some choices adds; their numbers in rising order; one of every
            choice alone
    many    cells of a table before which settings are slimmed
    """
    settings = [0] * len(sizes)
    for aside in reversed(list(_all_aside(_Tables(sizes, tables), many))):
        beside = zip(aside.neighbours_kept, aside.neighbours, strict=True)
        at = tuple(kept.index(settings[other]) for kept, other in beside)
        settings[aside.choice] = aside.kept[int(aside.best[at])]
    return settings


def _all_aside(left: _Tables, many: int) -> Iterator[_Aside]:
    """Put every choice aside, the one that takes the smallest table first; slim what meets in a great one before."""
    cells = {choice: left.cells(choice) for choice in range(len(left.kept))}
    waiting = [(count, choice) for choice, count in cells.items()]
    heapify(waiting)
    slimmed: set[int] = set()
    while waiting:
        count, choice = heappop(waiting)
        if cells.get(choice) != count:
            continue  # done, or counted anew since
        changed = set(left.neighbours(choice))
        if count > many and choice not in slimmed:
            slimmed.add(choice)
            for other in (choice, *sorted(changed)):
                left.slim(other)
            changed = {choice, *changed}.union(*(left.neighbours(other) for other in changed))
        else:
            yield left.put_aside(choice)
            del cells[choice]
        for other in sorted(changed):
            cells[other] = left.cells(other)
            heappush(waiting, (cells[other], other))
