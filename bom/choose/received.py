"""What arrived in place of what was ordered: it stands at its place, whatever was chosen there."""

from collections.abc import Mapping

from bom.choose.filled import Filled
from bom.loom.model import Loom
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile

RECEIVED = "received"


def with_received(filled: Mapping[str, Filled], loom: Loom, job: JobFile, catalogue: Catalogue) -> dict[str, Filled]:
    """Put each received part at its place; one for a place that this bike does not come to have is left aside."""
    places = {place.name: place for place in loom.places}
    stands = dict(filled)
    for entry in job.received:
        place = places.get(entry.place)
        if place is not None:
            table = catalogue.families[place.family]
            stands[place.name] = Filled(place, table.take([table.index(entry.part)]), RECEIVED)
    return stands
