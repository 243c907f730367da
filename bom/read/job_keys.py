"""The keys of the job file, their defaults and meanings, for the documents."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, get_args, get_origin

from pydantic import BaseModel

from bom import units
from bom.read.quantity import dimension_of


@dataclass(frozen=True)
class Key:
    """One key: its dotted path ("[[...]]" for lists of tables), its default as printed, its meaning."""

    path: str
    default: str
    meaning: str


def keys_of(section: type[BaseModel], prefix: str = "") -> Iterator[Key]:
    """Walk a section and all below it."""
    for name, field in section.model_fields.items():
        table, listed = _table(field.annotation)
        if table is not None:
            yield from keys_of(table, f"{prefix}{name}{'[]' if listed else ''}.")
            continue
        if field.is_required():
            default = "must be said"
        else:
            default = shown(field.default, dimension_of(field.annotation, field.metadata))
        words = _words(field.annotation)
        choices = f" ({', '.join(words)})" if words else ""
        yield Key(f"{prefix}{name}", default, f"{field.description or ''}{choices}")


def shown(value: object, dimension: str) -> str:
    """Print a default as a person would write it."""
    if value is None or value == "":
        return "not known" if value is None else "none"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float) and dimension:
        return units.show(value, dimension)
    if isinstance(value, (list, dict)) and not value:
        return "none"
    return str(value)


def _words(annotation: object) -> list[str]:
    """List the words a key accepts, where it accepts only some."""
    if get_origin(annotation) is Literal:
        return [str(word) for word in get_args(annotation) if word]
    return [word for inner in get_args(annotation) for word in _words(inner)]


def _table(annotation: object) -> tuple[type[BaseModel] | None, bool]:
    """Tell whether a key holds a table of its own, or a list of them."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation, False
    for inner in get_args(annotation):
        if isinstance(inner, type) and issubclass(inner, BaseModel):
            return inner, True
    return None, False
