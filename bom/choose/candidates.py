"""Which parts may stand at a place: the catalogue's, the donor's own, or the one the builder pinned."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.choose.donor import donors_own
from bom.loom.model import Loom, Place
from bom.memory import Memory
from bom.money.prices import UnitPrices
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.margins import Margins


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


def candidates(
    loom: Loom, job: JobFile, catalogue: Catalogue, margins: Margins, memory: Memory
) -> Mapping[str, Candidates]:
    """List the candidates of every place; pins are checked beforehand. The margins are the job's own."""
    shop = Shop(catalogue, job, memory)
    donors = {item.name: item for item in job.donor.items}
    options = {}
    for place in loom.places:
        table = catalogue.families[place.family]
        if place.name in job.pins:
            options[place.name] = _pinned(place, table, job.pins[place.name], shop.prices)
        elif place.item:
            own = donors_own(place.family, donors[place.item], job, margins, memory)
            options[place.name] = _with_donor(place, shop.beside(own, table), shop)
        else:
            options[place.name] = _bought(place, table, shop)
    return options


class Shop:
    """What can be bought, and what it costs; jobs that reckon in the same money share the answers."""

    def __init__(self, catalogue: Catalogue, job: JobFile, memory: Memory) -> None:
        """Take the prices in the job's money."""
        self._memory = memory
        bears = (catalogue, repr(job.money))
        self.prices = memory.once("prices", bears, lambda: UnitPrices(catalogue.offers, job.money))

    def beside(self, own: Parts, table: Parts) -> Parts:
        """Put the donor's own part before those of a table."""
        return self._memory.once("donor's own beside", (own, table), lambda: own.joined(table))

    def bought(self, table: Parts, quantity: float) -> tuple[Parts, tuple[float, ...]]:
        """Keep what can be bought, with its price."""

        def priced() -> tuple[Parts, tuple[float, ...]]:
            costs = [_cost(part, index, table, quantity, self.prices) for index, part in enumerate(table.ids)]
            kept = [index for index, cost in enumerate(costs) if cost is not None]
            return table.take(kept), tuple(costs[i] or 0.0 for i in kept)

        return self._memory.once("bought", (table, quantity, self.prices), priced)


def _bought(place: Place, table: Parts, shop: Shop) -> Candidates:
    return Candidates(place, *shop.bought(table, place.quantity), forced=False)


def _pinned(place: Place, table: Parts, part_id: str, prices: UnitPrices) -> Candidates:
    index = table.index(part_id)
    cost = _cost(table.ids[index], index, table, place.quantity, prices)
    return Candidates(place, table.take([index]), (cost or 0.0,), forced=True)


def _with_donor(place: Place, table: Parts, shop: Shop) -> Candidates:
    """Keep the donor's own part, the table's first, free of charge; where the owner insists on it, alone."""
    if place.keep == "yes":
        return Candidates(place, table.take([0]), (0.0,), forced=True)
    return _bought(place, table, shop)


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
