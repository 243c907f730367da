"""Compare an answer with a printed figure, to half of its last printed digit."""

from collections.abc import Callable
from decimal import Decimal

import pytest


@pytest.fixture
def agrees() -> Callable[[float, str], bool]:
    def compare(answer: float, printed: str) -> bool:
        exponent = Decimal(printed).as_tuple().exponent
        assert isinstance(exponent, int)
        half_digit = 0.5 * 10.0**exponent
        return abs(float(answer) - float(printed)) <= half_digit * (1 + 1e-9)

    return compare
