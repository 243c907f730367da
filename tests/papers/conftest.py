"""One sound build and one hostile one, worked out once for all paper tests."""

from pathlib import Path

import pytest

from bom.data import folder
from bom.papers.papers import write_papers
from bom.session import Session, run

STARTER = folder("templates") / "jobs" / "street-72.toml"
HOSTILE = {
    'title = "Street twin, 72 V class"': 'title = "=1+1 & | *stars* `ticks` <b>"',
    'customer = "Demonstration"': 'customer = "+cmd|calc"',
    'name = "horn"\n': 'name = "@SUM(A1)"\n',
    'feeds = ["horn"]': 'feeds = ["@SUM(A1)"]',
    'name = "regulator"': 'name = "-2+3"',
    'pack_resistance = "38 mohm"': "",
}
PINS = '\n[pins]\nconverter = "CV-0101"\n"main fuse" = "MF-0101"\n'


def papers_of(path: Path) -> Session:
    return run(path, folder("catalog"), lambda _: None)


@pytest.fixture(scope="session")
def sound() -> Session:
    return papers_of(STARTER)


@pytest.fixture(scope="session")
def hostile(tmp_path_factory: pytest.TempPathFactory) -> Session:
    """A job whose names try to be formulas and Markdown, with parts pinned that can't pass."""
    text = STARTER.read_text(encoding="utf-8")
    for plain, nasty in HOSTILE.items():
        assert plain in text, f"the starter job no longer holds {plain!r}"
        text = text.replace(plain, nasty)
    path = tmp_path_factory.mktemp("jobs") / "hostile.toml"
    path.write_text(text + PINS, encoding="utf-8")
    return papers_of(path)


@pytest.fixture(scope="session")
def framed() -> Session:
    """The starter whose lamps return through the frame."""
    return papers_of(folder("templates") / "jobs" / "frame-return-105.toml")


@pytest.fixture(scope="session", params=["sound", "hostile"])
def papers(request: pytest.FixtureRequest) -> Session:
    found = request.getfixturevalue(request.param)
    assert isinstance(found, Session)
    return found


@pytest.fixture(scope="session")
def written(papers: Session, tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    return write_papers(papers, tmp_path_factory.mktemp("papers"))
