"""The ratings that are said to fit a fuse's load and wire."""

import pytest

from bom.judge.verdict import Verdict
from bom.papers.fuse_rows import FuseRow, fuse_rows
from bom.session import Session

ASKED = ("fuse-holds-the-load", "fuse-guards-its-wire")


@pytest.fixture(scope="session")
def rows(sound: Session) -> list[FuseRow]:
    return fuse_rows(sound.build, sound.catalogue)


def test_a_chosen_fuse_that_passes_is_among_them(sound: Session, rows: list[FuseRow]) -> None:
    for row in rows:
        answers = [
            f.verdict for f in sound.build.findings if f.rule in ASKED and f.subject.split(" / ")[0] == row.place
        ]
        if set(answers) == {Verdict.PASS}:
            assert row.rated_a in row.fits, row.place


def test_each_lies_between_load_and_thinnest_wire(rows: list[FuseRow]) -> None:
    """IEC 60364-4-43 433.1, from memory: running amps <= rating <= ampacity of the wire."""
    assert any(len(row.fits) > 1 for row in rows)
    for row in rows:
        assert all(row.carry_a <= rated <= row.wire_a for rated in row.fits), row.place


def test_partial_range_fuses_are_not_offered(sound: Session, rows: list[FuseRow]) -> None:
    """IEC 60269-4, read second-hand on a public page: a partial-range fuse does not clear an overload."""
    for row in rows:
        place = sound.build.loom.place(row.place)
        table, body = sound.catalogue.families[place.family], sound.build.filled[row.place].part.word("body")[0]
        full = {
            rated
            for rated, element, shape in zip(
                table.number("rated_a"), table.word("element"), table.word("body"), strict=True
            )
            if element == "full range" and shape == body
        }
        assert set(row.fits) <= full, row.place
