"""Amps that a switch's own leads carry: of their copper, or of what they have carried."""

from functools import lru_cache, partial

import numpy as np

from bom.duties.model import Duty
from bom.parts import Column, Parts, Rating
from bom.physics.ampacity import ampacity_a
from bom.physics.conductor import COPPER_CONDUCTIVITY_M_PER_OHM_MM2, copper_resistance_mohm_per_m
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Fact, Origin, Step, step

# PVC leads: 70 degrees (IEC 60364-5-52 Table 52.1, from memory); metal over copper and walls by common practice.
PVC_C = 70.0
METAL_OVER_COPPER = 1.5
BOTH_WALLS_MM = 1.2
# Below this no published table of copper in air speaks (IEC 60364-5-52 begins here), and practice stands in.
LEAST_LISTED_MM2 = 1.5
# Amps of a donor switch known in these ways went through its leads too, or are of the switch with them on.
THROUGH_LEADS = ("served in the donor", "opened on the bench", "measured", "data sheet", "marked")
ASSUMED = "assumed: the thinnest usual lead"


def lead_ampacity(parts: Parts, duty: Duty, margins: Margins) -> Rating:
    """Amps the leads of each switch carry for ever in this place's air, among the wires of the loom.

    Of a donor switch whose leads nobody counted, what they have carried, or what the thinnest usual lead carries;
    NaN where neither is enough for the duty.
    """
    air, lead = duty.ambient_c, parts.rating("lead_mm2")
    counted = lead_amps(lead.values, air.high, margins)
    usual = float(lead_amps(np.array([margins.usual_lead_mm2]), air.high, margins)[0])
    proved = _proved(parts)
    uncounted = np.isnan(counted) & np.array([parts.is_donor(i) for i in range(len(parts))])
    stand = np.fmax(proved, usual)
    values = np.where(uncounted, np.where(stand >= duty.carry_a.high, stand, np.nan), counted)
    known = np.where(proved > usual, parts.evidence_of("carry_a"), ASSUMED)
    evidence = np.where(uncounted & ~np.isnan(values), known, lead.evidence)
    if not uncounted[0] or np.isnan(values[0]):
        return Rating(values, evidence, partial(_shown, parts.first("lead_mm2"), air, margins))
    if known[0] != ASSUMED:
        return Rating(values, evidence, parts.cell("carry_a"))
    return Rating(values, evidence, partial(_shown, margins.of("usual_lead_mm2", "area"), air, margins))


def lead_amps(area_mm2: Column, ambient_c: float, margins: Margins) -> Column:
    """Take the lower of the ampacity and, where no table speaks, of amps a square millimetre by practice."""
    return _lead_amps(area_mm2.tobytes(), ambient_c, margins)


@lru_cache(maxsize=256)
def _lead_amps(areas: bytes, ambient_c: float, margins: Margins) -> Column:
    """Work a table of switches out once for its air."""
    area_mm2: Column = np.frombuffer(areas, dtype=np.float64)
    metal = METAL_OVER_COPPER * np.sqrt(area_mm2)
    model = ampacity_a(
        area_mm2=area_mm2,
        conductor_mm=metal,
        outside_mm=metal + BOTH_WALLS_MM,
        resistance_20_mohm_per_m=copper_resistance_mohm_per_m(area_mm2=area_mm2),
        cable_max_c=PVC_C,
        terminal_max_c=margins.terminal_c,
        ambient_c=ambient_c,
        insulation="PVC",
        loaded_wires=margins.bundle_wires,
    )
    practice = np.where(area_mm2 < LEAST_LISTED_MM2, margins.thin_lead_a_per_mm2 * area_mm2, np.inf)
    return np.where(np.isnan(area_mm2), np.nan, np.minimum(model, practice))


def _proved(parts: Parts) -> Column:
    """Give the amps that each switch is known to stand with its leads on; NaN where none are."""
    evidence = parts.evidence_of("carry_a")
    went = np.array([word in THROUGH_LEADS for word in evidence])
    return np.where(went, parts.number("carry_a"), np.nan)


def _shown(area: Span, air: Span, margins: Margins) -> Origin | Step | None:
    """Show what the amps of a lead were worked out from."""
    if np.isnan(area.low):
        return area.origin()
    over = Span.fixed(METAL_OVER_COPPER, "", "mm over the metal", "common practice")
    metal_mm = METAL_OVER_COPPER * area.low**0.5
    metal = Span.of(metal_mm, "", "mm over the metal", lambda: step("k * sqrt(A)", k=over, A=area))
    walls = Span.fixed(BOTH_WALLS_MM, "", "mm, both walls", "common practice")
    copper = Span.fixed(COPPER_CONDUCTIVITY_M_PER_OHM_MM2, "", "of copper, m/(ohm mm²)", "IEC 60028, from memory")
    ohms = 1000 / (COPPER_CONDUCTIVITY_M_PER_OHM_MM2 * area.low)
    formula = "ampacity(A, d, D, r_20, T_most, T_end, T_air, insulation, n)"
    listed = area.low >= LEAST_LISTED_MM2
    return step(
        formula if listed else f"min({formula}, k * A)",
        A=area,
        d=metal,
        D=Span.of(metal.low + BOTH_WALLS_MM, "", "mm outside", lambda: step("d + w", d=metal, w=walls)),
        r_20=Span.of(ohms, "", "mohm/m at 20 °C", lambda: step("1000 / (c * A)", c=copper, A=area)),
        T_most=Span.fixed(PVC_C, "temperature", "PVC leads", "IEC 60364-5-52 Table 52.1, from memory"),
        T_end=margins.of("terminal_c", "temperature"),
        T_air=air.at_high(),
        insulation=Fact("PVC", "PVC", Origin("program", "insulation of the leads", "", "common practice")),
        n=margins.of("bundle_wires"),
        **({} if listed else {"k": margins.of("thin_lead_a_per_mm2")}),
    )
