"""From filled places to what must be bought: quantities, spares, packs, offers, orders."""

from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import ceil

from bom.money.prices import Purchase, best_purchase
from bom.read.catalogue import Catalogue
from bom.read.job import Money
from bom.read.margins import Margins

FUSES = ("main_fuse", "tap_fuse", "blade_fuse")
SMALL = ("contact", "seal", "terminal", "end_cap")


@dataclass(frozen=True)
class Need:
    """A quantity of one part wanted at some places."""

    part_id: str
    name: str
    family: str
    place: str
    quantity: float
    runs: int = 1


@dataclass(frozen=True)
class Line:
    """One part to buy.

    quantity  pieces or metres the bike takes
    spare     pieces or metres on top
    packs     whole packs; purchase is None where nobody offers it
    """

    part_id: str
    name: str
    family: str
    places: tuple[str, ...]
    quantity: float
    spare: float
    unit: str
    purchase: Purchase | None

    @property
    def cost(self) -> float:
        """Price of the packs, 0 where nobody offers it."""
        return self.purchase.cost if self.purchase else 0.0


@dataclass(frozen=True)
class Bill:
    """All lines, and what they cost together."""

    lines: tuple[Line, ...]
    currency: str

    @property
    def total(self) -> float:
        """Sum of the lines, in cents exactly."""
        return round(sum(line.cost for line in self.lines), 2)

    def by_supplier(self) -> Mapping[str, tuple[Line, ...]]:
        """Sort the lines into one order a supplier."""
        orders: dict[str, list[Line]] = defaultdict(list)
        for line in self.lines:
            if line.purchase:
                orders[line.purchase.offer.supplier].append(line)
        return {supplier: tuple(lines) for supplier, lines in sorted(orders.items())}


def bill(needs: Iterable[Need], catalogue: Catalogue, margins: Margins, money: Money) -> Bill:
    """Add up the needs by part and take the cheapest offer for each in whole packs."""
    grouped: dict[str, list[Need]] = defaultdict(list)
    for need in needs:
        grouped[need.part_id].append(need)
    lines = [_line(grouped[part], catalogue, margins, money) for part in sorted(grouped)]
    order = {family: index for index, family in enumerate(catalogue.families)}
    return Bill(tuple(sorted(lines, key=lambda line: (order[line.family], line.part_id))), money.currency)


def _line(needs: list[Need], catalogue: Catalogue, margins: Margins, money: Money) -> Line:
    first = needs[0]
    quantity = round(sum(need.quantity for need in needs), 3)
    if first.family == "cable":
        quantity = round(quantity + 2 * margins.cable_end_m * sum(need.runs for need in needs), 3)
    offers = catalogue.offers.get(first.part_id, ())
    metres = bool(offers) and offers[0].sold_by == "metre"
    if not metres and first.family != "sleeve":
        quantity = float(ceil(quantity))
    spare = _spare(first.family, quantity, margins)
    purchase = best_purchase(offers, quantity + spare, money)
    places = tuple(dict.fromkeys(need.place for need in needs))
    return Line(first.part_id, first.name, first.family, places, quantity, spare, "m" if metres else "pc", purchase)


def _spare(family: str, quantity: float, margins: Margins) -> float:
    """Give the spare that the trade takes along, by family."""
    if family in FUSES:
        return margins.fuse_spare
    if family == "lug":
        return margins.lug_spare
    if family in SMALL:
        return float(max(2, ceil(quantity * margins.small_part_spare_fraction)))
    if family == "cable":
        return round(quantity * margins.cable_spare_fraction, 2)
    return 0.0
