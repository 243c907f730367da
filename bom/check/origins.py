"""Where in the files of a run a figure stands: job line, catalogue row, margin, cell table."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from bom.choose.donor import SERVED
from bom.read.job_devices import Device, Lead
from bom.session import Session
from bom.trace import KINDS, Origin

Path = tuple[str | int, ...]

# Columns of a donor's part that are keys of its own.
DONOR_KEYS = {
    "dc_volts_v": "dc_volts",
    "carry_a": "carries",
    "load_min_w": "watts_min",
    "load_max_w": "watts_max",
    "area_mm2": "wire",
    "lead_mm2": "lead",
    "resistance_mohm_per_m": "wire",
    "conductor_mm": "wire",
    "outside_mm": "wire",
    "conductor_max_c": "wire",
    "class_dc_v": "wire",
    "class_ac_v": "wire",
    "insulation": "wire",
    "conductor_class": "wire",
    "colour": "kind",
    "breaking_points": "breaks",
    "pins": "pins",
    "ways": "ways",
    "way_a": "way",
    "bus_a": "carries",
    "takes_body": "fuses",
    "supply_min_v": "supply_min",
    "supply_max_v": "supply_max",
    "polarity": "polarity",
    "flashes_per_min": "rate",
    "contact": "contact",
    "kind": "kind",
}


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
            index = next(number for number, entry in enumerate(here) if _is_meant(entry, origin.of))
            here, path = here[index], (*path, index)
    return path


def _is_meant(entry: Any, name: str) -> Any:
    """Tell whether an entry bears a name; a lead is named by its device and its label, like "grip: throttle signal"."""
    device, _, label = name.partition(": ")
    if isinstance(entry, Lead):
        return entry.label == label
    return entry.name == (device if isinstance(entry, Device) else name)


def _job(origin: Origin, session: Session) -> Where:
    loaded = session.loaded
    file, path = loaded.path.name, job_path(origin, loaded.job)
    key = f"{origin.name} of {origin.of}" if origin.of else origin.name
    note = f"; {origin.note}" if origin.note else ""
    if path in loaded.lines.by_path:
        line = loaded.lines.by_path[path]
        return Where(f"{file}:{line} {key}{note}", file, line)
    meaning = next((f": {entry.meaning}" for entry in loaded.defaults if entry.key == origin.name), "")
    return Where(f"not said in {file}: {key}, so the default{meaning}{note}", file)


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
    """Name the line of the key that a donor's figure rests on: its own, else what it served or feeds."""
    file, loaded = session.loaded.path.name, session.loaded
    number, item = next((n, item) for n, item in enumerate(loaded.job.donor.items) if item.name == origin.of)
    key = DONOR_KEYS.get(origin.name, "")
    if key == "watts_min" and item.senses == "nothing":
        key = "senses"
    if origin.note == SERVED or not key or getattr(item, key) is None:
        key = "served" if item.served is not None else "feeds"
    line = loaded.lines.line(("donor", "items", number, key))
    note = f"; {origin.note}" if origin.note else ""
    return Where(f"{file}:{line} {key} of the donor's {origin.of}, as its {origin.name}{note}", file, line)


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
