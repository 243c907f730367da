"""One joint choice: one part a place, at least cost, with every pair rule as a constraint.

A place that cannot be filled stays open at a price no part reaches, so there is always an
answer and it says what is missing. Equal costs are settled by the order of the part ids.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
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
    order = {slot.name: sorted(range(len(slot.costs)), key=slot.ranks.__getitem__) for slot in slots}
    picked = least([len(slot.costs) + 1 for slot in slots], _tables(slots, pairs, order))
    return {
        slot.name: order[slot.name][index] if index < len(slot.costs) else None
        for slot, index in zip(slots, picked, strict=True)
    }


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
        if pair.fits.all():
            continue
        turned = pair if pair.first <= pair.second else Pair(pair.second, pair.first, pair.fits.T, pair.loose)
        first, second = order[turned.first], order[turned.second]
        against = np.zeros((len(first) + 1, len(second) + 1), dtype=np.int64)
        against[:-1, :-1] = ~turned.fits[first][:, second] * (scale.broken if pair.loose else scale.never)
        scope = (numbers[turned.first], numbers[turned.second])
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
