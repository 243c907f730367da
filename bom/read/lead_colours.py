"""Colours of leads in words: codes under a named scheme, or what the builder calls them.

The same letters mean other colours to other people: GR is grey in German letters, and many read it as green. So a
colour is never read without its scheme.
Source: IEC 60757 (letters of colours) and the German letters of DIN 47100 and DIN 72551; both from memory.
"""

import re
from collections.abc import Mapping

WORDS = "words"

SCHEMES: Mapping[str, Mapping[str, str]] = {
    "IEC 60757": {
        "BK": "black",
        "BN": "brown",
        "RD": "red",
        "OG": "orange",
        "YE": "yellow",
        "GN": "green",
        "BU": "blue",
        "VT": "violet",
        "GY": "grey",
        "WH": "white",
        "PK": "pink",
        "TQ": "turquoise",
        "GD": "gold",
        "SR": "silver",
    },
    "DIN letters": {
        "SW": "black",
        "BR": "brown",
        "RT": "red",
        "OR": "orange",
        "GE": "yellow",
        "GN": "green",
        "BL": "blue",
        "VI": "violet",
        "LI": "violet",
        "GR": "grey",
        "WS": "white",
        "RS": "pink",
        "TK": "turquoise",
    },
}
_PARTS = re.compile(r"[\s/,.+-]+")
_LETTERS = 2  # of one colour in both schemes


def in_words(colour: str, scheme: str) -> str:
    """Give a colour in words: "RD/BK" under IEC 60757 is "red with black"; the builder's own words stay as they are.

    Raises ValueError, which says what is accepted, where a code is not one of the scheme.
    """
    if scheme == WORDS:
        return " ".join(colour.split())
    known = SCHEMES[scheme]
    names = [known.get(code, "") for code in _codes(colour)]
    if not names or not all(names):
        raise ValueError(f"Write codes of {scheme}: {_listed(known)}; two colours as {_pair(known)}.{_meant(colour)}")
    return " with ".join(names)


def _codes(colour: str) -> list[str]:
    """Split at signs, or every two letters where there are none."""
    pieces = [piece for piece in _PARTS.split(colour.strip().upper()) if piece]
    return [piece[at : at + _LETTERS] for piece in pieces for at in range(0, len(piece), _LETTERS)]


def _listed(known: Mapping[str, str]) -> str:
    return ", ".join(f"{code} {name}" for code, name in known.items())


def _pair(known: Mapping[str, str]) -> str:
    codes = list(known)
    return f'"{codes[2]}/{codes[0]}"'


def _meant(colour: str) -> str:
    """Name the schemes in which it is a colour."""
    codes = _codes(colour)
    able = [scheme for scheme, known in SCHEMES.items() if codes and all(code in known for code in codes)]
    return f" It is a colour in {able[0]}." if able else ' Or write it out, with scheme = "words".'
