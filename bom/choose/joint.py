"""One joint choice: one part a place, at least cost, with every pair rule as a constraint.

A place that cannot be filled stays open at a price no part reaches, so there is always an
answer and it says what is missing. Equal costs are settled by the order of the part ids.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from math import floor, log10

import numpy as np
import numpy.typing as npt

from bom.choose.eliminate import Scope, Weights, least
from bom.memory import Memory

Flags = npt.NDArray[np.bool_]
# Weights are whole numbers below about this, so that thousands of them may be summed before 64 bits run over.
MOST = 2**52


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


def choose(slots: Sequence[Slot], pairs: Sequence[Pair], memory: Memory) -> Mapping[str, int | None]:
    """Choose one candidate a slot; None where the slot must stay open.

    Slots that nothing ties together are chosen apart, and what was chosen before in this run is not chosen again.
    """
    slots = sorted(slots, key=lambda slot: slot.name)
    turned = sorted(map(_turned, pairs), key=lambda pair: (pair.first, pair.second))
    picked: dict[str, int | None] = {}
    for some, between in _apart(slots, [pair for pair in turned if not pair.fits.all()]):
        numbers = {slot.name: number for number, slot in enumerate(some)}
        bears = (
            tuple((slot.costs, slot.ranks) for slot in some),
            tuple((numbers[pair.first], numbers[pair.second], pair.fits.tobytes(), pair.loose) for pair in between),
        )
        best = memory.once("choice", bears, partial(_best, some, between))
        picked |= zip(numbers, best, strict=True)
    return {slot.name: picked[slot.name] for slot in slots}


def _turned(pair: Pair) -> Pair:
    """Turn a pair so that its names are in order."""
    return pair if pair.first <= pair.second else Pair(pair.second, pair.first, pair.fits.T, pair.loose)


def _apart(slots: Sequence[Slot], pairs: Sequence[Pair]) -> list[tuple[list[Slot], list[Pair]]]:
    """Part the slots into groups that no pair joins, each with its pairs."""
    group_of = {slot.name: {slot.name} for slot in slots}
    for pair in pairs:
        one, other = sorted((group_of[pair.first], group_of[pair.second]), key=len)
        if one is not other:
            other |= one
            group_of |= dict.fromkeys(one, other)
    parted: dict[int, tuple[list[Slot], list[Pair]]] = {}
    for slot in slots:
        parted.setdefault(id(group_of[slot.name]), ([], []))[0].append(slot)
    for pair in pairs:
        parted[id(group_of[pair.first])][1].append(pair)
    return list(parted.values())


def _best(slots: Sequence[Slot], pairs: Sequence[Pair]) -> list[int | None]:
    """Choose for slots that are tied together."""
    order = {slot.name: sorted(range(len(slot.costs)), key=slot.ranks.__getitem__) for slot in slots}
    picked = least([len(slot.costs) + 1 for slot in slots], _tables(slots, pairs, order))
    return [
        order[slot.name][index] if index < len(slot.costs) else None for slot, index in zip(slots, picked, strict=True)
    ]


def _tables(slots: Sequence[Slot], pairs: Sequence[Pair], order: Mapping[str, list[int]]) -> dict[Scope, Weights]:
    """Weigh every candidate, by rank, and every pair; the last setting of a slot leaves it open."""
    scale = _scale(slots, pairs)
    tables: dict[Scope, Weights] = {}
    for number, slot in enumerate(slots):
        money = np.rint(np.array(slot.costs, dtype=float) / scale.step).astype(np.int64)
        weights = np.append(money * scale.ranks + np.array(slot.ranks, dtype=np.int64), scale.opened)
        tables[(number,)] = weights[[*order[slot.name], -1]]
    numbers = {slot.name: number for number, slot in enumerate(slots)}
    for pair in pairs:
        first, second = order[pair.first], order[pair.second]
        against = np.zeros((len(first) + 1, len(second) + 1), dtype=np.int64)
        against[:-1, :-1] = ~pair.fits[first][:, second] * (scale.broken if pair.loose else scale.never)
        scope = (numbers[pair.first], numbers[pair.second])
        tables[scope] = tables[scope] + against if scope in tables else against
    return tables


@dataclass(frozen=True)
class _Scale:
    """What each kind of thing weighs: more than all the kinds before it together.

    step    of money, in the job's currency, that weighs as much as all ranks together
    ranks   that step of money
    broken  a pair that is broken
    opened  a slot that stays open
    never   a pair that may not be
    """

    step: float
    ranks: int
    broken: int
    opened: int
    never: int


def _scale(slots: Sequence[Slot], pairs: Sequence[Pair]) -> _Scale:
    ranks = 1 + sum(max(slot.ranks, default=0) for slot in slots)
    loose = 1 + sum(1 for pair in pairs if pair.loose)
    dearest = [max(slot.costs, default=0.0) for slot in slots]
    step = _least_step(sum(dearest), MOST // (ranks * loose * (len(slots) + 1)))
    broken = ranks * (1 + sum(round(cost / step) for cost in dearest))
    opened = broken * loose
    return _Scale(step, ranks, broken, opened, opened * (len(slots) + 1))


def _least_step(dearest: float, most: int) -> float:
    """Give the smallest power of ten of money of which no more than so many are asked for."""
    return 10.0 ** (floor(log10(max(dearest, 1e-3) / most)) + 1)
