"""Volts of a cell by its chemistry, and fault current of a pack."""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from bom.physics.ranges import Answer, Quantity, check_range

_COMMON = "common practice of cell makers, read second-hand on a public page"
_MEMORY = "common practice, from memory; the maker's sheet rules"
_FIFTH = "from memory; the maker's curve rules"


@dataclass(frozen=True)
class Chemistry:
    """Volts of one cell. A maker's own figures stand over these.

    full_v     at the end of charge
    nominal_v  as marked
    empty_v    usual end of discharge
    fifth_v    at rest with a fifth of its charge left; from memory, the maker's curve rules
    source     how the figures were seen, but for fifth_v
    """

    full_v: float
    nominal_v: float
    empty_v: float
    fifth_v: float
    source: str

    def source_of(self, name: str) -> str:
        """Say how one of the figures was seen."""
        return _FIFTH if name == "fifth_v" else self.source


CHEMISTRIES: Mapping[str, Chemistry] = MappingProxyType(
    {
        "NMC": Chemistry(4.20, 3.60, 3.00, 3.50, _COMMON),
        "NMC-HV": Chemistry(4.35, 3.70, 3.00, 3.60, _MEMORY),
        "NCA": Chemistry(4.20, 3.60, 3.00, 3.45, _COMMON),
        "LCO": Chemistry(4.20, 3.60, 3.00, 3.60, _COMMON),
        "LMO": Chemistry(4.20, 3.70, 3.00, 3.65, _COMMON),
        "LFP": Chemistry(3.65, 3.20, 2.50, 3.20, _COMMON),
        "LTO": Chemistry(2.85, 2.40, 1.80, 2.25, _COMMON),
        # per 2 V cell: a 12 V block is six of them
        "lead-acid": Chemistry(2.45, 2.00, 1.75, 1.97, _MEMORY),
    }
)

LEAST_CELL_PRODUCT_MOHM_AH = 20.0
GREATEST_CELL_PRODUCT_MOHM_AH = 190.0
FIRST_PEAK_RESISTANCE_SHARE = 0.9


def cell_resistance_span_mohm(*, capacity_ah: Quantity) -> tuple[Answer, Answer]:
    """Lowest and highest DC resistance that a healthy cell of this capacity may have.

    20 / capacity and 190 / capacity

    capacity_ah  0.5 to 400   one cell
    returns      (lowest, highest) mohm at 25 C, begin of life

    Raises RangeError outside that span.
    Leaves out chemistry, build, cold and age: the span is wide on purpose and stands in for a sheet.
    Source: product of resistance and capacity over cells of seven builds (20 power cell, 188 energy cell),
    read second-hand on public pages and from memory.
    """
    check_range("capacity_ah", capacity_ah, low=0.5, high=400.0)
    return LEAST_CELL_PRODUCT_MOHM_AH / capacity_ah, GREATEST_CELL_PRODUCT_MOHM_AH / capacity_ah


def pack_resistance_ohm(*, series: Quantity, parallel: Quantity, cell_resistance_mohm: Quantity) -> Answer:
    """Resistance of a pack's cells.

    R = cell * series / parallel / 1000

    series                1 to 200
    parallel              1 to 200
    cell_resistance_mohm  0.05 to 200   DC, not the lower 1 kHz figure
    returns               ohm

    Raises RangeError outside those spans.
    Leaves out links, sense boards and cables: less resistance, so more fault current, which is safe for
    breaking capacity and unsafe for "will the fuse open".
    Source: Ohm's law.
    """
    check_range("series", series, low=1.0, high=200.0)
    check_range("parallel", parallel, low=1.0, high=200.0)
    check_range("cell_resistance_mohm", cell_resistance_mohm, low=0.05, high=200.0)
    return cell_resistance_mohm * series / parallel / 1000.0


def highest_fault_a(*, full_charge_v: Quantity, pack_resistance_ohm: Quantity) -> Answer:
    """Greatest current that a full pack feeds into a short at its own terminals.

    I = V / (0.9 * R)

    full_charge_v        1 to 1000
    pack_resistance_ohm  0.0001 to 20   fresh and warm, no wire
    returns              A

    Raises RangeError outside those spans.
    Leaves out wire and links (which lower it) and inductance (which delays it).
    Source: the 0.9 of IEC 61660-1:1997 (lead-acid peak), read second-hand on a public page; its use for
    lithium cells is our own adaptation, not standardised.
    """
    check_range("full_charge_v", full_charge_v, low=1.0, high=1000.0)
    check_range("pack_resistance_ohm", pack_resistance_ohm, low=0.0001, high=20.0)
    return full_charge_v / (FIRST_PEAK_RESISTANCE_SHARE * pack_resistance_ohm)


def lowest_fault_a(
    *,
    lowest_rest_v: Quantity,
    pack_resistance_ohm: Quantity,
    wire_resistance_ohm: Quantity,
    cold_aged_factor: Quantity,
) -> Answer:
    """Least current that an empty, cold and aged pack feeds into a short at the far end of its wire.

    I = V / (factor * R + wire)

    lowest_rest_v        1 to 1000
    pack_resistance_ohm  0.0001 to 20   fresh and warm
    wire_resistance_ohm  0 to 20        out and back, hot, with its joints
    cold_aged_factor     1 to 10        about 2 for age alone, 4 to 6 when cold as well
    returns              A

    Raises RangeError outside those spans.
    Leaves out the arc's own volts and a source that limits itself (a converter's limit rules there).
    Source: Ohm's law; the factor's usual values from memory.
    """
    check_range("lowest_rest_v", lowest_rest_v, low=1.0, high=1000.0)
    check_range("pack_resistance_ohm", pack_resistance_ohm, low=0.0001, high=20.0)
    check_range("wire_resistance_ohm", wire_resistance_ohm, low=0.0, high=20.0)
    check_range("cold_aged_factor", cold_aged_factor, low=1.0, high=10.0)
    return lowest_rest_v / (cold_aged_factor * pack_resistance_ohm + wire_resistance_ohm)
