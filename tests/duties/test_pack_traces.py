"""Where a cell's volts come from, as `why` prints it."""

from collections.abc import Callable

import pytest

from bom.duties.pack_traces import cell_v
from bom.trace import Origin


@pytest.mark.parametrize(
    ("name", "words"),
    [("fifth_v", "from memory; the maker's curve rules"), ("full_v", "common practice of cell makers")],
)
def test_a_fifth_of_charge_has_a_source_of_its_own(name: str, words: str, edited: Callable[..., object]) -> None:
    """Trade: full, marked and empty volts stand on a cell's sheet; those at a fifth of its charge on a curve alone."""
    origin = cell_v(edited("street-72"), name).origin()
    assert isinstance(origin, Origin)
    assert origin.note.startswith(words)
