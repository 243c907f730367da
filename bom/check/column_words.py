"""A column of a part in words, and its figure with its unit, where no rule has a name for it."""

import re

from bom.check.made_of import shown
from bom.parts import UNITS, dimension_of
from bom.read.families import SPANS
from bom.span import Span


def column_words(name: str) -> str:
    """Name a column without the unit its name ends in."""
    if name == "stud_m":
        return "stud"
    if name.endswith("_mohm_per_m"):
        return "resistance"
    stem, _, unit = name.rpartition("_")
    words = (stem if stem and unit in {*SPANS, *UNITS} else name).replace("_", " ")
    return re.sub(r"\b(dc|ac)\b", lambda found: found[0].upper(), words)


def figure_words(name: str, value: float) -> str:
    """Print a figure of a column with its unit."""
    if name == "stud_m":
        return f"M{value:g}"
    if name.endswith("_mohm_per_m"):
        return f"{value:g} mohm/m"
    return shown(Span.of(value, dimension_of(name), ""), UNITS.get(name.rpartition("_")[2], ""))
