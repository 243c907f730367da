"""What a donor item costs: the parts of the change that lets it stay, or of what stands in its place.

What the loom lays for the change is priced as it was chosen. What it does not lay (a relay that holds itself, a second
lead) is priced like the cheapest of its kind that stands at 12 V in this build: judged there for a duty like it.
"""

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil, nan

from bom.check.donor_words import DonorVerdict, place_of
from bom.choose.filled import Filled
from bom.loom.diodes import diodes_place
from bom.loom.low_volt import circuit_of
from bom.loom.relay_names import STOP_LEADS, STOP_RELAY, relay_of
from bom.loom.tails import tail_place
from bom.read.job import Item, JobFile

FEW = 2  # parts that are named by what they are, not by their ids alone
AT_12_V = ("12 V supply", "key control")


@dataclass(frozen=True)
class Shelf:
    """What stands in a build, and what it costs there.

    costs  by place, of its whole quantity with contacts and seals, in the job's currency
    """

    job: JobFile
    filled: Mapping[str, Filled]
    costs: Mapping[str, float]

    def bought(self, names: Iterable[str]) -> list[str]:
        """List the places among these at which something is bought."""
        return [name for name in names if name in self.filled and self.filled[name].origin != "donor"]

    def starting(self, *starts: str) -> list[str]:
        """List the places whose names start so, with their crimps, sleeves and clamps."""
        return [name for name in self.filled if name.startswith(starts)]


def priced(verdicts: Sequence[DonorVerdict], shelf: Shelf) -> tuple[DonorVerdict, ...]:
    """Say of each item what its change, or what stands in its place, takes and costs."""
    items = {item.name: item for item in shelf.job.donor.items}
    return tuple(_priced(told, items.get(told.name), shelf) for told in verdicts)


def _priced(told: DonorVerdict, item: Item | None, shelf: Shelf) -> DonorVerdict:
    goes = told.verdict == "goes"
    places = shelf.bought(_in_its_place(told, item, shelf) if goes else _of_its_change(told, item, shelf))
    like = [] if goes else [_like(kind, shelf) for kind in told.takes.split("; ") if kind]
    words = [*_pieces(places, shelf), *(word for word, _ in like)]
    cost = sum([*(shelf.costs[name] for name in places), *(each for _, each in like)]) if words else nan
    return replace(told, takes=", ".join(words), cost=round(cost, 2))


def _pieces(places: Sequence[str], shelf: Shelf) -> list[str]:
    """Name the parts at some places, each once, with how much of it; a few by what they are, many by their ids."""
    counted: dict[tuple[str, str], float] = defaultdict(float)
    names = {}
    for entry in (shelf.filled[name] for name in places):
        counted[entry.part_id, " m" if entry.place.family == "cable" else ""] += entry.place.quantity
        names[entry.part_id] = f"{entry.part_id} {entry.part.word('name')[0]}"
    told = names if len(counted) <= FEW else {part: part for part in names}
    return [_piece(told[part], count, unit) for (part, unit), count in counted.items()]


def _piece(part: str, count: float, unit: str) -> str:
    if unit:
        return f"{count:.3g}{unit} {part}"
    return part if count == 1 else f"{ceil(count)} x {part}"


def _in_its_place(told: DonorVerdict, item: Item | None, shelf: Shelf) -> list[str]:
    """List the places of what is bought in an item's stead."""
    if item and item.kind == "loom":
        return _lamp_runs(shelf)
    return [place_of(told.kind, told.name) if item else f"new {told.name}"]


def _lamp_runs(shelf: Shelf) -> list[str]:
    """List the wires of the lamps' circuits, with their crimps."""
    circuits = {circuit_of(load) for load in shelf.job.loads}
    runs = [
        name
        for name, entry in shelf.filled.items()
        if entry.place.family == "cable" and entry.place.circuit in circuits
    ]
    return [*runs, *(f"{name} terminals" for name in runs)]


def _of_its_change(told: DonorVerdict, item: Item | None, shelf: Shelf) -> list[str]:
    """List the places that the loom lays for an item to stay: its relay, renewed runs, tails and diodes."""
    if told.verdict == "test first":
        return []
    if item and item.relay:
        return shelf.starting(*((STOP_RELAY, *STOP_LEADS) if item.kind == "kill switch" else (relay_of(item),)))
    if item and item.kind == "loom":
        return _lamp_runs(shelf)
    load = next((load for load in shelf.job.loads if load.name == told.name), None)
    return [tail_place(load), diodes_place(load)] if load else []


def _like(kind: str, shelf: Shelf) -> tuple[str, float]:
    """Name and price a part like one that stands at 12 V in this build."""
    family = {"relay": "relay", "lead": "cable"}[kind]
    at_12_v = {*AT_12_V, *map(circuit_of, shelf.job.loads)}
    known = [
        (shelf.costs[name] / entry.place.quantity, entry.part_id)
        for name, entry in shelf.filled.items()
        if entry.place.family == family and entry.place.circuit in at_12_v and entry.origin != "donor"
    ]
    if not known:
        return f"a {kind}, not priced: none stands at 12 V here", nan
    each, part_id = min(known)
    if kind == "lead":
        return f"{shelf.job.runs.front:.3g} m {part_id}", each * shelf.job.runs.front
    return part_id, each
