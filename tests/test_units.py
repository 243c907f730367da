"""Reading and printing quantities, against the defined values of the units."""

import math
import subprocess
import sys

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from bom import units
from bom.dimensions import DIMENSIONS, SI_PREFIXES

# Published values:
# - international yard and pound agreement (1959): 1 yd = 0.9144 m exactly, so 1 ft = 0.3048 m and
#   1 in = 25.4 mm; from memory
# - The International System of Units (SI Brochure), 9th edition: table 8, min, h as accepted units;
#   section 2.3.1, t/°C = T/K - 273.15; table 7, prefixes; from memory
# - Fahrenheit scale: ice point 32 °F, boiling point of water 212 °F, -40 the same on both; from memory
PUBLISHED = [
    ("1 ft", "length", 0.3048),
    ("1 in", "length", 0.0254),
    ("25.4 mm", "length", 0.0254),
    ("32 °F", "temperature", 0.0),
    ("212 F", "temperature", 100.0),
    ("-40 °F", "temperature", -40.0),
    ("1 h", "time", 3600.0),
    ("1 min", "time", 60.0),
    ("1 Wh", "energy", 3600.0),
    ("1 kWh", "energy", 3.6e6),
    ("1 cm²", "area", 100.0),
    ("1 µF", "capacitance", 1e-6),
    ("1 mΩ", "resistance", 1e-3),
    ("1 %", "fraction", 0.01),
]


@pytest.mark.parametrize(("text", "dimension", "value"), PUBLISHED)
def test_published_conversions(text: str, dimension: str, value: float) -> None:
    assert units.read(text, dimension) == pytest.approx(value, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "dimension", "value"),
    [
        ("1,5 mm²", "area", 1.5),
        ("2.5mm2", "area", 2.5),
        ("0,500 m", "length", 0.5),
        ("1 500 W", "power", 1500),
        ("1\u202f500,5 W", "power", 1500.5),
        ("6\u00a0ft", "length", 1.8288),
        (" .5 A ", "current", 0.5),
        ("200 mA", "current", 0.2),
        ("6 feet", "length", 1.8288),
        ('40"', "length", 1.016),
        ("60 watts", "power", 60),
        ("220 amps", "current", 220),
        ("62 volts", "voltage", 62),
        ("10 sec", "time", 10),
        ("4.7 kohm", "resistance", 4700),
        ("5 \u2126", "resistance", 5),
        ("470 \u03bcF", "capacitance", 470e-6),
        ("2500 mAh", "charge", 2.5),
        ("\u221210 °C", "temperature", -10),
        ("104 °F", "temperature", 40),
        ("0.05", "fraction", 0.05),
    ],
)
def test_spellings(text: str, dimension: str, value: float) -> None:
    assert units.read(text, dimension) == value


# ASTM B258 (standard nominal diameters and areas of AWG sizes), areas in mm² rounded as in handbook
# tables; from memory.
@pytest.mark.parametrize(
    ("text", "area_mm2"),
    [
        ("4/0 AWG", 107.2),
        ("2/0 AWG", 67.43),
        ("00 awg", 67.43),
        ("1 AWG", 42.41),
        ("10AWG", 5.26),
        ("18 AWG", 0.823),
    ],
)
def test_wire_gauges(text: str, area_mm2: float) -> None:
    assert units.read(text, "area") == pytest.approx(area_mm2, rel=1e-3)


