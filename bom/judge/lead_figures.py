"""Figures and words of control leads as the job gives them, for the rules about them."""

from bom.duties.circuits import Facts, rail_ends
from bom.leads.model import End
from bom.read.lead_kinds import LEVELS, PACK, TWELVE
from bom.span import Span
from bom.trace import Fact, Origin

Ends = tuple[Span | None, Span | None]


def volts_of(end: End, facts: Facts) -> Ends:
    """Give least and most volts of an end; those of the bike's own wires by their source, None where not known."""
    if not end.outside:
        return _given(end.low_v, end, "low", "least"), _given(end.high_v, end, "high", "most")
    if end.level == TWELVE:
        return rail_ends(facts.margins)
    return (facts.pack.lowest_sag_v, facts.pack.highest_bus_v) if end.level == PACK else (None, None)


def _given(value: float | None, end: End, key: str, word: str) -> Span | None:
    if value is None:
        return None
    return Span.given(value, "voltage", f"{word} volts of the {end.name}", f"devices.leads.{key}", end.name)


def amps_of(value: float, end: End, key: str) -> Span:
    """Give amps that the job says of a lead, under "supply" or "draws"."""
    return Span.given(value, "current", f"{key} of the {end.name}", f"devices.leads.{key}", end.name)


def signal_of(end: End) -> Fact:
    """Give what stands on an end, as a word."""
    return _word(end.signal, end)


def level_of(end: End, *, at_most: bool = False) -> Fact:
    """Give the volts that live on an end, as a word."""
    level = LEVELS[end.level or 0]
    return _word(f"at most {level}" if at_most else level, end)


def _word(text: str, end: End) -> Fact:
    origin = Origin("loom", end.name) if end.outside else Origin("job", "devices.leads.signal", end.name)
    return Fact(text, text, origin)


def unknown_signal(end: End) -> str:
    """Name the datum that settles an end whose signal is not said."""
    return f"what stands on the {end.name} (its diagram, or measured against its ground)"


def unknown_volts(end: End, word: str) -> str:
    """Name the datum that settles an end whose least or most volts are not said."""
    return f"{word} volts of the {end.name} (its sheet, or measured)"
