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
    more         what all parts of the bike cost more than in the build on paper; below zero they cost less
    minutes      of work, a rough estimate
    unpriced     places that stay open in the build on paper, and so are not in its price
    """

    way: str
    arrangement: str
    verdict: str
    change: str
    more: float
    minutes: float
    unpriced: int = 0

    def words(self, currency: str) -> str:
        """Say what is done, what it costs and what the item is then."""
        sense = "dearer" if self.more > 0 else "cheaper"
        work = f", about {self.minutes:g} min" if self.minutes else ""
        then = "stays" if self.verdict == "stays" else f"{self.verdict}: {self.change.rstrip('.')}"
        open_places = f", without {self.unpriced} for which none is chosen on paper" if self.unpriced else ""
        price = f"the whole bike's parts {abs(self.more):,.2f} {currency} {sense}{open_places}"
        return f"{self.way} ({price}{work}); then {then}"


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
    evidence how what decides is known: "served in the donor", "measured", "common practice" ...
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
    evidence: str = ""
    kept: Kept | None = None


IN_PLACE = {"key switch": "key switch", "kill switch": "stop switch", "flasher": "flasher", "fuse box": "fuse box"}


def place_of(kind: str, name: str) -> str:
    """Name the place at which another stands where an item goes: one of its kind, else that of the switch itself."""
    return IN_PLACE.get(kind, f"switch {name}")
