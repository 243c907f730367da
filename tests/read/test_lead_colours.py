"""Colours of leads: letters under two schemes, and words as they are.

Published, from memory: IEC 60757 (letters of colours); DIN 47100 and DIN 72551 (German letters).
"""

import pytest

from bom.read.lead_colours import SCHEMES, in_words

IEC = [
    ("BK", "black"),
    ("BN", "brown"),
    ("RD", "red"),
    ("OG", "orange"),
    ("YE", "yellow"),
    ("GN", "green"),
    ("BU", "blue"),
    ("VT", "violet"),
    ("GY", "grey"),
    ("WH", "white"),
    ("PK", "pink"),
    ("TQ", "turquoise"),
    ("GD", "gold"),
    ("SR", "silver"),
    ("GNYE", "green with yellow"),  # the one pair the standard names itself
]
GERMAN = [
    ("ws", "white"),
    ("br", "brown"),
    ("gn", "green"),
    ("ge", "yellow"),
    ("gr", "grey"),
    ("rs", "pink"),
    ("bl", "blue"),
    ("rt", "red"),
    ("sw", "black"),
    ("vi", "violet"),
    ("ws/br", "white with brown"),
    ("gr-rs", "grey with pink"),
]


@pytest.mark.parametrize(("code", "words"), IEC)
def test_international_letters(code: str, words: str) -> None:
    assert in_words(code, "IEC 60757") == words


@pytest.mark.parametrize(("code", "words"), GERMAN)
def test_german_letters(code: str, words: str) -> None:
    assert in_words(code, "DIN letters") == words


def test_every_international_letter_is_tried() -> None:
    assert set(SCHEMES["IEC 60757"]) == {code for code, _ in IEC if len(code) == 2}


@pytest.mark.parametrize("colour", ["red", "rd / bk", " red with a black tracer "])
def test_words_stay_as_they_are(colour: str) -> None:
    assert in_words(colour, "words") == " ".join(colour.split())


@pytest.mark.parametrize(("code", "scheme", "says"), [("GR", "IEC 60757", "DIN letters"), ("BU", "DIN letters", "IEC")])
def test_a_code_of_the_other_scheme_is_refused_and_named(code: str, scheme: str, says: str) -> None:
    with pytest.raises(ValueError, match=f"It is a colour in {says}"):
        in_words(code, scheme)


@pytest.mark.parametrize("code", ["XX", "B", "RDX", "red", "", "/"])
def test_what_is_no_code_is_refused_with_the_list(code: str) -> None:
    with pytest.raises(ValueError, match="BK black, BN brown"):
        in_words(code, "IEC 60757")
