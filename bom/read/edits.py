"""A job's plain data edited by path: "pack.bms.charge", or "loads.horn.current" where a list is searched.

An entry of a list is found by its name, a control lead by its function.
"""

from collections.abc import Mapping
from typing import Any


def put(data: dict[str, Any], path: str, value: Any) -> None:
    """Set what stands at a path."""
    table, last = _table(data, path)
    table[last] = value


def drop(data: dict[str, Any], path: str) -> None:
    """Leave out what stands at a path."""
    table, last = _table(data, path)
    table.pop(last, None)


def add(data: dict[str, Any], more: Mapping[str, Any]) -> None:
    """Add entries to the ends of lists, in tables as deep as `more` has them; an entry replaces one of its name."""
    for key, value in more.items():
        if isinstance(value, list):
            names = {entry["name"] for entry in value if "name" in entry}
            data[key] = [entry for entry in data.get(key, []) if entry.get("name") not in names] + value
        else:
            add(data.setdefault(key, {}), value)


def at(data: dict[str, Any], path: str) -> Any:
    """Give what stands at a path, None where nothing does."""
    table, last = _table(data, path)
    return table.get(last)


def _table(data: dict[str, Any], path: str) -> tuple[dict[str, Any], str]:
    """Find the table that a path ends in, and its last key."""
    *parents, last = path.split(".")
    here: Any = data
    for parent in parents:
        if isinstance(here, list):
            here = next(entry for entry in here if parent in (entry.get("name"), entry.get("function")))
        else:
            here = here.setdefault(parent, {})
    return here, last
