"""Each published figure kept as data names its document, edition and table, and says how it was seen."""

import csv
from pathlib import Path

import pytest

FILES = sorted((Path(__file__).parent / "data").glob("*.csv"))
SEEN = {"first hand", "read second-hand on a public page", "from memory", "worked by hand", "worked apart"}


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_every_row_says_where_it_is_from(path):
    with path.open(encoding="utf-8", newline="") as stream:
        rows = list(csv.DictReader(stream))
    assert rows
    for row in rows:
        assert row["seen"] in SEEN
        assert all(row[column] for column in ("value", "unit", "document", "edition", "table")), row


def test_there_are_files():
    assert len(FILES) > 5
