"""The joint choice against counting every combination, on small instances made at random."""

import random
from collections.abc import Mapping, Sequence
from itertools import combinations, product

import numpy as np
import pytest

from bom.choose.joint import Pair, Slot, choose
from bom.memory import Memory

# Any figures will do that keep the order: a slot left open, then a pair broken, then money.
OPEN_COST, BROKEN_COST = 1e5, 1e4

Picks = Mapping[str, int | None]
NUMBERS = range(200)
TURNED = range(100)


def instance(number: int) -> tuple[list[Slot], list[Pair]]:
    """Four slots of up to four candidates; prices repeat so that equals occur; some pairs are loose."""
    dice = random.Random(number)
    slots = []
    for name in ("a", "b", "c", "d"):
        size = dice.randint(0, 4) if dice.random() < 0.2 else dice.randint(1, 4)
        costs = tuple(dice.choice((0.0, 1.0, 1.01, 2.5, 7.99, 40.0)) for _ in range(size))
        slots.append(Slot(name, costs, tuple(dice.sample(range(1, size + 1), size))))
    pairs = []
    for first, second in combinations(slots, 2):
        shape = (len(first.costs), len(second.costs))
        if min(shape) and dice.random() < 0.7:
            fits = np.array([[dice.random() < 0.5 for _ in range(shape[1])] for _ in range(shape[0])], dtype=bool)
            pairs.append(Pair(first.name, second.name, fits, loose=dice.random() < 0.25))
    return slots, pairs


def score(picks: Picks, slots: Sequence[Slot], pairs: Sequence[Pair]) -> tuple[float, int]:
    """Price and rank of a combination; infinite where it is not allowed."""
    cost, rank = 0.0, 0
    for slot in slots:
        index = picks[slot.name]
        cost += OPEN_COST if index is None else slot.costs[index]
        rank += 0 if index is None else slot.ranks[index]
    for pair in pairs:
        one, other = picks[pair.first], picks[pair.second]
        if one is not None and other is not None and not pair.fits[one, other]:
            cost += BROKEN_COST if pair.loose else np.inf
    return round(cost, 6), rank


def best_by_counting(slots: Sequence[Slot], pairs: Sequence[Pair]) -> tuple[float, int]:
    choices = [(*range(len(slot.costs)), None) for slot in slots]
    names = [slot.name for slot in slots]
    return min(score(dict(zip(names, picks, strict=True)), slots, pairs) for picks in product(*choices))


@pytest.mark.parametrize("number", NUMBERS)
def test_no_combination_is_cheaper(number: int) -> None:
    slots, pairs = instance(number)
    assert score(choose(slots, pairs, Memory()), slots, pairs) == best_by_counting(slots, pairs)


def shuffled(
    number: int, slots: Sequence[Slot], pairs: Sequence[Pair]
) -> tuple[list[Slot], list[Pair], dict[str, list[int]]]:
    """Turn slots, candidates and pairs about; give for each slot where its new candidates stood before."""
    dice = random.Random(number + 1000)
    order = {slot.name: dice.sample(range(len(slot.costs)), len(slot.costs)) for slot in slots}
    turned = [
        Slot(s.name, tuple(s.costs[i] for i in order[s.name]), tuple(s.ranks[i] for i in order[s.name])) for s in slots
    ]
    grids = [Pair(p.first, p.second, p.fits[np.ix_(order[p.first], order[p.second])], p.loose) for p in pairs]
    flipped = [Pair(p.second, p.first, p.fits.T, p.loose) if dice.random() < 0.5 else p for p in grids]
    return dice.sample(turned, len(turned)), dice.sample(flipped, len(flipped)), order


@pytest.mark.parametrize("number", TURNED)
def test_order_given_does_not_matter(number: int) -> None:
    slots, pairs = instance(number)
    straight = choose(slots, pairs, Memory())
    turned, grids, order = shuffled(number, slots, pairs)
    back = {name: None if pick is None else order[name][pick] for name, pick in choose(turned, grids, Memory()).items()}
    assert back == straight


def test_a_cent_decides_beside_open_places() -> None:
    slots = [Slot("open", (), ()), Slot("a", (100.01, 100.0), (1, 2)), Slot("b", (5.0,), (1,))]
    assert choose(slots, [], Memory()) == {"open": None, "a": 1, "b": 0}


def test_equal_prices_go_to_the_lower_rank() -> None:
    assert choose([Slot("a", (3.0, 3.0, 3.0), (2, 1, 3))], [], Memory()) == {"a": 1}


def test_dearer_parts_that_go_together_beat_an_open_place() -> None:
    fits = np.array([[False, True], [False, False]])
    slots = [Slot("a", (900.0, 1.0), (1, 2)), Slot("b", (1.0, 900.0), (1, 2))]
    assert choose(slots, [Pair("a", "b", fits, loose=False)], Memory()) == {"a": 0, "b": 1}


def test_one_place_stays_open_where_nothing_goes_together() -> None:
    nothing = np.zeros((1, 1), dtype=bool)
    picks = choose([Slot("a", (1.0,), (1,)), Slot("b", (2.0,), (1,))], [Pair("a", "b", nothing, loose=False)], Memory())
    assert picks == {"a": 0, "b": None}


def test_a_loose_pair_is_kept_where_it_can_be() -> None:
    fits = np.array([[False, True]])
    slots = [Slot("pinned", (1.0,), (1,)), Slot("b", (1.0, 500.0), (1, 2))]
    assert choose(slots, [Pair("pinned", "b", fits, loose=True)], Memory()) == {"pinned": 0, "b": 1}


def test_a_loose_pair_is_broken_rather_than_left_open() -> None:
    slots = [Slot("pinned", (1.0,), (1,)), Slot("b", (5.0, 3.0), (1, 2))]
    nothing = np.zeros((1, 2), dtype=bool)
    assert choose(slots, [Pair("pinned", "b", nothing, loose=True)], Memory()) == {"pinned": 0, "b": 1}


@pytest.mark.parametrize("number", TURNED)
def test_a_small_currency_unit_changes_nothing(number: int) -> None:
    slots, pairs = instance(number)
    dear = [Slot(slot.name, tuple(cost * 20000 for cost in slot.costs), slot.ranks) for slot in slots]
    assert score(choose(dear, pairs, Memory()), slots, pairs) == score(choose(slots, pairs, Memory()), slots, pairs)
