"""Prices and bills, every figure worked by hand."""

from dataclasses import replace

import pytest

from bom.money.bill import Need, bill
from bom.money.prices import UnitPrices, best_purchase, pack_price
from bom.read.catalogue import Catalogue, Offer
from bom.read.job import Money
from bom.read.margins import Margins

EURO = Money(currency="EUR")
OFFER = Offer(
    "OF-1",
    "P-1",
    "a-supplier",
    "code",
    1.0,
    "piece",
    1,
    "EUR",
    False,
    19.0,
    "2026-01-01",
    5,
    ((1, 10.0), (5, 9.0), (20, 8.0)),
)


@pytest.mark.parametrize(("packs", "price"), [(1, 10.0), (4, 10.0), (5, 9.0), (19, 9.0), (20, 8.0), (500, 8.0)])
def test_price_breaks(packs: int, price: float) -> None:
    assert pack_price(OFFER, packs, EURO) == price


@pytest.mark.parametrize(
    ("included", "reclaimed", "price"),
    [
        (False, True, 10.0),  # before tax, as printed
        (True, True, 8.4),  # 10 / 1.19 = 8.4034
        (False, False, 11.9),  # 10 x 1.19
        (True, False, 10.0),  # with tax, as printed
    ],
)
def test_tax(included: bool, reclaimed: bool, price: float) -> None:
    assert pack_price(replace(OFFER, tax_included=included), 1, Money(tax_reclaimed=reclaimed)) == price


def test_another_currency() -> None:
    """10 GBP x 1.16 EUR; no rate, no price."""
    pounds = replace(OFFER, currency="GBP")
    assert pack_price(pounds, 1, Money(rates={"GBP": 1.16})) == 11.6
    assert pack_price(pounds, 1, EURO) is None
    assert best_purchase([pounds], 1, EURO) is None


def test_price_of_a_pack_is_rounded_to_cents_before_it_is_counted() -> None:
    """0.333 x 1.16 = 0.38628, a pack costs 0.39; seven cost 2.73, not 2.70."""
    offer = replace(OFFER, currency="GBP", breaks=((1, 0.333),))
    bought = best_purchase([offer], 7, Money(rates={"GBP": 1.16}))
    assert bought is not None
    assert (bought.packs, bought.pack_price, bought.cost) == (7, 0.39, 2.73)


@pytest.mark.parametrize(
    ("quantity", "pack_size", "minimum", "packs"),
    [
        (1, 10, 1, 1),
        (10, 10, 1, 1),
        (10.1, 10, 1, 2),
        (3, 1, 5, 5),
        (0.3, 0.1, 1, 3),
        (1.1, 0.1, 1, 11),
        (2.2, 1, 1, 3),
    ],
)
def test_whole_packs_and_least_orders(quantity: float, pack_size: float, minimum: int, packs: int) -> None:
    bought = best_purchase([replace(OFFER, pack_size=pack_size, minimum_packs=minimum)], quantity, EURO)
    assert bought is not None
    assert bought.packs == packs


def test_a_break_is_taken_by_the_packs_bought() -> None:
    """Five packs of 9.00 where five are the least order."""
    bought = best_purchase([replace(OFFER, minimum_packs=5)], 1, EURO)
    assert bought is not None
    assert bought.cost == 45.0


def taken(*offers: Offer, quantity: float = 1) -> tuple[str, float]:
    bought = best_purchase(offers, quantity, EURO)
    assert bought is not None
    return bought.offer.offer_id, bought.cost


def test_cheapest_offer_then_quickest_then_lowest_id() -> None:
    dear = replace(OFFER, offer_id="OF-7", breaks=((1, 11.0),))
    slow = replace(OFFER, offer_id="OF-0", lead_days=9)
    assert taken(dear, slow)[0] == "OF-0"
    assert taken(slow, OFFER)[0] == "OF-1"
    assert taken(replace(OFFER, offer_id="OF-2"), OFFER)[0] == "OF-1"


def test_a_large_pack_is_dearer_when_little_is_needed() -> None:
    """One of 100 at 30.00, or one at 2.00: alone the small pack, for 50 the large one (50 x 2.00 = 100.00)."""
    large = replace(OFFER, offer_id="OF-2", pack_size=100.0, breaks=((1, 30.0),))
    small = replace(OFFER, breaks=((1, 2.0),))
    assert taken(large, small) == ("OF-1", 2.0)
    assert taken(large, small, quantity=50) == ("OF-2", 30.0)


def test_unit_cost_for_the_choice() -> None:
    """A piece of a pack of 4 at 10.00 is 2.50; what nobody offers has no price."""
    prices = UnitPrices({"P-1": [replace(OFFER, pack_size=4.0)]}, EURO)
    assert prices.of("P-1", 1) == 2.5
    assert prices.of("P-2", 1) is None


def shop(catalogue: Catalogue, *offers: Offer) -> Catalogue:
    return replace(catalogue, offers={offer.part_id: (offer,) for offer in offers})


@pytest.mark.parametrize(
    ("family", "quantity", "spare"),
    [
        ("tap_fuse", 1, 2.0),  # two spare fuses of each rating
        ("lug", 4, 1.0),
        ("terminal", 8, 2.0),  # a tenth, two at the least
        ("terminal", 45, 5.0),  # 4.5, rounded up
        ("converter", 1, 0.0),
    ],
)
def test_spares(family: str, quantity: float, spare: float, catalogue: Catalogue, margins: Margins) -> None:
    needs = [Need("P-1", "a part", family, "a place", quantity)]
    line = bill(needs, shop(catalogue, OFFER), margins, EURO).lines[0]
    assert (line.quantity, line.spare, line.unit) == (quantity, spare, "pc")


def test_cable_by_the_metre_with_its_ends_and_spare(catalogue: Catalogue, margins: Margins) -> None:
    """1.2 m and three leads of 0.6 m: 3.0 m, 4 x 2 x 0.15 m of ends: 4.2 m, a tenth spare: 4.62 m, five metres."""
    reel = replace(OFFER, sold_by="metre", breaks=((1, 2.0),))
    needs = [Need("P-1", "a cable", "cable", "one", 1.2), Need("P-1", "a cable", "cable", "three", 1.8, 3)]
    line = bill(needs, shop(catalogue, reel), margins, EURO).lines[0]
    assert (line.quantity, line.spare, line.unit) == (4.2, 0.42, "m")
    assert line.purchase is not None
    assert (line.purchase.packs, line.cost) == (5, 10.0)
    assert line.places == ("one", "three")


def test_a_bill_adds_up_and_is_sorted_by_supplier(catalogue: Catalogue, margins: Margins) -> None:
    """3 fuses of 10.00 and one part of 0.10: 30.10."""
    other = replace(OFFER, offer_id="OF-3", part_id="P-2", supplier="b-supplier", breaks=((1, 0.1),))
    needs = [Need("P-1", "a fuse", "tap_fuse", "one", 1), Need("P-2", "a part", "converter", "two", 1)]
    done = bill(needs, shop(catalogue, OFFER, other), margins, EURO)
    assert done.total == 30.1
    assert list(done.by_supplier()) == ["a-supplier", "b-supplier"]


def test_a_part_nobody_offers_stays_in_the_bill_without_a_price(catalogue: Catalogue, margins: Margins) -> None:
    done = bill([Need("P-9", "a part", "converter", "one", 1)], shop(catalogue), margins, EURO)
    assert done.lines[0].purchase is None
    assert done.total == 0.0
