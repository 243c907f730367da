"""The open walk as rows: each wire opened once, worst first; and a traction minus that is lost."""

from dataclasses import dataclass

from bom.build import Build
from bom.circuit.live import DRIVE
from bom.circuit.opens import Opened
from bom.papers.closing_rows import NEEDED, NO_LOADS, dark_words, walked_in
from bom.papers.wire_rows import wire_numbers

HELPS = "an isolated converter; or no signal lead on the 12 V minus; the return bolted, checked, marked"
KEEPS = "no signal lead of the controller on the 12 V minus or the frame"
OWN_LOAD = "that lamp or horn alone"
LAMP_V = 20.0  # what floats above is at pack volts


@dataclass(frozen=True)
class OpenRow:
    """One wire that came off, in words.

    stops  whether the drive stops
    """

    number: str
    opened: Opened
    dark: str
    drops: str
    stops: bool

    @property
    def alone(self) -> bool:
        """Tell whether one load goes dark and nothing else happens."""
        return len(self.opened.dark) == 1 and not self.stops and not self.opened.drops and self.dark not in NEEDED

    @property
    def alike(self) -> tuple[object, ...]:
        """Give what rows that may share a line have in common; what floats at pack volts has one of its own."""
        high = self.opened.floats if abs(self.opened.floats_v) > LAMP_V else ""
        dark = OWN_LOAD if self.alone else self.dark
        return (bool(self.opened.carries), bool(self.opened.floats), high, dark, self.drops)


@dataclass(frozen=True)
class StrayRow:
    """One wire of the traction return that came off, with a bond that should not be."""

    number: str
    wire: str
    bond: str
    through: str
    amps: float
    may_a: float
    drop_v: float

    @property
    def too_much(self) -> bool:
        """Tell whether the thin lead carries more than it may."""
        return self.amps > self.may_a


def open_rows(build: Build) -> list[OpenRow]:
    """List the wires whose loss is noticed while it rides: overloads first, then floating minus, then what stops."""
    numbers, opens = wire_numbers(build), _opens(build)
    loads = {name for opened in opens for name in opened.dark} - set(NO_LOADS)
    rows = [
        OpenRow(
            numbers[opened.wire],
            opened,
            dark_words(opened.dark, loads),
            ", ".join(opened.drops),
            DRIVE in opened.dark,
        )
        for opened in opens
        if not opened.harmless
    ]
    return sorted(rows, key=_order)


def unnoticed(build: Build) -> list[str]:
    """Name the wires whose loss changes nothing while it rides."""
    numbers = wire_numbers(build)
    return [f"{numbers[opened.wire]} {opened.wire}" for opened in _opens(build) if opened.harmless]


def stray_rows(build: Build) -> list[StrayRow]:
    """List the wires of the traction return, worst first."""
    numbers = wire_numbers(build)
    rows = [StrayRow(numbers[s.wire], s.wire, s.bond, s.through, s.amps, s.may_a, s.drop_v) for s in build.walks.strays]
    return sorted(rows, key=lambda row: -round(row.amps / row.may_a, 3))


def _opens(build: Build) -> tuple[Opened, ...]:
    """Give the walk; nothing where the state it is walked in can't be sustained: all is dark there already."""
    return build.walks.opens if walked_in(build).stands else ()


def _order(row: OpenRow) -> tuple[object, ...]:
    opened = row.opened
    return (not opened.carries, -round(abs(opened.floats_v), 3), not row.stops, -len(opened.dark))
