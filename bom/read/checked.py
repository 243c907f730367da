"""Checking a table of the job against its schema, and keeping what is right of it when something is wrong.

What is kept lets the checks between tables speak too, so that one slip hides no other fault.
"""

from copy import deepcopy
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from bom.errors import Fault
from bom.read.faults import faults_of, misspelt
from bom.read.locate import Lines
from bom.read.spot import Path, spot_of

Model = TypeVar("Model", bound=BaseModel)
MOST_ROUNDS = 4  # a key goes, then the entry that needs it, then the table that needs the entry


def checked(model: type[Model], data: dict[str, Any], file: str, lines: Lines, faults: list[Fault]) -> Model | None:
    """Check data against a schema; its faults are added, and what is right of it is given if it can stand alone.

    A misspelt key is a fault, and is put right in `data` and `lines` so that its value is checked as well.
    """
    try:
        return model.model_validate(data)
    except ValidationError as error:
        faults += faults_of(error, file=file, lines=lines, model=model)
        for path, key in misspelt(error, model):
            table = _at(data, path[:-1])
            if key not in table:
                table[key] = table.pop(path[-1])
                lines.also(path, (*path[:-1], key))
    try:
        return model.model_validate(data)
    except ValidationError as error:
        again = faults_of(error, file=file, lines=lines, model=model)
        faults += [fault for fault in again if fault not in faults]
    return right_of(model, data)


def right_of(model: type[Model], data: object) -> Model | None:
    """Leave out what is wrong, with the entries and tables that cannot do without it; None if nothing can stand."""
    if not isinstance(data, dict):
        return None
    data = deepcopy(data)
    for _ in range(MOST_ROUNDS):
        try:
            return model.model_validate(data)
        except ValidationError as error:
            wrong = {_culprit(model, detail["type"], detail["loc"]) for detail in error.errors(include_url=False)}
            if () in wrong:
                return None
            for path in sorted(wrong, key=lambda path: [str(step).zfill(4) for step in path], reverse=True):
                _drop(data, path)
    return None


def _culprit(model: type[BaseModel], kind: str, location: Path) -> Path:
    """Give the path of what must go: a value that is wrong, or the table that misses one."""
    path = spot_of(model, location).path
    return path[:-1] if kind == "missing" else path


def _drop(data: dict[str, Any], path: Path) -> None:
    table = _at(data, path[:-1])
    if isinstance(table, list) and isinstance(path[-1], int) and path[-1] < len(table):
        del table[path[-1]]
    elif isinstance(table, dict):
        table.pop(path[-1], None)


def _at(data: Any, path: Path) -> Any:
    """Follow a path as far as it leads."""
    for step in path:
        try:
            data = data[step]
        except (KeyError, IndexError, TypeError):
            return {}
    return data
