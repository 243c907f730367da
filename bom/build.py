"""The finished build of one arrangement, as every paper reads it."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from bom.arrangement import DONORS_KEY
from bom.check.donor_words import DonorVerdict
from bom.choose.filled import Aside, Filled, Hole
from bom.duties.circuits import Facts
from bom.duties.model import Duty
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.loom.model import Loom
from bom.money.bill import Bill

if TYPE_CHECKING:
    from bom.check.blinkers import Cause as BlinkerCause
    from bom.check.causes import Cause
    from bom.circuit.walks import Walks


@dataclass(frozen=True)
class Build:
    """One arrangement, chosen, checked and priced.

    ordered  the same with what was ordered, where something else arrived; its bill is the build's
    aside    parts that came or were ordered, and stand nowhere with what arrived
    """

    loom: Loom
    facts: Facts
    duties: Mapping[str, Duty]
    filled: Mapping[str, Filled]
    holes: tuple[Hole, ...]
    findings: tuple[Finding, ...]
    donor: tuple[DonorVerdict, ...]
    bill: Bill
    passes: int
    walks: "Walks"
    ordered: "Build | None" = None
    aside: tuple[Aside, ...] = ()

    @property
    def arrangement(self) -> str:
        """Name the key arrangement."""
        key = self.filled.get("key switch")
        donors = self.facts.key_at_pack and key is not None and key.origin == "donor"
        return self.facts.key_at + (DONORS_KEY if donors else "")

    def count(self, verdict: Verdict) -> int:
        """Count the findings and open places of one verdict."""
        verdicts = [finding.verdict for finding in self.findings] + [hole.verdict for hole in self.holes]
        return verdicts.count(verdict)

    @cached_property
    def blinkers(self) -> "tuple[BlinkerCause, ...]":
        """Give each cause of dead blinkers, answered; worked out when a paper first asks."""
        from bom.check.blinkers import blinkers

        return blinkers(self)

    @cached_property
    def causes(self) -> "tuple[Cause, ...]":
        """Give what does not pass by its causes, the worst first; worked out when a paper first asks."""
        from bom.check.causes import causes

        return causes(self)

    @property
    def sound(self) -> bool:
        """Tell whether nothing fails and nothing is untold."""
        return self.count(Verdict.FAIL) == 0 and self.count(Verdict.CANT_TELL) == 0
