"""Places that the chosen parts make needless: a coil's kick is taken once, by its own clamp or by ours."""

from collections.abc import Mapping
from dataclasses import replace

from bom.choose.filled import Filled
from bom.loom.model import Loom


def without_needless(loom: Loom, filled: Mapping[str, Filled]) -> tuple[Loom, dict[str, Filled]]:
    """Drop the clamp of every coil whose chosen part has its own."""
    needless = {
        link.first
        for link in loom.links
        if link.kind == "clamps" and link.second in filled and filled[link.second].part.word("suppressed")[0] == "yes"
    }
    places = tuple(place for place in loom.places if place.name not in needless)
    links = tuple(link for link in loom.links if link.first not in needless)
    kept = {name: entry for name, entry in filled.items() if name not in needless}
    return replace(loom, places=places, links=links), kept
