"""What it takes to know of a donor item that waits for a test, and what not having to know costs instead."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import isnan, nan

from bom.build import Build
from bom.check.donor_words import DonorVerdict
from bom.check.question import Question
from bom.money.bill import Line
from bom.parts import DONOR

MINUTES = 5.0  # of a test whose time nobody gave, a rough estimate


@dataclass(frozen=True)
class Wanted:
    """What one test finds: the figures that are missing, why they matter, the test, and its minutes."""

    figure: str
    why: str
    way: str
    minutes: float


@dataclass(frozen=True)
class Certainty:
    """The price of knowing, and of not having to know.

    wanted    the figures that would change its verdict
    minutes   to find them all
    parts     "id name" of each bought part that stands in its place now; none where the donor's own stands
    price     of these, their share of the packs on the bill; NaN where nobody sells one
    currency  of that price
    """

    wanted: tuple[Wanted, ...]
    minutes: float
    parts: tuple[str, ...]
    price: float
    currency: str

    @property
    def instead(self) -> str:
        """Say what certainty costs."""
        if not self.parts:
            return "nothing stands in its place: until it is tested, nobody knows"
        priced = "nobody sells it" if isnan(self.price) else f"{self.price:,.2f} {self.currency}, on the bill now"
        return f"{'; '.join(self.parts)}: {priced}"


def certainties(build: Build, questions: Sequence[Question]) -> Mapping[str, Certainty]:
    """Give the price of certainty for each donor item to be tested first."""
    return {item.name: _certainty(item, build, questions) for item in build.donor if item.verdict == "test first"}


def _certainty(item: DonorVerdict, build: Build, questions: Sequence[Question]) -> Certainty:
    own = [question for question in questions if question.part_id == DONOR + item.name]
    wanted = tuple(_wanted([each for each in own if each.test == test]) for test in dict.fromkeys(e.test for e in own))
    if not wanted:
        minutes = MINUTES if isnan(item.minutes) else item.minutes
        wanted = (Wanted("a reading on the bench", item.reason, item.test, minutes),)
    places = [place.name for place in build.loom.places if place.item == item.name]
    bought = [name for name in places if name in build.filled and build.filled[name].origin != "donor"]
    lines = [line for line in build.bill.lines if set(line.places) & set(bought)]
    parts = tuple(f"{line.part_id} {line.name}" for line in lines)
    price = round(sum(_share(line, bought, build) for line in lines), 2)
    return Certainty(wanted, sum(entry.minutes for entry in wanted), parts, price, build.bill.currency)


def _wanted(alike: Sequence[Question]) -> Wanted:
    """Put together the figures that one test finds."""
    figures, why = (dict.fromkeys(texts) for texts in zip(*((each.what, each.why) for each in alike), strict=True))
    return Wanted("; ".join(figures), "; ".join(text.rstrip(".") for text in why), alike[0].test, alike[0].minutes)


def _share(line: Line, places: Sequence[str], build: Build) -> float:
    """Give what a line costs for some of its places, by their quantities."""
    quantity = {name: build.loom.place(name).quantity for name in line.places}
    if line.purchase is None:
        return nan
    return line.cost * sum(quantity[name] for name in line.places if name in places) / sum(quantity.values())


def certainty_lines(told: Certainty, test: str) -> list[str]:
    """Put it into lines for a terminal: why it matters, what the item's own test does not say, what certainty costs."""
    first = told.wanted[0].why.split("; ")[0].rstrip(".")
    ways = [f"Find {entry.figure}: {entry.way} (about {entry.minutes:g} min)." for entry in told.wanted]
    more = [way for way, entry in zip(ways, told.wanted, strict=True) if entry.way not in test]
    return [f"Why it matters: {first}.", *more, f"Certain instead: {told.instead}."]
