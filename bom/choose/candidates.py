"""Which parts may stand at a place: the catalogue's, the donor's own, or the one the builder pinned."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.choose.donor import donor_part, served
from bom.loom.model import Loom, Place
from bom.money.prices import UnitPrices
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.margins import Margins

# Parts that can be bought and what each costs, by table and quantity.
_Known = dict[tuple[Parts, float], tuple[Parts, tuple[float, ...]]]


@dataclass(frozen=True)
class Candidates:
    """Parts that may stand at one place, with what one costs there.

    forced  the place has one part whatever the rules say (pinned, or the owner insists)
    costs   of the whole place's quantity, in the job's currency
    """

    place: Place
    parts: Parts
    costs: tuple[float, ...]
    forced: bool


def candidates(loom: Loom, job: JobFile, catalogue: Catalogue, margins: Margins) -> Mapping[str, Candidates]:
    """List the candidates of every place; pins are checked beforehand. The margins are the job's own."""
    options = {}
    prices = UnitPrices(catalogue.offers, job.money)
    donors = {item.name: item for item in job.donor.items}
    tables: dict[tuple[str, str], Parts] = {}
    known: _Known = {}
    for place in loom.places:
        table = catalogue.families[place.family]
        if place.name in job.pins:
            options[place.name] = _pinned(place, table, job.pins[place.name], prices)
        elif place.item:
            key = (place.family, place.item)
            if key not in tables:
                item = donors[place.item]
                tables[key] = donor_part(place.family, item, served(item, job, margins)).joined(table)
            options[place.name] = _with_donor(place, tables[key], prices, known)
        else:
            options[place.name] = _bought(place, table, prices, known)
    return options


def _bought(place: Place, table: Parts, prices: UnitPrices, known: _Known) -> Candidates:
    """Keep what can be bought, with its price; places of one family that take as many share the answer."""
    key = (table, place.quantity)
    if key not in known:
        costs = [_cost(part, index, table, place.quantity, prices) for index, part in enumerate(table.ids)]
        kept = [index for index, cost in enumerate(costs) if cost is not None]
        known[key] = (table.take(kept), tuple(costs[i] or 0.0 for i in kept))
    return Candidates(place, *known[key], forced=False)


def _pinned(place: Place, table: Parts, part_id: str, prices: UnitPrices) -> Candidates:
    index = table.index(part_id)
    cost = _cost(table.ids[index], index, table, place.quantity, prices)
    return Candidates(place, table.take([index]), (cost or 0.0,), forced=True)


def _with_donor(place: Place, table: Parts, prices: UnitPrices, known: _Known) -> Candidates:
    """Keep the donor's own part, the table's first, free of charge; where the owner insists on it, alone."""
    if place.keep == "yes":
        return Candidates(place, table.take([0]), (0.0,), forced=True)
    return _bought(place, table, prices, known)


def _cost(part: str, index: int, table: Parts, quantity: float, prices: UnitPrices) -> float | None:
    """Price a part for its place, with the contacts and seals that belong to it; the donor's own is free."""
    if table.is_donor(index):
        return 0.0
    own = prices.of(part, quantity)
    if own is None:
        return None
    extra = 0.0
    for name, count in kit(table, index):
        price = prices.of(name, count)
        if price is None:
            return None
        extra += count * price
    return quantity * (own + extra)


def kit(table: Parts, index: int) -> list[tuple[str, float]]:
    """List the contacts and seals one connector needs, with their number."""
    if table.family != "signal_connector":
        return []
    ways = float(table.number("ways")[index])
    ids = (table.word("contact_part")[index], table.word("seal_part")[index])
    return [(part, ways) for part in ids if part]
