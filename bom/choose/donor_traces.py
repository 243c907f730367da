"""How a donor item's figures were worked out of the job, for those who ask; `bom.choose.donor` makes them."""

from collections.abc import Mapping, Sequence
from functools import partial

from bom.duties.budget import LoadAmps
from bom.duties.load_traces import load_figure, symbol, together
from bom.physics.conductor import COPPER_CONDUCTIVITY_M_PER_OHM_MM2
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, Trace, step

# Lowest volts a donor part met on a tired battery, as a fraction of its nominal supply (common practice).
LOWEST_SERVED_FRACTION = 0.9
_GUESS = "PVC loom wire, common practice"


def service_traces(nominal_v: float, running: Span, margins: Margins, *, cold: bool) -> Mapping[str, Trace]:
    """Tell what the donor's service proves of an item: volts on charge, amps, and amps it closed on."""

    def volts(name: str) -> Step:
        supply = Span.given(nominal_v, "voltage", "the donor's supply", "donor.supply")
        least = Span.fixed(LOWEST_SERVED_FRACTION, "", "on a tired battery", "common practice")
        return step("U * k", U=supply, k=least if name == "supply_min_v" else margins.of("served_volts_fraction"))

    def rush() -> Step:
        alike = Span.fixed(1.0, "", "it switched no lamps of the list", "as feeds is not said")
        return step("I * k", I=running, k=margins.of("cold_filament") if cold else alike)

    names = ("dc_volts_v", "supply_min_v", "supply_max_v")
    return {**{name: partial(volts, name) for name in names}, "carry_a": running.origin, "make_a": rush}


def tried_traces(tested_a: float, name: str, margins: Margins, *, cold: bool) -> Mapping[str, Trace]:
    """Tell what a test with an item's own load proves: it carried those amps, and closed on the load cold."""
    running = Span.given(tested_a, "current", "opened 20 times on the bench", "donor.items.tested", name)
    alike = Span.fixed(1.0, "", "it switches no filament", "as the load list says")
    multiple = margins.of("cold_filament") if cold else alike
    return {"carry_a": running.origin, "make_a": lambda: step("I * k", I=running, k=multiple)}


def fed_together(entries: Sequence[LoadAmps], margins: Margins, more: float) -> Origin | Step:
    """Add the amps of the loads an item fed, as the donor had them; more: at fewer volts the same watts ask more."""

    def at_rail() -> Origin | Step:
        return together([(symbol("I", entry.load.name), load_figure(entry, margins)) for entry in entries])

    if more == 1:
        return at_rail()
    total = Span.of(sum(entry.amps for entry in entries), "current", "as if at 12 V", at_rail)
    return step("I * k", I=total, k=Span.fixed(more, "", "12 V over the donor's supply", "the same watts"))


def wire_traces(area_mm2: float, name: str, nominal_over_copper: float) -> Mapping[str, Trace]:
    """Tell what is worked out of the copper area of a donor's loom."""
    area = Span.given(area_mm2, "area", "copper of its lamp wires", "donor.items.wire", name)

    def metal() -> Step:
        return step("k * sqrt(A)", k=Span.fixed(1.5, "", "mm over the metal", _GUESS), A=area)

    def outside() -> Step:
        over = Span.of(1.5 * area_mm2**0.5, "", "mm over the metal", metal)
        return step("d + w", d=over, w=Span.fixed(1.2, "", "mm, both walls", _GUESS))

    def ohms() -> Step:
        copper = Span.fixed(COPPER_CONDUCTIVITY_M_PER_OHM_MM2, "", "of copper, m/(ohm mm²)", "IEC 60028, from memory")
        less = Span.fixed(nominal_over_copper, "", "nominal area over copper", "ISO 6722-1 limits, from memory")
        return step("1000 / (c * A) * k", c=copper, A=area, k=less)

    return {"area_mm2": area.origin, "conductor_mm": metal, "outside_mm": outside, "resistance_mohm_per_m": ohms}
