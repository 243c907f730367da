"""The cables of a loom as columns, for the heat of a short."""

from collections.abc import Sequence
from math import isnan

import numpy as np

from bom.circuit.bike import Bike
from bom.circuit.clearing import Metals
from bom.circuit.ohms import Strand
from bom.judge.ratings import SHORT_C
from bom.physics.conductor import COPPER_CONDUCTIVITY_M_PER_OHM_MM2

_ASSUMED = {"conductor_mm": 1.5, "outside_mm": 2.7}  # over the strands, and over the wall, of 1 mm2: common practice


def metals_of(bike: Bike, strands: Sequence[Strand]) -> Metals:
    """Gather the figures of some wires; where one is not known, that of a thin PVC wire stands in."""
    rows = [_figures(bike, strand) for strand in strands]
    columns = [np.array(column, dtype=float) for column in zip(*(row[:-1] for row in rows), strict=True)]
    if not rows:
        columns = [np.zeros(0)] * 9
    area, conductor, outside, per_m, start, air, limit, lasting, ampacity = columns
    insulation = tuple(str(row[-1]) for row in rows)
    return Metals(tuple(strands), area, conductor, outside, per_m, insulation, start, air, limit, lasting, ampacity)


def _figures(bike: Bike, strand: Strand) -> tuple[float | str, ...]:
    part = bike.view.parts.get(strand.wire.name)
    known = {name: float(part.number(name)[0]) if part else float("nan") for name in _ASSUMED}
    length_m = max(strand.wire.length_m, 1e-3)
    per_m = strand.ohm_20 / length_m * 1000
    # The copper its ohms stand for: a cable of this nominal area may hold an eighth less.
    area = 1000.0 / (COPPER_CONDUCTIVITY_M_PER_OHM_MM2 * per_m)
    conductor = known["conductor_mm"]
    conductor = _ASSUMED["conductor_mm"] * area**0.5 if isnan(conductor) else conductor
    outside = known["outside_mm"]
    outside = conductor + _ASSUMED["outside_mm"] - _ASSUMED["conductor_mm"] if isnan(outside) else outside
    insulation = part.word("insulation")[0] if part else ""
    ambient = getattr(bike.view.facts.job.ambient, bike.view.loom.place(strand.wire.name).zone.replace(" ", "_"))
    limit = SHORT_C[insulation]
    start = max(min(strand.limit_c, limit - 10.0), ambient)
    figures = (area, conductor, outside, per_m, start, ambient, limit, strand.cable_c, strand.ampacity_a)
    return (*figures, insulation or "PVC")
