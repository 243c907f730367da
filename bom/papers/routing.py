"""How leads are laid so that they live: what holds them, and how tight the heavy ones may be bent."""

from collections.abc import Mapping
from math import ceil, isnan

from bom import units
from bom.build import Build

HEAVY = ("traction", "phase")


def routing(build: Build) -> Mapping[str, object]:
    """Give the distance of supports, the factor of the bend, and a row for each heavy cable of this bike."""
    margins = build.facts.margins
    return {
        "support": units.show(margins.support_m, "length"),
        "factor": f"{margins.bend_over_outside:g}",
        "bends": [_bend(cable, leads, build) for cable, leads in _heavy(build).items()],
    }


def _heavy(build: Build) -> Mapping[str, list[str]]:
    """Group the heavy leads by their cable, in the order of the loom."""
    grouped: dict[str, list[str]] = {}
    for wire in build.loom.wires:
        entry = build.filled.get(wire.name)
        if build.loom.place(wire.name).circuit in HEAVY and entry:
            grouped.setdefault(entry.part_id, []).append(wire.name)
    return grouped


def _bend(cable: str, leads: list[str], build: Build) -> Mapping[str, str]:
    part, factor = build.filled[leads[0]].part, build.facts.margins.bend_over_outside
    outside_mm = float(part.number("outside_mm")[0])
    known = not isnan(outside_mm)
    return {
        "cable": cable,
        "leads": ", ".join(leads),
        "outside": f"{outside_mm:g} mm" if known else "not known: measure it",
        "radius": f"{ceil(round(factor * outside_mm, 6))} mm" if known else f"{factor:g} x what you measure",
    }
