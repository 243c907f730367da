"""Every family of parts is there to be used: in a starter job or in a sound build it stands at a place or is bought.

Trade: a catalogue for twelve classes of volts that holds fewer than 450 parts lacks sizes (an estimate).
"""

from collections.abc import Callable
from pathlib import Path

import pytest

from bom.build import Build
from bom.read.catalogue import Catalogue
from bom.read.families import FAMILIES

STARTERS = ("street-72", "moped-48", "frame-return-105", "positive-earth-60")
NAMES = sorted(path.stem for path in Path(__file__).parent.glob("*.toml") if path.stem != "expected")


@pytest.fixture(scope="session")
def used(sound: Callable[[str], Build], converted: Callable[..., Build]) -> set[str]:
    builds = [*map(sound, NAMES), *map(converted, STARTERS)]
    standing = {entry.place.family for build in builds for entry in build.filled.values()}
    return standing | {line.family for build in builds for line in build.bill.lines}


@pytest.mark.parametrize("family", [family.name for family in FAMILIES])
def test_every_family_is_used(family: str, used: set[str]) -> None:
    assert family in used


def test_the_catalogue_holds_enough(catalogue: Catalogue) -> None:
    assert sum(len(parts) for parts in catalogue.families.values()) >= 450


def test_every_part_can_be_bought(catalogue: Catalogue) -> None:
    """A part without an offer is never chosen."""
    lacking = [part for parts in catalogue.families.values() for part in parts.ids if part not in catalogue.offers]
    assert lacking == []
