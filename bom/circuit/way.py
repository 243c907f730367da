"""The way of a current: what carries it, in the order it comes by."""

from collections.abc import Sequence

from bom.circuit.network import Resistor, Source


def in_order(carriers: Sequence[Resistor], source: Source, point: str, back: str) -> tuple[str, ...]:
    """Put what carries a short's current in order: from the source's plus to the point, from there home to its minus.

    What lies on neither way, a parallel one, comes last, in the order given.
    """
    left = list(carriers)
    found = _walk(left, source.plus, point)
    found += _walk(left, back, source.minus)
    return (*found, *(carrier.name for carrier in left))


def _walk(left: list[Resistor], here: str, end: str) -> list[str]:
    """Go from one carrier to the next that it touches, until the end or until none is left; take them out."""
    found = []
    while here != end:
        carrier = next((carrier for carrier in left if here in (carrier.start, carrier.end)), None)
        if carrier is None:
            break
        left.remove(carrier)
        found.append(carrier.name)
        here = carrier.end if carrier.start == here else carrier.start
    return found
