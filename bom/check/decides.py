"""Which answer of a cause decides: what kills first, then what is wrong at the most places."""

from collections import Counter
from collections.abc import Sequence

from bom.judge.finding import Finding
from bom.judge.harm import Harm
from bom.judge.rule import rules
from bom.judge.verdict import Verdict

# A part that does not hold the volts is not mended by any other figure; then what keeps the sides apart, then what
# must break direct current. Trade practice, no source.
VOLTS = ("holds-dc-volts", "cable-holds-the-volts")
APART = (
    "converter-keeps-the-frame-apart",
    "converter-isolation-holds",
    "charger-is-isolated",
    "diode-keeps-the-sides-apart",
    "telltale-keeps-the-sides-apart",
)
BREAKS = (
    "fuse-breaks-the-fault",
    "breaker-breaks-the-fault",
    "contact-breaks-dc",
    "contact-breaks-reverse",
    "isolator-opens-under-load",
)
PAIR = " / "


def in_order(findings: Sequence[Finding]) -> list[Finding]:
    """Put the findings of one cause into the order to tell them: what a part's own rules say first, the worst first."""
    harms = {rule.name: rule.harm for rule in rules()}
    times = Counter(map(_alike, findings))
    return sorted(findings, key=lambda finding: _rank(finding, times[_alike(finding)], harms[finding.rule]))


def _rank(finding: Finding, times: int, harm: Harm) -> tuple[object, ...]:
    whole, pair = not finding.part, PAIR in finding.subject
    first = next((rank for rank, names in enumerate((VOLTS, APART, BREAKS)) if finding.rule in names), 3)
    asked = (finding.rule, finding.what, finding.subject)  # not by the order in which it was asked
    return (finding.verdict <= Verdict.TIGHT, whole, -finding.verdict, first, -times, harm, pair, *asked)


def _alike(finding: Finding) -> tuple[object, ...]:
    return finding.verdict, finding.rule, finding.what
