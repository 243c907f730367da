"""The finished build of one arrangement, as every paper reads it."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.check.finding import Finding
from bom.duties.circuits import Facts
from bom.duties.model import Duty
from bom.judge.verdict import Verdict
from bom.loom.model import Loom, Place
from bom.money.bill import Bill
from bom.parts import Parts


@dataclass(frozen=True)
class Filled:
    """A place and the one part that stands there.

    origin  "chosen", "donor" or "pinned"
    """

    place: Place
    part: Parts
    origin: str

    @property
    def part_id(self) -> str:
        """Id of the part."""
        return self.part.ids[0]


@dataclass(frozen=True)
class Hole:
    """A place nothing can stand at, and the nearest miss.

    verdict  fail, or can't tell where only facts are missing
    datum    the fact that would settle it
    """

    place: Place
    sentence: str
    verdict: Verdict = Verdict.FAIL
    datum: str = ""


@dataclass(frozen=True)
class DonorVerdict:
    """What becomes of one donor item.

    verdict  "stays", "stays if", "goes" or "test first"
    """

    name: str
    kind: str
    wished: str
    verdict: str
    reason: str
    instead: str


@dataclass(frozen=True)
class Build:
    """One arrangement, chosen, checked and priced."""

    arrangement: str
    loom: Loom
    facts: Facts
    duties: Mapping[str, Duty]
    filled: Mapping[str, Filled]
    holes: tuple[Hole, ...]
    findings: tuple[Finding, ...]
    donor: tuple[DonorVerdict, ...]
    bill: Bill
    passes: int

    def count(self, verdict: Verdict) -> int:
        """Count the findings and open places of one verdict."""
        verdicts = [finding.verdict for finding in self.findings] + [hole.verdict for hole in self.holes]
        return verdicts.count(verdict)

    @property
    def sound(self) -> bool:
        """Tell whether nothing fails and nothing is untold."""
        return self.count(Verdict.FAIL) == 0 and self.count(Verdict.CANT_TELL) == 0
