"""The dimensions a builder can write, and the spellings of units each accepts."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

# Decimal prefixes of the International System of Units.
SI_PREFIXES = MappingProxyType({"milli": 1e-3, "micro": 1e-6, "nano": 1e-9, "centi": 1e-2, "kilo": 1e3, "mega": 1e6})
# Units of time beside it, in seconds.
SI_TIMES = MappingProxyType({"minute": 60.0, "hour": 3600.0})

REGISTRY_LINES = (
    *(f"{prefix}- = {factor}" for prefix, factor in SI_PREFIXES.items()),
    "metre = [length]",
    "second = [time]",
    "ampere = [current]",
    "kilogram = [mass]",
    "kelvin = [temperature]; offset: 0",
    "unity = []",
    "percent = 0.01 * unity",
    "inch = 0.0254 * metre",
    "foot = 0.3048 * metre",
    *(f"{name} = {factor} * second" for name, factor in SI_TIMES.items()),
    "joule = kilogram * metre ** 2 / second ** 2",
    "watt = joule / second",
    "volt = watt / ampere",
    "ohm = volt / ampere",
    "farad = ampere * second / volt",
    "ampere_hour = ampere * hour",
    "watt_hour = watt * hour",
    "celsius = kelvin; offset: 273.15",
    "fahrenheit = 5 / 9 * kelvin; offset: 233.15 + 200 / 9",
)


@dataclass(frozen=True)
class Dimension:
    """One dimension as people write it.

    name      how the rest of the program calls it
    words     the same with its article, for sentences
    inside    spelling of the unit its floats are in
    units     accepted spelling of a unit -> name in the converting registry
    examples  quantities to show a builder, the most usual first
    steps     for printing: least value (in the inside unit) -> unit, largest first
    signed    negative values mean something
    bare      a number without a unit means something
    """

    name: str
    words: str
    inside: str
    units: Mapping[str, str]
    examples: tuple[str, ...]
    steps: tuple[tuple[float, str], ...]
    signed: bool = False
    bare: bool = False


_ALL = (
    Dimension(
        "length",
        "a length",
        "m",
        {"m": "metre", "mm": "millimetre", "cm": "centimetre", "ft": "foot", "in": "inch"}
        | {"metre": "metre", "metres": "metre", "meter": "metre", "meters": "metre"}
        | {"feet": "foot", "foot": "foot", "inch": "inch", "inches": "inch", "'": "foot", '"': "inch"},
        ("1.8 m", "300 mm", "6 ft"),
        ((1, "m"), (0, "mm")),
    ),
    Dimension(
        "area",
        "an area",
        "mm²",
        {"mm²": "millimetre ** 2", "mm2": "millimetre ** 2", "cm²": "centimetre ** 2"},
        ("2.5 mm²", "14 AWG"),
        ((0, "mm²"),),
    ),
    Dimension(
        "voltage",
        "a voltage",
        "V",
        {"V": "volt", "mV": "millivolt", "kV": "kilovolt", "volt": "volt", "volts": "volt"},
        ("84 V", "12.6 V", "3.65 V"),
        ((0, "V"),),
    ),
    Dimension(
        "current",
        "a current",
        "A",
        {"A": "ampere", "mA": "milliampere", "kA": "kiloampere", "amp": "ampere", "amps": "ampere"},
        ("10 A", "200 mA"),
        ((1e3, "kA"), (1, "A"), (0, "mA")),
    ),
    Dimension(
        "power",
        "a power",
        "W",
        {"W": "watt", "mW": "milliwatt", "kW": "kilowatt", "watt": "watt", "watts": "watt"},
        ("55 W", "1.2 kW"),
        ((1e3, "kW"), (1, "W"), (0, "mW")),
    ),
    Dimension(
        "resistance",
        "a resistance",
        "Ω",
        {"Ω": "ohm", "ohm": "ohm", "ohms": "ohm", "mΩ": "milliohm", "mohm": "milliohm"}
        | {"µΩ": "microohm", "kΩ": "kiloohm", "kohm": "kiloohm", "MΩ": "megaohm", "Mohm": "megaohm"},
        ("4.7 Ω", "0.5 mΩ", "4.7 kohm"),
        ((1e6, "MΩ"), (1e3, "kΩ"), (1, "Ω"), (0, "mΩ")),
    ),
    Dimension(
        "capacitance",
        "a capacitance",
        "F",
        {"F": "farad", "mF": "millifarad", "µF": "microfarad", "uF": "microfarad", "nF": "nanofarad"},
        ("2.2 mF", "470 uF"),
        ((1, "F"), (1e-3, "mF"), (1e-6, "µF"), (0, "nF")),
    ),
    Dimension(
        "time",
        "a time",
        "s",
        {"s": "second", "ms": "millisecond", "µs": "microsecond", "min": "minute", "h": "hour"}
        | {"sec": "second", "seconds": "second", "minutes": "minute", "hours": "hour"},
        ("10 s", "500 ms", "30 min"),
        ((7200, "h"), (120, "min"), (1, "s"), (1e-3, "ms"), (0, "µs")),
    ),
    Dimension(
        "charge",
        "a charge",
        "Ah",
        {"Ah": "ampere_hour", "mAh": "milliampere_hour"},
        ("40 Ah", "2500 mAh"),
        ((1, "Ah"), (0, "mAh")),
    ),
    Dimension(
        "energy",
        "an energy",
        "J",
        {"J": "joule", "kJ": "kilojoule", "Wh": "watt_hour", "kWh": "kilowatt_hour"},
        ("3.2 kWh", "500 Wh", "20 J"),
        ((3.6e6, "kWh"), (3.6e3, "Wh"), (0, "J")),
    ),
    Dimension(
        "temperature",
        "a temperature",
        "°C",
        {"°C": "celsius", "C": "celsius", "°F": "fahrenheit", "F": "fahrenheit"},
        ("40 °C", "40 C", "104 °F"),
        ((0, "°C"),),
        signed=True,
    ),
    Dimension(
        "fraction",
        "a share",
        "",
        {"": "unity", "%": "percent"},
        ("5 %", "0.05"),
        ((0, "%"),),
        bare=True,
    ),
)

DIMENSIONS: Mapping[str, Dimension] = MappingProxyType({kind.name: kind for kind in _ALL})
