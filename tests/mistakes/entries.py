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
STARTERS = FOLDER.parent.parent / "templates" / "jobs"
HOW = ("decided", "step printed", "asked")
MOST_CHANGES = 3
LEAVE_OUT = "-"


@dataclass(frozen=True)
class Mistake:
    """One known mistake.

    subject     the file it stands in
    tag         STOP, WARN, ASK or NOTE, as the trade ranks it
    how         decided by a rule, a step printed in the papers, or asked of the builder
    bad         keys of the bike set otherwise; "-" leaves a key out
    cured       keys of the bad job set otherwise: its twin
    says        what the finding, or the page, must say of the bad job
    by_hand     how these figures were worked out
    rule, place the rule that must speak, and where
    verdict     the answer, where it is not that of the tag; `because` says why
    cured_says  what the page must say of the twin, where a step is printed
    more        bikes/<name>.toml added to the plain bike
    bike        the starter job that stands in the place of the plain bike
    further     it is none of the trade's list, but as well known
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
    bike: str = ""
    further: bool = False

    @property
    def expected(self) -> str:
        """Name the verdict that must be given."""
        return self.verdict or TRADE_TAGS[self.tag]

    def jobs(self) -> tuple[dict[str, Any], dict[str, Any]]:
        """Give the bad job and its cured twin as plain data."""
        bad = _edited(_bike(self.bike, self.more), self.bad)
        return bad, _edited(bad, self.cured)


def known() -> list[Mistake]:
    """Read every mistake of the trade's list, in the order of the files and their entries."""
    return [mistake for mistake in every() if not mistake.further]


def further() -> list[Mistake]:
    """Read the further mistakes."""
    return [mistake for mistake in every() if mistake.further]


def every() -> list[Mistake]:
    """Read every mistake; a file says whether it holds further ones."""
    found = []
    for path in sorted((FOLDER / "known").glob("*.toml")):
        table = _read(path)
        found += [_mistake(path.stem, entry, table.get("further", False)) for entry in table["mistakes"]]
    return found


def _mistake(subject: str, entry: dict[str, Any], further: bool) -> Mistake:
    lists = {"says", "cured_says"}
    values: dict[str, Any] = {key: tuple(value) if key in lists else value for key, value in entry.items()}
    more = tuple(values.pop("with", ()))
    return Mistake(subject=subject, more=more, further=further, **values)


def _bike(starter: str, more: tuple[str, ...]) -> dict[str, Any]:
    """Give the plain bike, or a starter job, with lists added to it."""
    bike = _read(STARTERS / f"{starter}.toml" if starter else FOLDER / "bikes" / "plain.toml")
    for name in more:
        add(bike, _read(FOLDER / "bikes" / f"{name}.toml"))
    return bike


def _read(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def _edited(job: dict[str, Any], edits: Mapping[str, Any]) -> dict[str, Any]:
    edited = deepcopy(job)
    for path, value in edits.items():
        if value == LEAVE_OUT:
            drop(edited, path)
        else:
            put(edited, path, value)
    return edited
