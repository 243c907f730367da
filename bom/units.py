"""Quantities as people write them: "1.8 m", "6 ft", "2.5 mm²", "14 AWG", "55 W".

Text with units exists only at the edges. Inside, a quantity is a plain float in the unit its
dimension names. Number and unit are split here and the unit must stand in its dimension's list;
the written text itself never reaches the converting library, which would evaluate it as a sum.
"""

import math
import re
from collections.abc import Sequence
from functools import cache
from typing import TYPE_CHECKING

from bom.dimensions import DIMENSIONS, REGISTRY_LINES, SI_PREFIXES, SI_TIMES, Dimension

if TYPE_CHECKING:
    from pint import UnitRegistry

_LONGEST_TEXT = 40
_SAME = str.maketrans({
    "\u00a0": " ", "\u2009": " ", "\u202f": " ", "\u2007": " ",
    "\u2212": "-", "\u03bc": "\u00b5", "\u2126": "\u03a9",
})  # fmt: skip
_QUANTITY = re.compile(r"(?P<sign>[+-]?) ?(?P<number>[0-9][0-9., ]*|[.,][0-9]+)(?P<unit>.*)")
_PLAIN = re.compile(r"[0-9]+(\.[0-9]+)?|\.[0-9]+")
_DECIMAL_COMMA = re.compile(r"[0-9]*,[0-9]+")
_SPACED_THOUSANDS = re.compile(r"[0-9]{1,3}( [0-9]{3})+([.,][0-9]+)?")
_COMMA_OF_TWO_MEANINGS = re.compile(r"[1-9][0-9]{0,2},[0-9]{3}")
_GAUGE = re.compile(r"(?P<gauge>[1-4]/0|0{1,4}|[1-9][0-9]?) ?AWG", re.IGNORECASE)


def read(text: str, dimension: str) -> float:
    """Read a quantity of the dimension into the unit used inside (see DIMENSIONS).

    A decimal comma is read as a decimal point; a comma that could as well part thousands is
    refused. Negative quantities are refused where they mean nothing. Raises ValueError, whose
    message says what to write instead.
    """
    kind = DIMENSIONS[dimension]
    plain = text.translate(_SAME).strip()
    gauge = _GAUGE.fullmatch(plain)
    if dimension == "area" and gauge:
        return _gauge_area_mm2(gauge["gauge"])
    match = _QUANTITY.fullmatch(plain)
    if match is None or len(plain) > _LONGEST_TEXT:
        raise ValueError(accepted(dimension))
    written, unit = match["number"].strip(), match["unit"].strip()
    number = _number(written, unit or kind.inside, kind)
    if not unit and not kind.bare:
        raise ValueError(unit_missing(match["sign"] + written, dimension))
    if unit and unit not in kind.units:
        raise ValueError(f'"{unit}" is not a unit of {kind.name} known here. {accepted(dimension)}')
    if match["sign"] == "-" and not kind.signed:
        raise ValueError(f"It may not be negative. {accepted(dimension)}")
    return _convert(-number if match["sign"] == "-" else number, unit or kind.inside, kind)


def show(value: float, dimension: str, digits: int = 3) -> str:
    """Print a value held in the dimension's inside unit for people, to so many significant digits.

    Voltages always have one decimal. A value that is not a number prints as "not known", an
    infinite one as "no limit".
    """
    if math.isnan(value):
        return "not known"
    if math.isinf(value):
        return "no limit"
    kind = DIMENSIONS[dimension]
    if dimension == "voltage":
        # Halves go up, as in a spreadsheet: 29 x 3.65 V prints as 105.9 V in every paper.
        return f"{math.floor(value * 10 + 0.5 + 1e-9) / 10 + 0.0:.1f} {kind.inside}"
    # Rounded before the unit is chosen, so that 0.9999 A prints as 1 A and not as 1000 mA.
    rounded = float(f"{value:.{digits}g}")
    unit = next((unit for least, unit in kind.steps if abs(rounded) >= least), kind.steps[-1][1])
    if rounded == 0:
        unit = kind.inside
    factor, offset = _scale(kind.units[unit], kind.units[kind.inside])
    return f"{_digits((rounded - offset) / factor, digits)} {unit}"


def accepted(dimension: str) -> str:
    """Say in one sentence how a quantity of the dimension is written."""
    kind = DIMENSIONS[dimension]
    return f"Write {kind.words}, like {listed(kind.examples)}."


def listed(words: Sequence[str]) -> str:
    """List words in quotes: "a", "b" or "c"."""
    *most, last = (f'"{word}"' for word in words)
    return f"{', '.join(most)} or {last}" if most else last


def unit_missing(number: str, dimension: str) -> str:
    """Say that a number came without the unit its dimension needs."""
    kind = DIMENSIONS[dimension]
    like = f"{number} {kind.inside}" if dimension not in ("length", "capacitance") else kind.examples[0]
    return f'Write {kind.words} with its unit, like "{like}".'


def _number(written: str, unit: str, kind: Dimension) -> float:
    if _COMMA_OF_TWO_MEANINGS.fullmatch(written):
        whole, part = written.replace(",", ""), _digits(float(written.replace(",", ".")), 12)
        raise ValueError(f'"{written}" can mean {whole} or {part}. Write "{whole} {unit}" or "{part} {unit}".')
    if _PLAIN.fullmatch(written):
        return float(written)
    if _DECIMAL_COMMA.fullmatch(written) or _SPACED_THOUSANDS.fullmatch(written):
        return float(written.replace(" ", "").replace(",", "."))
    raise ValueError(f'"{written}" is not one plain number. {accepted(kind.name)}')


def _convert(number: float, unit: str, kind: Dimension) -> float:
    factor, offset = _scale(kind.units[unit], kind.units[kind.inside])
    # Twelve digits are more than anyone writes and drop the noise of binary fractions, so that
    # "104 °F" is 40 and not 40.00000000000006.
    return float(f"{number * factor + offset:.12g}")


@cache
def _scale(unit: str, inside: str) -> tuple[float, float]:
    """Factor and offset that turn a number of the unit into the inside unit."""
    if unit == inside:
        return 1.0, 0.0
    known = SI_TIMES.get(unit) or (SI_PREFIXES.get(unit.removesuffix(inside)) if unit.endswith(inside) else None)
    if known:
        return known, 0.0  # a power of ten, a minute or an hour needs no unit library
    registry = _registry()
    at_zero = float(registry.Quantity(0.0, unit).to(inside).magnitude)
    at_one = float(registry.Quantity(1.0, unit).to(inside).magnitude)
    return at_one - at_zero, at_zero


@cache
def _registry() -> "UnitRegistry[float]":
    # Imported here because it costs a fifth of a second, which a job in metric units need not pay.
    from pint import UnitRegistry

    return UnitRegistry(list(REGISTRY_LINES))


def _gauge_area_mm2(gauge: str) -> float:
    from bom.physics.conductor import awg_area_mm2

    zeros = f"{len(gauge)}/0" if set(gauge) == {"0"} else gauge  # "00" is another spelling of "2/0"
    try:
        return awg_area_mm2(gauge=zeros)
    except ValueError as error:
        raise ValueError(f"{gauge} AWG is not a gauge known here. {accepted('area')}") from error


def _digits(value: float, digits: int) -> str:
    """Print a number to so many significant digits, without exponent or trailing zeros."""
    if value == 0:
        return "0"
    decimals = max(0, digits - 1 - math.floor(math.log10(abs(value))))
    text = f"{value:.{decimals}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
