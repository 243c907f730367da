"""Places that the chosen parts make needless: a coil's kick is taken once, by its own clamp or by ours."""

from collections.abc import Mapping
from dataclasses import replace

from bom.build import Filled
from bom.loom.model import Loom


def without_needless(loom: Loom, filled: Mapping[str, Filled]) -> tuple[Loom, dict[str, Filled]]:
    """Drop the coil clamp where the chosen contactor has its own."""
    contactor = filled.get("contactor")
    if contactor is None or contactor.part.word("suppressed")[0] != "yes":
        return loom, dict(filled)
    places = tuple(place for place in loom.places if place.name != "coil clamp")
    links = tuple(link for link in loom.links if link.first != "coil clamp")
    kept = {name: entry for name, entry in filled.items() if name != "coil clamp"}
    return replace(loom, places=places, links=links), kept
