"""Where in a schema a complaint points: the builder's own path, and what the schema wants there."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from types import UnionType
from typing import Annotated, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

Path = tuple[str | int, ...]


@dataclass(frozen=True)
class Want:
    """What the schema wants at one spot: a type, its limits, and the words that describe it."""

    kind: object
    limits: tuple[object, ...] = ()
    description: str = ""

    def options(self) -> tuple["Want", ...]:
        """The alternatives of a union, None left out; a plain type is its own only option."""
        origin = get_origin(self.kind)
        if origin is Annotated:
            inner, *marks = get_args(self.kind)
            limits = [limit for mark in marks for limit in (mark.metadata if isinstance(mark, FieldInfo) else [mark])]
            return Want(inner, (*self.limits, *limits), self.description).options()
        if origin in (Union, UnionType):
            wants = (Want(part, self.limits, self.description) for part in get_args(self.kind))
            return tuple(option for want in wants for option in want.options() if option.kind is not type(None))
        return (self,)

    def model(self) -> type[BaseModel] | None:
        """The table's own schema, when a table with fixed keys is wanted."""
        for option in self.options():
            if isinstance(option.kind, type) and issubclass(option.kind, BaseModel):
                return option.kind
        return None


@dataclass(frozen=True)
class Spot:
    """A builder's path, what is wanted there, and the schema of the table around it."""

    path: Path
    want: Want
    table: type[BaseModel] | None


def spot_of(model: type[BaseModel], location: Path) -> Spot:
    """Follow a complaint's location, leaving out the names of a union's alternatives."""
    path: Path = ()
    want, table = Want(model), None
    for part in location:
        options = want.options()
        if len(options) > 1 and isinstance(part, str):
            want = _alternative(options, part) or want
        elif part != "[key]":
            table = want.model()
            want = _inside(options[0], part)
            path = (*path, part)
    return Spot(path, want, table)


def fields_of(model: type[BaseModel]) -> dict[str, FieldInfo]:
    """The keys a table accepts, as written in the file."""
    return {field.alias or name: field for name, field in model.model_fields.items()}


def _alternative(options: tuple[Want, ...], name: str) -> Want | None:
    for option in options:
        model = option.model()
        if model and (model.__name__ == name or _tagged(model, name)):
            return option
    return None


def _tagged(model: type[BaseModel], tag: str) -> bool:
    kinds = (field.annotation for field in model.model_fields.values())
    return any(tag in get_args(kind) for kind in kinds if get_origin(kind) is Literal)


def _inside(want: Want, part: str | int) -> Want:
    """What is wanted one step further in; a Want of None when the schema does not say."""
    model = want.model()
    if model:
        field = fields_of(model).get(str(part))
        return Want(field.annotation, tuple(field.metadata), field.description or "") if field else Want(None)
    origin, inner = get_origin(want.kind), get_args(want.kind)
    if not isinstance(origin, type) or not inner:
        return Want(None)
    if issubclass(origin, Mapping):
        return Want(inner[1])
    if issubclass(origin, Sequence | set | frozenset):
        fixed = isinstance(part, int) and Ellipsis not in inner and part < len(inner)
        return Want(inner[part] if fixed and isinstance(part, int) else inner[0])
    return Want(None)
