"""What is taken of a donor's loom when only its copper was counted, and of a lamp that gave way to another."""

from bom.physics.conductor import copper_resistance_mohm_per_m
from bom.read.job import Load

SAID = "as the job says"
# A cable of a nominal area has up to 12 % less copper: ISO 6722-1 resistance limits, from memory.
NOMINAL_OVER_COPPER = 1.12


def loom_wire(area_mm2: float) -> dict[str, tuple[float | str, str]]:
    """Assume the commonest old loom wire: PVC, 60 V class, 85 degrees, thick wall (common practice)."""
    how = "assumed: PVC loom wire, common practice"
    conductor_mm = 1.5 * area_mm2**0.5
    return {
        "resistance_mohm_per_m": (float(copper_resistance_mohm_per_m(area_mm2=area_mm2)) * NOMINAL_OVER_COPPER, how),
        "class_dc_v": (60.0, how),
        "class_ac_v": (25.0, how),
        "conductor_max_c": (85.0, how),
        "conductor_mm": (conductor_mm, how),
        "outside_mm": (conductor_mm + 1.2, how),
        "insulation": ("PVC", how),
        "conductor_class": ("5", how),
        "colour": ("as it is", SAID),
    }


def as_it_was(load: Load) -> Load:
    """Give the load the donor had there: the same, or a filament lamp of the watts it was."""
    if load.was is None:
        return load
    return load.model_copy(update={"power": load.was, "current": None, "kind": "filament", "category": ""})
