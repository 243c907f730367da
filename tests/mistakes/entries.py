"""The trade's known mistakes as data: each a bad job, its cured twin, and what must be said of them."""

import tomllib
from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from bom.judge.harm import TRADE_TAGS
from bom.read.edits import add, drop, put

FOLDER = Path(__file__).parent
HOW = ("decided", "step printed", "asked")
MOST_CHANGES = 3
LEAVE_OUT = "-"


@dataclass(frozen=True)
class Mistake:
    """One known mistake.

    subject     the file it stands in
    tag         STOP, WARN, ASK or NOTE, as the trade ranks it
    how         decided by a rule, a step printed in the papers, or asked of the builder
    bad         keys of the plain bike set otherwise; "-" leaves a key out
    cured       keys of the bad job set otherwise: its twin
    says        what the finding, or the page, must say of the bad job
    by_hand     how these figures were worked out
    rule, place the rule that must speak, and where
    verdict     the answer, where it is not that of the tag; `because` says why
    cured_says  what the page must say of the twin, where a step is printed
    more        bikes/<name>.toml added to the plain bike
    """

    subject: str
    name: str
    tag: str
    how: str
    bad: Mapping[str, Any]
    cured: Mapping[str, Any]
    says: tuple[str, ...]
    by_hand: str
    rule: str = ""
    place: str = ""
    verdict: str = ""
    because: str = ""
    cured_says: tuple[str, ...] = ()
    more: tuple[str, ...] = ()

    @property
    def expected(self) -> str:
        """Name the verdict that must be given."""
        return self.verdict or TRADE_TAGS[self.tag]

    def jobs(self) -> tuple[dict[str, Any], dict[str, Any]]:
        """Give the bad job and its cured twin as plain data."""
        bad = _edited(_bike(self.more), self.bad)
        return bad, _edited(bad, self.cured)


def known() -> list[Mistake]:
    """Read every known mistake, in the order of the files and their entries."""
    return [
        _mistake(path.stem, entry)
        for path in sorted((FOLDER / "known").glob("*.toml"))
        for entry in tomllib.loads(path.read_text(encoding="utf-8"))["mistakes"]
    ]


def _mistake(subject: str, entry: dict[str, Any]) -> Mistake:
    lists = {"says", "cured_says"}
    values: dict[str, Any] = {
        key: tuple(value) if key in lists else value for key, value in entry.items() if key != "with"
    }
    return Mistake(subject=subject, more=tuple(entry.get("with", ())), **values)


def _bike(more: tuple[str, ...]) -> dict[str, Any]:
    """Give the plain bike with lists added to it."""
    bike = _read("plain")
    for name in more:
        add(bike, _read(name))
    return bike


def _read(name: str) -> dict[str, Any]:
    return tomllib.loads((FOLDER / "bikes" / f"{name}.toml").read_text(encoding="utf-8"))


def _edited(job: dict[str, Any], edits: Mapping[str, Any]) -> dict[str, Any]:
    edited = deepcopy(job)
    for path, value in edits.items():
        if value == LEAVE_OUT:
            drop(edited, path)
        else:
            put(edited, path, value)
    return edited
