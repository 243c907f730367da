"""Greatest watts of a lamp's own category, where it is known: 12 V filament lamps and LED light sources."""

from collections.abc import Mapping
from types import MappingProxyType

from bom.errors import RangeError
from bom.physics.lamp import SIGNAL_TEST_V, UpperWatts

_MEMORY = "UN R37 03 series, from memory"
_PAGE = "UN R37 03 series, read second-hand on a public page"
_LED = "UN R128, read second-hand on a public page"

# Category and printed watts of one filament.
FILAMENTS: Mapping[tuple[str, float], UpperWatts] = MappingProxyType(
    {
        ("H1", 55.0): UpperWatts(68.0, 13.2, f"H1, {_MEMORY}"),
        ("H3", 55.0): UpperWatts(68.0, 13.2, f"H3, {_MEMORY}"),
        ("H4", 60.0): UpperWatts(75.0, 13.2, f"H4, {_MEMORY}"),
        ("H4", 55.0): UpperWatts(68.0, 13.2, f"H4, {_MEMORY}"),
        ("H7", 55.0): UpperWatts(58.0, 13.2, f"H7, {_MEMORY}"),
        ("H8", 35.0): UpperWatts(43.0, 13.2, f"H8, {_MEMORY}"),
        ("H11", 55.0): UpperWatts(62.0, 13.2, f"H11, {_MEMORY}"),
        ("HS1", 35.0): UpperWatts(36.75, 13.2, f"HS1, {_MEMORY}"),
        ("HS2", 15.0): UpperWatts(15.9, 13.5, f"HS2, {_MEMORY}"),
        ("S1", 25.0): UpperWatts(26.25, 13.5, f"S1, {_MEMORY}"),
        ("S2", 35.0): UpperWatts(36.75, 13.5, f"S2, {_MEMORY}"),
        ("S3", 15.0): UpperWatts(15.9, 13.5, f"S3, {_MEMORY}"),
        ("R2", 45.0): UpperWatts(57.0, 13.2, f"R2, {_MEMORY}"),
        ("R2", 40.0): UpperWatts(51.0, 13.2, f"R2, {_MEMORY}"),
        ("P21W", 21.0): UpperWatts(26.5, 13.5, f"P21W, {_MEMORY}"),
        ("PY21W", 21.0): UpperWatts(26.5, 13.5, f"PY21W, {_MEMORY}"),
        ("P21/5W", 21.0): UpperWatts(26.5, 13.5, f"P21/5W, {_MEMORY}"),
        ("P21/5W", 5.0): UpperWatts(6.6, 13.5, f"P21/5W, {_MEMORY}"),
        ("PY21/5W", 21.0): UpperWatts(26.5, 13.5, f"PY21/5W, {_PAGE}"),
        ("PY21/5W", 5.0): UpperWatts(6.6, 13.5, f"PY21/5W, {_PAGE}"),
        ("P21/4W", 21.0): UpperWatts(26.5, 13.5, f"P21/4W, {_MEMORY}"),
        ("P21/4W", 4.0): UpperWatts(5.5, 13.5, f"P21/4W, {_MEMORY}"),
        ("R5W", 5.0): UpperWatts(5.5, 13.5, f"R5W, {_MEMORY}"),
        ("R10W", 10.0): UpperWatts(11.0, 13.5, f"R10W, {_MEMORY}"),
        ("RY10W", 10.0): UpperWatts(11.0, 13.5, f"RY10W, {_MEMORY}"),
        ("T4W", 4.0): UpperWatts(4.4, 13.5, f"T4W, {_MEMORY}"),
        ("W3W", 3.0): UpperWatts(3.45, 13.5, f"W3W, {_MEMORY}"),
        ("W5W", 5.0): UpperWatts(5.5, 13.5, f"W5W, {_MEMORY}"),
        ("WY5W", 5.0): UpperWatts(5.5, 13.5, f"WY5W, {_MEMORY}"),
        ("C5W", 5.0): UpperWatts(5.5, 13.5, f"C5W, {_MEMORY}"),
        ("C21W", 21.0): UpperWatts(26.5, 13.5, f"C21W, {_MEMORY}"),
        ("H6W", 6.0): UpperWatts(7.35, 13.5, f"H6W, {_MEMORY}"),
        ("H21W", 21.0): UpperWatts(26.5, 13.5, f"H21W, {_MEMORY}"),
        ("W16W", 16.0): UpperWatts(21.35, 13.5, f"W16W, {_MEMORY}"),
        ("W21W", 21.0): UpperWatts(26.5, 13.5, f"W21W, {_MEMORY}"),
        ("W21/5W", 21.0): UpperWatts(26.5, 13.5, f"W21/5W, {_MEMORY}"),
        ("W21/5W", 5.0): UpperWatts(6.6, 13.5, f"W21/5W, {_MEMORY}"),
        ("P27/7W", 27.0): UpperWatts(32.1, 13.5, f"P27/7W, {_MEMORY}"),
        ("P27/7W", 7.0): UpperWatts(8.5, 13.5, f"P27/7W, {_MEMORY}"),
    }
)
# LED light sources, which are told by their category alone.
LEDS: Mapping[str, UpperWatts] = MappingProxyType(
    {
        "W5W/LED": UpperWatts(2.0, SIGNAL_TEST_V, f"W5W/LED, {_LED}"),
        "WY5W/LED": UpperWatts(2.0, SIGNAL_TEST_V, f"WY5W/LED, {_LED}"),
    }
)


def category_watts(*, category: str, printed_w: float) -> UpperWatts:
    """Watts that a lamp's own category allows it at 12 V.

    category   as printed on the lamp: "P21W", "H4"; "W5W/LED" of an LED light source
    printed_w  0.05 to 130   one filament; it tells which of two, and is not asked of an LED light source
    returns    (watts, test_v, source)

    Raises RangeError for a category, or watts of it, that are not listed.
    Leaves out lamps sold under a category that do not keep it.
    Source: UN R37 03 series and UN R128 category sheets; each row says how it was seen.
    """
    if category in LEDS:
        return LEDS[category]
    known = FILAMENTS.get((category, float(printed_w)))
    if known is None:
        raise RangeError(f"no 12 V lamp of {printed_w:g} W is listed under {category}")
    return known


def categories_of(*, printed_w: float) -> tuple[str, ...]:
    """List the filament categories of some printed watts, for those who ask what would be accepted.

    printed_w  0.5 to 130
    returns    names, none where the watts are in no category

    Raises nothing. Leaves out LED light sources. Source: as category_watts.
    """
    return tuple(category for category, watts in FILAMENTS if watts == printed_w)
