"""Shared by the tests of `why`: the starter jobs as sessions, each run once."""

from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest

from bom.session import Session, run


@pytest.fixture(scope="session")
def session_of(project: Path) -> Callable[[str], Session]:
    @cache
    def make(starter: str) -> Session:
        return run(project / "templates" / "jobs" / f"{starter}.toml", project / "catalog", lambda text: None)

    return make


@pytest.fixture
def below_60_v() -> dict[str, object]:
    """Give the edits that make the street bike one of 54.6 V with a converter of common minus."""
    return {
        "pack.series": 13,
        "pack.bms.low_cut": "40 V",
        "controller.over_voltage": "58 V",
        "controller.supply_min": "36 V",
        "pins.converter": "CV-0103",
    }
