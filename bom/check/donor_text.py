"""What becomes of the donor's things, as lines for a terminal."""

from collections import Counter
from collections.abc import Mapping
from math import isnan
from typing import TYPE_CHECKING

from bom.build import Build
from bom.check.certainty import certainty_lines
from bom.check.donor_words import DonorVerdict
from bom.check.why_text import block, shortened, unbroken, wrapped

if TYPE_CHECKING:
    from bom.session import Session

UNTOLD = "not known"
# Of one, of several.
NAMED: Mapping[str, tuple[str, str]] = {
    "stays": ("stays", "stay"),
    "stays if": ("stays if", "stay if"),
    "test first": ("to be tested first", "to be tested first"),
    "goes": ("goes", "go"),
}


def donor_text(session: "Session") -> str:
    """Print what becomes of each donor item: verdict, reason, what to do, what stands instead, what certainty costs."""
    blocks, currency = [], session.build.bill.currency
    for item in session.build.donor:
        gate = f"{item.gate}: " if item.gate else ""
        lines = [f"{gate}{item.reason}"]
        lines += [f"Known by: {item.evidence}."] if item.evidence not in ("", UNTOLD) else []
        lines += [f"Do: {item.change}{_minutes(item)}."] if item.change else []
        lines += [f"Test: {item.test}{_minutes(item) if not item.change else ''}."] if item.test else []
        lines += [f"Parts: {parts_words(item, currency)}."] if item.takes and item.verdict != "goes" else []
        stands = item.verdict == "goes" and (item.instead or item.takes)
        lines += [f"Instead: {instead_words(item, currency)}."] if stands else []
        lines += [f"To keep it: {item.kept.words(currency)}."] if item.kept else []
        sure = session.certainties.get(item.name)
        lines += certainty_lines(sure, item.test) if sure else []
        blocks.append(block(f"{item.verdict.upper():<11} {item.name} (donor's {item.kind})", lines))
    return "\n".join(blocks)


def parts_words(item: DonorVerdict, currency: str) -> str:
    """Name the parts that an item's change takes, with what they cost."""
    return f"{item.takes} ({'not priced' if isnan(item.cost) else f'{item.cost:,.2f} {currency}'})"


def instead_words(item: DonorVerdict, currency: str) -> str:
    """Name what stands in an item's place, with what it costs where the item goes."""
    priced = item.verdict == "goes" and not isnan(item.cost)
    return f"{item.takes} ({item.cost:,.2f} {currency})" if priced else item.instead


def donor_brief(build: Build, job: str) -> str:
    """Count the verdicts, and name in one line each what does not simply stay; "" where nothing is listed."""
    if not build.donor:
        return ""
    lines = wrapped(f"Donor: {_counted(build)}. See: donorbill donor {unbroken(job)}", "    ")
    for item in build.donor:
        if item.verdict != "stays":
            stands = item.instead if item.verdict == "goes" else item.change or item.test
            what = stands or item.reason
            lines.append(shortened(f"  {item.verdict:<10} {item.name}: {what}"))
    return "\n".join(lines)


def _counted(build: Build) -> str:
    counts = Counter(item.verdict for item in build.donor)
    told = [f"{counts[verdict]} {words[counts[verdict] > 1]}" for verdict, words in NAMED.items() if counts[verdict]]
    return ", ".join(told)


def donor_counts(build: Build) -> str:
    """Count the verdicts, and add the minutes and parts of all that the donor asks."""
    minutes = sum(item.minutes for item in build.donor if not isnan(item.minutes))
    cost = sum(item.cost for item in build.donor if not isnan(item.cost))
    return f"{_counted(build)}; about {minutes:g} min of work and tests, parts {cost:,.2f} {build.bill.currency}"


def _minutes(item: DonorVerdict) -> str:
    return "" if isnan(item.minutes) else f" (about {item.minutes:g} min)"
