"""One joint choice: one part a place, at least cost, with every pair rule as a constraint.

A place that cannot be filled stays open at a price no part reaches, so there is always an
answer and it says what is missing. Equal costs are settled by the order of the part ids.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import floor, log10

import numpy as np
import numpy.typing as npt

from bom.choose.eliminate import Scope, Weights, least

Flags = npt.NDArray[np.bool_]
# Weights are whole numbers below this, so that no sum of them runs over.
MOST = 2**56


@dataclass(frozen=True)
class Slot:
    """A place to fill: what each candidate costs, and its rank among equals (lower wins)."""

    name: str
    costs: tuple[float, ...]
    ranks: tuple[int, ...]


@dataclass(frozen=True)
class Pair:
    """Two places that bear on each other: which candidates of the first go with which of the second.

    loose  one of them is forced, so the pair may be broken, at a price
    """

    first: str
    second: str
    fits: Flags
    loose: bool


def choose(slots: Sequence[Slot], pairs: Sequence[Pair]) -> Mapping[str, int | None]:
    """Choose one candidate a slot; None where the slot must stay open."""
    slots = sorted(slots, key=lambda slot: slot.name)
    pairs = sorted((_turned(pair) for pair in pairs), key=lambda pair: (pair.first, pair.second, pair.fits.tobytes()))
    kept = _undominated(slots, pairs)
    slots = [_slimmer(slot, kept[slot.name]) for slot in slots]
    pairs = [replace(pair, fits=pair.fits[np.ix_(kept[pair.first], kept[pair.second])]) for pair in pairs]
    picked = least([len(slot.costs) + 1 for slot in slots], _tables(slots, pairs))
    return {
        slot.name: kept[slot.name][index] if index < len(slot.costs) else None
        for slot, index in zip(slots, picked, strict=True)
    }


def _undominated(slots: Sequence[Slot], pairs: Sequence[Pair]) -> dict[str, list[int]]:
    """List, by rank, the candidates of each slot that no other one of the slot can replace.

    One replaces another when it costs less (or as much, with a lower rank) and goes with every partner the
    other goes with. No best answer is lost, and dropping one may make its partners replaceable: repeat.
    """
    kept = {slot.name: sorted(range(len(slot.costs)), key=lambda i: slot.ranks[i]) for slot in slots}
    sides = _sides(pairs)
    waiting = [slot for slot in slots if slot.costs]
    while waiting:
        shrunk: set[str] = set()
        for slot in waiting:
            best = _leaders(slot, kept, sides[slot.name])
            if len(best) < len(kept[slot.name]):
                kept[slot.name] = best
                shrunk.update(other for other, _ in sides[slot.name])
        waiting = [slot for slot in slots if slot.name in shrunk]
    return kept


def _sides(pairs: Sequence[Pair]) -> Mapping[str, list[tuple[str, Flags]]]:
    """List, for each slot, its partner slots with the grid seen from its own side."""
    sides: dict[str, list[tuple[str, Flags]]] = defaultdict(list)
    for pair in pairs:
        sides[pair.first].append((pair.second, pair.fits))
        sides[pair.second].append((pair.first, pair.fits.T))
    return sides


def _leaders(slot: Slot, kept: Mapping[str, list[int]], sides: Sequence[tuple[str, Flags]]) -> list[int]:
    """Of a slot's candidates keep those that no cheaper one goes with all the same partners as."""
    own = sorted(kept[slot.name], key=lambda index: (slot.costs[index], slot.ranks[index]))
    grids = [grid[np.ix_(own, kept[other])] for other, grid in sides]
    partners = np.packbits(np.concatenate([np.ones((len(own), 1), dtype=bool), *grids], axis=1), axis=1)
    lost = (partners[:, None] & ~partners[None]).any(axis=2)  # partners the row has and the column lacks
    replaceable = np.tril(~lost, k=-1).any(axis=1)
    return sorted((own[i] for i in np.flatnonzero(~replaceable)), key=lambda index: slot.ranks[index])


def _turned(pair: Pair) -> Pair:
    """Turn a pair so that its names are in order: the model must not depend on the order it is given in."""
    return pair if pair.first <= pair.second else Pair(pair.second, pair.first, pair.fits.T, pair.loose)


def _slimmer(slot: Slot, kept: Sequence[int]) -> Slot:
    return Slot(slot.name, tuple(slot.costs[i] for i in kept), tuple(slot.ranks[i] for i in kept))


def _tables(slots: Sequence[Slot], pairs: Sequence[Pair]) -> dict[Scope, Weights]:
    """Weigh every candidate and every pair in whole numbers; the last setting of a slot leaves it open.

    A rank weighs least, then money, then breaking a pair, then leaving a slot open, then what may not be: each
    more than all before it together.
    """
    ranks = 1 + sum(max(slot.ranks, default=0) for slot in slots)
    loose = 1 + sum(1 for pair in pairs if pair.loose)
    dearest = sum(max(slot.costs, default=0.0) for slot in slots)
    step = _least_step(dearest, MOST // (ranks * loose * (len(slots) + 1)))
    broken = ranks * (1 + sum(max((round(cost / step) for cost in slot.costs), default=0) for slot in slots))
    opened = broken * loose
    never = opened * (len(slots) + 1)
    tables: dict[Scope, Weights] = {}
    for number, slot in enumerate(slots):
        money = [ranks * round(cost / step) + rank for cost, rank in zip(slot.costs, slot.ranks, strict=True)]
        tables[(number,)] = np.array([*money, opened], dtype=np.int64)
    numbers = {slot.name: number for number, slot in enumerate(slots)}
    for pair in pairs:
        if not pair.fits.all():
            scope = (numbers[pair.first], numbers[pair.second])
            against = np.pad(np.where(pair.fits, 0, broken if pair.loose else never), ((0, 1), (0, 1)))
            tables[scope] = tables[scope] + against if scope in tables else against
    return tables


def _least_step(dearest: float, most: int) -> float:
    """Give the smallest power of ten of money of which no more than so many are asked for."""
    return 10.0 ** (floor(log10(max(dearest, 1e-3) / most)) + 1)
