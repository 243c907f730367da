"""Compare an answer with a printed figure, to half of its last printed digit; read tables of printed figures.

A test with an argument `<table>_row` runs once for each row of data/<table>.csv. Each row says what document
its figure stands in and how it was seen.
"""

import csv
from collections.abc import Callable
from decimal import Decimal
from pathlib import Path

import pytest

DATA = Path(__file__).parent / "data"


def table(name: str) -> list[dict[str, str]]:
    with (DATA / f"{name}.csv").open(encoding="utf-8", newline="") as handle:
        return list(csv.DictReader(handle))


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    for argument in metafunc.fixturenames:
        if argument.endswith("_row"):
            rows = table(argument.removesuffix("_row"))
            names = [" ".join(list(row.values())[:4]) for row in rows]
            metafunc.parametrize(argument, rows, ids=names)


@pytest.fixture
def read_table() -> Callable[[str], list[dict[str, str]]]:
    return table


@pytest.fixture
def agrees() -> Callable[[float, str], bool]:
    def compare(answer: float, printed: str) -> bool:
        exponent = Decimal(printed).as_tuple().exponent
        assert isinstance(exponent, int)
        half_digit = 0.5 * 10.0**exponent
        return abs(float(answer) - float(printed)) <= half_digit * (1 + 1e-9)

    return compare
