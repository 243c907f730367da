"""The network a short meets: everything closed, nothing drawn, the pack at its strongest or at its weakest."""

from dataclasses import dataclass
from math import isnan

from bom.circuit.bike import PACK_MINUS, REFERENCES, Bike, buffer_battery, common_minus
from bom.circuit.network import Network, Resistor, Source
from bom.circuit.ohms import bridge_ohm, strand_ohms

CONVERTER, PACK = "converter", "pack"
_PEAK_SHARE = 0.9  # of the pack's ohms at the first moment: IEC 61660-1, as in bom.physics.pack
_COLD_20_C = 20.0


@dataclass(frozen=True)
class Limit:
    """What the converter feeds into a short.

    high_a  A it may feed
    low_a   A it surely feeds on and on: none where it hiccups, latches or is not known to limit
    known   False where nobody knows how it behaves
    """

    high_a: float
    low_a: float
    known: bool


def fault_network(bike: Bike, *, strongest: bool) -> Network:
    """Give resistors and sources of a loom with every contact closed.

    Strongest: a full, warm, new pack at its first moment, wires at 20 C, joints and contacts at their best.
    Weakest: an empty, cold, aged pack, wires at the heat they stand, joints and contacts at their sound worst.
    """
    margins = bike.view.facts.margins
    some = [strand for strand in bike.strands.values() if strand.wire.count == 1]
    at_c = [_COLD_20_C if strongest else strand.limit_c for strand in some]
    ohms = strand_ohms(some, at_c, margins, worn=not strongest)
    resistors = [
        Resistor(each.wire.name, each.wire.start, each.wire.end, ohm) for each, ohm in zip(some, ohms, strict=True)
    ]
    sources = [Source(PACK, "pack plus", PACK_MINUS, *_pack(bike, strongest=strongest))]
    for bridge in bike.bridges:
        if bridge.kind in ("fuse", "contact", "plug", "shunt", "resistor"):
            ohm = bridge_ohm(bridge, bike.view.parts.get(bridge.place), margins, high=not strongest)
            resistors.append(Resistor(bridge.name, bridge.start, bridge.end, ohm))
        elif bridge.kind == "buffer":
            sources.append(buffer_battery(bike, bridge, strong=strongest))
    if CONVERTER in bike.view.parts:
        sources.append(_converter(bike, strongest=strongest))
    resistors += common_minus(bike)
    return Network(tuple(resistors), tuple(sources), references=REFERENCES)


def _pack(bike: Bike, *, strongest: bool) -> tuple[float, float]:
    """Give the volts and ohms of the pack at either end: plain Thevenin."""
    pack = bike.view.facts.pack
    if strongest:
        return pack.full_charge_v.high, _PEAK_SHARE * pack.resistance_ohm.low
    return pack.lowest_rest_v.low, bike.view.facts.margins.cold_aged_factor * pack.resistance_ohm.high


def _converter(bike: Bike, *, strongest: bool) -> Source:
    """Take the converter as volts behind its own ohms; beside a buffer battery as volts that fall to its limit."""
    part, margins = bike.view.parts[CONVERTER], bike.view.facts.margins
    volts = float(part.number("output_v")[0])
    volts = volts if volts > 0 else margins.rail_volts
    limit = converter_limit(bike)
    amps = limit.high_a if strongest else limit.low_a
    buffered = any(bridge.kind == "buffer" for bridge in bike.bridges)
    ohm = volts / max(amps, 1e-3) if buffered else margins.converter_output_ohm
    return Source(CONVERTER, "12 V plus", "12 V minus", volts, ohm)


def converter_limit(bike: Bike) -> Limit:
    """Say what the converter feeds into a short: only constant current goes on and on."""
    part = bike.view.parts.get(CONVERTER)
    if part is None:
        return Limit(0.0, 0.0, known=True)
    amps, overload = float(part.number("output_a")[0]), part.word("overload")[0]
    most = bike.view.facts.margins.converter_fault_a
    measured = not isnan(amps)
    keeps = measured and overload == "constant current"
    return Limit(amps if measured else most, amps if keeps else 0.0, measured and bool(overload))
