"""A figure in few words: its value as a reader can work it out again, and in one line what made it."""

import math

from bom import units
from bom.span import Span
from bom.trace import Fact, Origin, Step

STEPS, STEPPED = "share_at", "the curve's next hotter point counts"
MOST = 12  # inputs told in one line


def shown(figure: Span, unit: str) -> str:
    """Print a figure to four digits, volts to five, so that a reader can work it out again."""
    low, high = (_printed(end, figure.dimension, unit) for end in (figure.low, figure.high))
    return low if low == high else f"{low} to {high}"


def _printed(value: float, dimension: str, unit: str) -> str:
    if not math.isfinite(value) or (dimension and dimension != "voltage"):
        return units.show(value, dimension or "voltage", 4)
    kind = "V" if dimension == "voltage" else unit
    return f"{value:.5g} {kind}".rstrip()


def signs(formula: str) -> str:
    """Print a formula with the signs people write."""
    return formula.replace(" ** ", " ^ ").replace(" * ", " × ").replace(" / ", " ÷ ").replace(" - ", " − ")


def made_of(figure: Span | Fact | None) -> str:
    """Tell the formula that made a figure, with its inputs; "" where somebody gave it."""
    found = figure.origin() if isinstance(figure, Span) else None
    if not isinstance(found, Step) or len(found.inputs) > MOST:
        return ""
    inputs = ", ".join(f"{name} = {_input(entry)}" for name, entry in found.inputs.items())
    said = f"{shown(figure, '')} = {signs(found.formula)}, {inputs}" if isinstance(figure, Span) else ""
    return f"{said} ({STEPPED})" if said and STEPS in found.formula else said


def _input(entry: Span | Fact) -> str:
    if isinstance(entry, Fact):
        return entry.text
    found = entry.origin()
    return shown(entry, found.unit if isinstance(found, Origin) else "")