@pytest.mark.parametrize(
    ("text", "dimension", "says"),
    [
        ("400 a", "current", '"a" is not a unit of current'),
        ("10**9**9", "power", "is not a unit of power"),
        ("12V/24V", "voltage", '"V/24V" is not a unit of voltage'),
        ("1,500 W", "power", 'Write "1500 W" or "1.5 W".'),
        ("1.500,5 m", "length", "not one plain number"),
        ("1,500.5 m", "length", "not one plain number"),
        ("1 50 W", "power", "not one plain number"),
        ("5\u00b2 W", "power", "is not a unit of power"),
        ("1e3 W", "power", "is not a unit of power"),
        ("6 ft 2 in", "length", "is not a unit of length"),
        ("300 mm", "area", "is not a unit of area"),
        ("14 AWG", "length", "is not a unit of length"),
        ("99 AWG", "area", "not a gauge known here"),
        ("M8", "length", 'Write a length, like "1.8 m", "300 mm" or "6 ft".'),
        ("", "length", "Write a length"),
        ("nan V", "voltage", "Write a voltage"),
        ("9" * 400 + " V", "voltage", "Write a voltage"),
        ("12", "voltage", 'Write a voltage with its unit, like "12 V".'),
        ("-3 V", "voltage", "may not be negative"),
        ("-5 %", "fraction", "may not be negative"),
    ],
)
def test_refused_with_what_to_write(text: str, dimension: str, says: str) -> None:
    with pytest.raises(ValueError) as refused:  # noqa: PT011 - the message is checked below
        units.read(text, dimension)
    assert says in str(refused.value)


@pytest.mark.parametrize(
    ("value", "dimension", "text"),
    [
        (84, "voltage", "84.0 V"),
        (-0.01, "voltage", "0.0 V"),
        (1.8, "length", "1.8 m"),
        (0.3, "length", "300 mm"),
        (35, "area", "35 mm²"),
        (0.0022, "capacitance", "2.2 mF"),
        (470e-6, "capacitance", "470 µF"),
        (0.0005, "resistance", "0.5 mΩ"),
        (6200, "current", "6.2 kA"),
        (0.99996, "current", "1 A"),
        (0, "current", "0 A"),
        (12345, "power", "12.3 kW"),
        (90, "time", "90 s"),
        (1800, "time", "30 min"),
        (-10, "temperature", "-10 °C"),
        (0.05, "fraction", "5 %"),
        (math.nan, "current", "not known"),
        (math.inf, "current", "no limit"),
    ],
)
def test_printed_for_people(value: float, dimension: str, text: str) -> None:
    assert units.show(value, dimension) == text


@given(st.sampled_from(sorted(set(DIMENSIONS) - {"voltage"})), st.floats(1e-3, 1e7))
def test_what_is_printed_reads_back(dimension: str, value: float) -> None:
    assert units.read(units.show(value, dimension, digits=6), dimension) == pytest.approx(value, rel=1e-5)


@given(st.floats(0, 1e5))
def test_printed_voltage_reads_back(value: float) -> None:
    assert units.read(units.show(value, "voltage"), "voltage") == pytest.approx(value, abs=0.051)


@given(st.text(max_size=60), st.sampled_from(sorted(DIMENSIONS)))
def test_any_text_is_read_or_refused(text: str, dimension: str) -> None:
    refusal = ""
    try:
        assert math.isfinite(units.read(text, dimension))
    except ValueError as error:
        refusal = str(error)
    assert not refusal or "Write" in refusal


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
def test_every_spelling_and_example_reads(dimension: str) -> None:
    kind = DIMENSIONS[dimension]
    for text in (*kind.examples, *(f"1 {unit}" for unit in kind.units)):
        assert math.isfinite(units.read(text, dimension))


def test_converting_library_is_loaded_only_when_needed() -> None:
    code = 'import sys; from bom import units; units.read("12 V", "voltage"); print("pint" in sys.modules)'
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.strip() == "False"


def known_units() -> list[tuple[str, str]]:
    """Every unit that is the inside unit with a decimal prefix, and those of time."""
    return [("minute", "second"), ("hour", "second")] + [
        (unit, kind.units[kind.inside])
        for kind in DIMENSIONS.values()
        for unit in dict.fromkeys(kind.units.values())
        if unit.removesuffix(kind.units[kind.inside]) in SI_PREFIXES
    ]


def test_factors_known_without_it_are_those_of_the_unit_library() -> None:
    """Against pint's own definitions (SI brochure prefixes), not ours."""
    library = pint.UnitRegistry()
    assert len(known_units()) > 15
    for unit, inside in known_units():
        expected = float(library.Quantity(1.0, unit).to(inside).magnitude)
        assert units._scale(unit, inside) == (pytest.approx(expected, rel=1e-12), 0.0), unit
