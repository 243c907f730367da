"""The key arrangements side by side: cost, verdicts, what the key's contact makes and breaks, what stays on."""

from bom.build import Build
from bom.judge.parked_drain import parked_drain_a
from bom.judge.verdict import Verdict
from bom.papers.looks import BOLD, MONEY, SECTION, Look
from bom.papers.page import Page
from bom.papers.standing import worst_at
from bom.session import Session

COST = "cost, before any edit"  # both sides alike
DASH = "–"
RIGHT = Look(bold=True, align="right")
COMPARED = Look(align="right")


def write_arrangements(page: Page, row: int, session: Session) -> int:
    """Write both key arrangements beside each other; give the row after them."""
    page.put(row, 1, "Key arrangements side by side", SECTION)
    row += 1
    page.put(row, 1, "", BOLD)
    for column, build in enumerate(session.builds, start=2):
        page.put(row, column, f"key at {build.arrangement}", RIGHT)
    words = [*_compared(session.build)]
    answers = [_compared(build) for build in session.builds]
    for word in words:
        row += 1
        page.put(row, 1, word, BOLD)
        for column, answer in enumerate(answers, start=2):
            page.put(row, column, answer[word], MONEY if word == COST else COMPARED)
    return row + 1


def _compared(build: Build) -> dict[str, object]:
    worst = worst_at(build).get("key switch")
    entry = build.filled.get("key switch")
    key = f"{entry.part_id}, {worst.verdict.word if worst else 'not asked'}" if entry else "left open"
    return {
        "places": len(build.loom.places),
        "places left open": len(build.holes),
        COST: build.bill.total,
        "fails": build.count(Verdict.FAIL),
        "can't tell": build.count(Verdict.CANT_TELL),
        "tight": build.count(Verdict.TIGHT),
        "key switch": key,
        **_key_asks(build),
        "stays on when parked": _parked(build),
    }


def _key_asks(build: Build) -> dict[str, object]:
    """Say what the key's contact must close on and open, and at what volts."""
    duty = build.duties["key switch"]
    closes = str(duty.make_a) if duty.has("make_a") else DASH
    return {
        "its contact closes on": closes,
        "its contact opens": f"{duty.break_a.high:.3g} A at {duty.break_v.high:.3g} V",
    }


def _parked(build: Build) -> str:
    """Add what stays on with the key off, as far as it is known."""
    drain_a, unknown = parked_drain_a(build.walks.bike.view)
    more = f", and {unknown} not known" if unknown else ""
    return f"{drain_a * 1000:.3g} mA{more}"
