"""Where in the files of a run a figure stands: job line, catalogue row, margin, cell table."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from bom.session import Session
from bom.trace import KINDS, Origin

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Where:
    """The place of a figure.

    words  one line for people
    file   name of the file, "" where it stands in none
    line   1-based line of a job file, 0 where it is not known or not said
    """

    words: str
    file: str = ""
    line: int = 0


def where(origin: Origin, session: Session) -> Where:
    """Find where a figure stands."""
    return _FINDERS.get(origin.kind, _plain)(origin, session)


def job_path(origin: Origin, job: Any) -> Path:
    """Turn "loads.power" of a load by name into ("loads", 2, "power")."""
    path: Path = ()
    here: Any = job
    for name in origin.name.split("."):
        here = getattr(here, name)
        path = (*path, name)
        if isinstance(here, list) and here and hasattr(here[0], "name") and origin.of:
            index = next(number for number, entry in enumerate(here) if entry.name == origin.of)
            here, path = here[index], (*path, index)
    return path


def _job(origin: Origin, session: Session) -> Where:
    loaded = session.loaded
    file, path = loaded.path.name, job_path(origin, loaded.job)
    key = f"{origin.name} of {origin.of}" if origin.of else origin.name
    note = f"; {origin.note}" if origin.note else ""
    if path in loaded.lines.by_path:
        line = loaded.lines.by_path[path]
        return Where(f"{file}:{line} {key}{note}", file, line)
    meaning = next((f": {entry.meaning}" for entry in loaded.defaults if entry.key == origin.name), "")
    return Where(f"{file} does not say {key}, the default counts{meaning}{note}", file)


def _margin(origin: Origin, session: Session) -> Where:
    shipped = session.catalogue.margins.entries[origin.name]
    if origin.name not in session.loaded.job.margins:
        return Where(f"margin {origin.name}: {shipped.source} (margins.csv)", "margins.csv")
    file, line = session.loaded.path.name, session.loaded.lines.line(("margins", origin.name))
    unit = f" {shipped.unit}" if shipped.unit else ""
    words = f"{file}:{line} margins.{origin.name}, in place of {shipped.value:g}{unit} in margins.csv"
    return Where(words, file, line)


def _catalogue(origin: Origin, session: Session) -> Where:
    row = session.catalogue.places.get(origin.of, "")
    return Where(f"{origin.of} {origin.name}, {row}; {origin.note}", row.partition(" row ")[0])


def _donor(origin: Origin, session: Session) -> Where:
    file, loaded = session.loaded.path.name, session.loaded
    items = [item.name for item in loaded.job.donor.items]
    line = loaded.lines.line(("donor", "items", items.index(origin.of))) if origin.of in items else 0
    note = f"; {origin.note}" if origin.note else ""
    return Where(f"{file}:{line} donor's {origin.of}, {origin.name}{note}", file, line)


def _curve(origin: Origin, session: Session) -> Where:
    file = f"{origin.name}.csv"
    return Where(f"{file}, rows of {origin.of or 'no name'}{f'; {origin.note}' if origin.note else ''}", file)


def _chemistry(origin: Origin, session: Session) -> Where:
    return Where(f"cell table, {origin.of}: {origin.note}")


def _loom(origin: Origin, session: Session) -> Where:
    return Where(f"laid out or counted in the loom: {origin.name}")


def _program(origin: Origin, session: Session) -> Where:
    return Where(f"fixed here{f': {origin.note}' if origin.note else ''}")


def _plain(origin: Origin, session: Session) -> Where:
    """Print a kind that needs no looking up, like a solved state by its name."""
    words = " ".join(filter(None, (KINDS[origin.kind], origin.name)))
    return Where(f"{words}{f' of {origin.of}' if origin.of else ''}{f'; {origin.note}' if origin.note else ''}")


_FINDERS: Mapping[str, Callable[[Origin, Session], Where]] = {
    "job": _job,
    "margin": _margin,
    "catalogue": _catalogue,
    "donor": _donor,
    "curve": _curve,
    "chemistry": _chemistry,
    "loom": _loom,
    "program": _program,
}
