"""Plain sentences that say what a schema accepts."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date
from enum import Enum
from typing import Literal, get_args, get_origin

from bom.read.quantity import Quantity
from bom.read.spot import Want, fields_of
from bom.units import listed


def wanted(want: Want) -> str:
    """Say what may be written where this is wanted; "" when the schema does not say."""
    sentences = dict.fromkeys(filter(None, map(_option, want.options())))
    return either(sentences)


def either(sentences: Iterable[str]) -> str:
    """Join the sentences of several alternatives."""
    return " Or: ".join(sentences)


def choices(want: Want) -> list[str]:
    """The fixed words accepted here, in the schema's order."""
    words: list[str] = []
    for option in want.options():
        if get_origin(option.kind) is Literal:
            words.extend(str(word) for word in get_args(option.kind))
        elif isinstance(option.kind, type) and issubclass(option.kind, Enum):
            words.extend(str(member.value) for member in option.kind)
    return words


def _option(want: Want) -> str:
    for limit in want.limits:
        if isinstance(limit, Quantity):
            return limit.accepted()
    words = choices(want)
    if words:
        return f"Write {listed(words)}."
    model = want.model()
    if model:
        return f"Write a table with the keys {', '.join(fields_of(model))}."
    kind = get_origin(want.kind) or want.kind
    if kind is list and Want(get_args(want.kind)[0]).model():
        return "Write a heading in double brackets, like [[loads]], above each entry."
    return _plain_type(kind, _bounds(want)) if isinstance(kind, type) else ""


def _plain_type(kind: type, bounds: str) -> str:
    sentences: tuple[tuple[type, str], ...] = (
        (bool, "Write true or false."),
        (int, f"Write a whole number{bounds}, without quotes."),
        (float, f"Write a number{bounds}, without quotes."),
        (str, "Write text in quotes."),
        (date, "Write a date, like 2024-05-31."),
        (Mapping, "Write a table of keys and values."),
        (Sequence, "Write a list in square brackets."),
    )
    return next((sentence for known, sentence in sentences if issubclass(kind, known)), "")


def _bounds(want: Want) -> str:
    limit = {
        name: f"{getattr(held, name):g}"
        for held in want.limits
        for name in ("ge", "gt", "le", "lt")
        if getattr(held, name, None) is not None
    }
    if {"ge", "le"} <= set(limit):
        return f" from {limit['ge']} to {limit['le']}"
    words = {"ge": "at least", "gt": "above", "le": "at most", "lt": "below"}
    found = [f"{words[name]} {value}" for name, value in limit.items()]
    return f" {' and '.join(found)}" if found else ""
