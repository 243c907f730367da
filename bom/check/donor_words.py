"""The words in which it is told what becomes of a donor item."""

from dataclasses import dataclass
from math import nan


@dataclass(frozen=True)
class Kept:
    """How an item that goes could stay.

    way          what is done
    arrangement  where the key is then
    verdict      of the item in that build: "stays", "stays if" or "test first"
    change       what the item itself asks there
    more         what all parts cost more than in the build on paper; below zero they cost less
    minutes      of work, a rough estimate
    """

    way: str
    arrangement: str
    verdict: str
    change: str
    more: float
    minutes: float

    def words(self, currency: str) -> str:
        """Say what is done, what it costs and what the item is then."""
        sense = "dearer" if self.more > 0 else "cheaper"
        work = f", about {self.minutes:g} min" if self.minutes else ""
        then = "stays" if self.verdict == "stays" else f"{self.verdict}: {self.change.rstrip('.')}"
        return f"{self.way} (parts {abs(self.more):,.2f} {currency} {sense}{work}); then {then}"


@dataclass(frozen=True)
class DonorVerdict:
    """What becomes of one donor item.

    verdict  "stays", "stays if", "goes" or "test first"
    reason   one sentence, with the numbers that decide where there are any
    instead  what is bought in its stead
    gate     gate of the donor that decides, "" where numbers do
    change   what must be done for it to stay
    takes    parts that this, or what stands in its place, takes; "" for none
    cost     of these, in the job's currency; NaN where none is bought or nobody sells it
    kept     how it could stay though it goes; None where no way is known
    minutes  of that work, a rough estimate; NaN where none is asked
    test     the test that would settle it, and the reading that lets it stay
    """

    name: str
    kind: str
    wished: str
    verdict: str
    reason: str
    instead: str
    gate: str = ""
    change: str = ""
    minutes: float = nan
    test: str = ""
    takes: str = ""
    cost: float = nan
    kept: Kept | None = None
