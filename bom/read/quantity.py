"""A field that holds a quantity: written as text with its unit, kept as a plain number."""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import get_args

from pydantic import GetCoreSchemaHandler
from pydantic_core import CoreSchema, core_schema

from bom import units
from bom.dimensions import DIMENSIONS


@dataclass(frozen=True)
class Quantity:
    """Reads one dimension and refuses what lies outside a believable range.

    dimension  a name of DIMENSIONS
    low, high  least and greatest believable value, in the dimension's inside unit, both allowed
    """

    dimension: str
    low: float
    high: float

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> CoreSchema:
        """Read the text before the number itself is checked."""
        return core_schema.no_info_before_validator_function(self.read, handler(source))

    def read(self, value: object) -> float:
        """Read what stands in the file; ValueError says what to write instead."""
        if isinstance(value, str):
            number = units.read(value, self.dimension)
        elif isinstance(value, bool) or not isinstance(value, int | float) or not math.isfinite(value):
            raise ValueError(self.accepted())
        elif DIMENSIONS[self.dimension].bare:
            number = float(value)
        else:
            raise ValueError(units.unit_missing(f"{value}", self.dimension))
        if not self.low <= number <= self.high:
            raise ValueError(self.accepted())
        return number

    def accepted(self) -> str:
        """Say in one sentence what is accepted, with an example that lies in the range."""
        kind = DIMENSIONS[self.dimension]
        low, high = (self._short(limit) for limit in (self.low, self.high))
        like = next((text for text in kind.examples if self._holds(text)), "")
        example = f', like "{like}"' if like else ""
        return f"Write {kind.words} from {low} to {high}{example}."

    def _holds(self, text: str) -> bool:
        return self.low <= units.read(text, self.dimension) <= self.high

    def _short(self, limit: float) -> str:
        return units.show(limit, self.dimension).replace(".0 ", " ")


def quantity(dimension: str, low: float, high: float) -> Quantity:
    """Mark a float field as a quantity: `Volts = Annotated[float, quantity("voltage", 1, 200)]`."""
    if dimension not in DIMENSIONS:
        raise KeyError(dimension)
    return Quantity(dimension, low, high)


def dimension_of(annotation: object, metadata: Iterable[object] = ()) -> str:
    """Name the dimension a field is declared with, "" for a field that is no quantity."""
    for mark in metadata:
        if isinstance(mark, Quantity):
            return mark.dimension
    for inner in get_args(annotation):
        found = inner.dimension if isinstance(inner, Quantity) else dimension_of(inner)
        if found:
            return str(found)
    return ""
