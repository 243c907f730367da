"""A direct-current network: points, and the elements between them. It knows nothing of bikes."""

from dataclasses import dataclass, field


@dataclass(frozen=True)
class Resistor:
    """A wire, a contact, a fuse, a resistor: `ohm` between two points, above zero."""

    name: str
    start: str
    end: str
    ohm: float


@dataclass(frozen=True)
class Source:
    """A battery: `volts` behind `ohm`, which is above zero."""

    name: str
    plus: str
    minus: str
    volts: float
    ohm: float


@dataclass(frozen=True)
class Draw:
    """What draws a set current, or a set power, from whatever volts it finds.

    kind     "amps" or "watts"
    amount   A or W; below zero it feeds back (regeneration)
    least_v  volts below which it only draws in proportion, as a resistor would; above zero. A draw of watts
             has let go there: more current no longer brings it more power.
    """

    name: str
    plus: str
    minus: str
    kind: str
    amount: float
    least_v: float


@dataclass(frozen=True)
class Converter:
    """A DC-DC converter: it holds `output_v` until it reaches `limit_a`, and takes the power from its input.

    limit_a         A at which it stops holding volts; then it keeps that current, or lets go
    keeps_current   True where it limits at constant current, False where it hiccups or latches
    output_ohm      ohm of its output, above zero
    efficiency      ratio, above 0 to 1
    idle_w          W it takes with nothing on its output
    lowest_input_v  V below which it lets go
    """

    name: str
    input_plus: str
    input_minus: str
    output_plus: str
    output_minus: str
    output_v: float
    limit_a: float
    keeps_current: bool
    output_ohm: float
    efficiency: float
    idle_w: float
    lowest_input_v: float


@dataclass(frozen=True)
class Network:
    """Elements, and the points that volts are counted from, first choice first.

    Every island of points that no element joins to another counts its volts from its own reference: the first
    of `references` in it, else its first point.
    """

    resistors: tuple[Resistor, ...] = ()
    sources: tuple[Source, ...] = ()
    draws: tuple[Draw, ...] = ()
    converters: tuple[Converter, ...] = ()
    references: tuple[str, ...] = field(default=())
