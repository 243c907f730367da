"""Putting choices aside against trying every combination."""

import random
from collections.abc import Mapping
from itertools import combinations, product

import numpy as np
import pytest

from bom.choose.eliminate import MANY, Scope, Weights, least

NUMBERS = range(60)


def instance(number: int) -> tuple[list[int], dict[Scope, Weights]]:
    """Five choices of up to four settings, some pairs and threes of them with figures, some of them equal."""
    dice = random.Random(number)
    sizes = [dice.randint(1, 4) for _ in range(5)]
    scopes: list[Scope] = [(choice,) for choice in range(5)]
    scopes += [pair for pair in combinations(range(5), 2) if dice.random() < 0.6]
    scopes += [three for three in combinations(range(5), 3) if dice.random() < 0.2]
    draw = np.random.default_rng(number)
    return sizes, {scope: draw.integers(0, 6, [sizes[choice] for choice in scope]) for scope in scopes}


def together(tables: Mapping[Scope, Weights], settings: list[int]) -> int:
    return sum(int(table[tuple(settings[choice] for choice in scope)]) for scope, table in tables.items())


@pytest.mark.parametrize("many", [1, MANY])
@pytest.mark.parametrize("number", NUMBERS)
def test_no_combination_is_less(number: int, many: int) -> None:
    """Worked: every combination is counted; with and without dropping what another setting replaces."""
    sizes, tables = instance(number)
    fewest = min(together(tables, list(settings)) for settings in product(*map(range, sizes)))
    assert together(tables, least(sizes, tables, many)) == fewest


def test_a_chain_of_three() -> None:
    """Worked by hand: a costs 0 or 2, c costs 3 or 0; b must equal both. All at 0 costs 3, all at 1 costs 2."""
    unlike = np.array([[0, 9], [9, 0]])
    none = np.array([0, 0])
    tables = {(0,): np.array([0, 2]), (1,): none, (2,): np.array([3, 0]), (0, 1): unlike, (1, 2): unlike}
    assert least([2, 2, 2], tables) == [1, 1, 1]


def test_a_long_ladder_takes_no_longer_than_its_rungs() -> None:
    """Worked: 400 rungs of two choices; each prefers to differ from the one above, so settings alternate."""
    sizes = [2] * 800
    alike = np.array([[1, 0], [0, 1]])
    tables: dict[Scope, Weights] = {(choice,): np.zeros(2, dtype=np.int64) for choice in range(800)}
    tables[(0,)] = np.array([0, 1])
    for rung in range(0, 800, 2):
        tables[(rung, rung + 1)] = alike
        if rung:
            tables[(rung - 2, rung)] = alike
            tables[(rung - 1, rung + 1)] = alike
    settings = least(sizes, tables)
    assert together(tables, settings) == 0
    assert settings[:4] == [0, 1, 1, 0]
