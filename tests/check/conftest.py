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
