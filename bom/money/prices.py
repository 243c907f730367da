"""What an offer costs: net of tax, in the job's currency, in whole packs."""

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from math import ceil, floor

from bom.read.catalogue import Offer
from bom.read.job import Money


@dataclass(frozen=True)
class Purchase:
    """An offer taken for a quantity.

    packs       whole packs, at least the supplier's least order
    pack_price  of one pack at that number, in the job's currency, tax treated as the job says
    """

    offer: Offer
    packs: int
    pack_price: float

    @property
    def cost(self) -> float:
        """Price of all packs, rounded to cents."""
        return cents(self.packs * self.pack_price)


def rate(offer: Offer, money: Money) -> float | None:
    """Give the worth of one unit of the offer's currency; None when the job does not say."""
    return 1.0 if offer.currency == money.currency else money.rates.get(offer.currency)


def left_out(offers: Iterable[Offer], money: Money) -> Mapping[str, int]:
    """Count the offers that cannot be priced because the job gives no rate for their currency."""
    return Counter(offer.currency for offer in offers if rate(offer, money) is None)


def pack_price(offer: Offer, packs: int, money: Money) -> float | None:
    """Price one pack when buying this many, rounded to cents; None when its currency has no rate."""
    worth = rate(offer, money)
    if worth is None:
        return None
    price = [value for least, value in offer.breaks if least <= packs][-1]
    tax = 1 + offer.tax_percent / 100
    net = price / tax if offer.tax_included else price
    return cents(worth * (net if money.tax_reclaimed else net * tax))


def cents(value: float) -> float:
    """Round to cents, halves up, as a spreadsheet does; a half that binary numbers just miss counts as one."""
    return floor(value * 100 + 0.5 + 1e-6) / 100


def least_packs(offer: Offer, quantity: float) -> int:
    """Count the whole packs that hold a quantity, at least what the supplier sells."""
    return max(ceil(round(quantity / offer.pack_size, 9)), offer.minimum_packs, offer.breaks[0][0], 1)


def best_purchase(offers: Sequence[Offer], quantity: float, money: Money) -> Purchase | None:
    """Take the offer that costs least for a quantity, more packs where a price break makes them cheaper.

    Between equals the fewer packs, then the quicker, then the lower id.
    """
    options = []
    for offer in offers:
        least = least_packs(offer, quantity)
        for packs in (least, *(start for start, _ in offer.breaks if start > least)):
            price = pack_price(offer, packs, money)
            if price is not None:
                options.append(Purchase(offer, packs, price))
    return min(options, key=lambda buy: (buy.cost, buy.packs, buy.offer.lead_days, buy.offer.offer_id), default=None)


class UnitPrices:
    """Least price of one piece or metre of a part when buying some, packs not counted whole."""

    def __init__(self, offers: Mapping[str, Sequence[Offer]], money: Money) -> None:
        """Take the offers by part id."""
        self._offers, self._money = offers, money
        self._known: dict[tuple[str, float], float | None] = {}

    def of(self, part_id: str, quantity: float) -> float | None:
        """Price a part; None when nothing can be bought."""
        key = (part_id, quantity)
        if key not in self._known:
            self._known[key] = self._least(part_id, quantity)
        return self._known[key]

    def _least(self, part_id: str, quantity: float) -> float | None:
        prices = []
        for offer in self._offers.get(part_id, ()):
            price = pack_price(offer, least_packs(offer, quantity), self._money)
            if price is not None:
                prices.append(price / offer.pack_size)
        return min(prices, default=None)
