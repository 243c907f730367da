"""The water digit of an IP code, as a figure that can be compared."""

import re
from math import nan

import numpy as np

from bom.parts import Parts, Rating
from bom.trace import Fact, Origin, Step, step

_DIGITS = re.compile(r"(?:IP)?([0-6X])([0-9X])(K?)")
# Tests by laying under water prove nothing of jets (IEC 60529, from memory).
JETS = (5, 6)
IMMERSION = (7, 8)


def water_digit(code: str, asked: float) -> float:
    """Give the greatest second digit of a code, dual ones like IP65/67 too; NaN where it names none that counts.

    IP69K is over 6. One that is only proved under water (7, 8) counts for splash, not where jets are asked.
    """
    codes = [_DIGITS.fullmatch(part.strip()) for part in code.upper().replace(" ", "").split("/")]
    if not all(codes):
        return nan
    digits = [int(match[2]) for match in codes if match and match[2] != "X"]
    if asked in JETS:
        digits = [digit for digit in digits if digit not in IMMERSION]
    return float(max(digits, default=nan))


def water_digits(parts: Parts, asked: float) -> Rating:
    """Give the water digit of each part, known as its code is."""
    words = parts.words_of("ip_code")
    values = np.array([water_digit(code, asked) for code in words.values])
    return Rating(values, words.evidence, lambda: _shown(parts, asked))


def _shown(parts: Parts, asked: float) -> Origin | Step:
    code = parts.first_word("ip_code")
    if not code.value:
        return code.origin
    wanted = Fact(f"{asked:g}", asked, Origin("program", "digit asked", "", "as needed here"))
    return step("water_digit(code, asked)", code=code, asked=wanted)
