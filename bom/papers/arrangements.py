"""The key arrangements side by side, as words that summary, sheet and record share."""

from collections.abc import Mapping

from bom import units
from bom.build import Build
from bom.circuit.key_faults import KeyFault
from bom.judge.parked_drain import empty_days, parked_drain_a
from bom.judge.verdict import Verdict
from bom.papers.closing_rows import NEEDED, dark_words
from bom.papers.standing import worst_at

KEY = "key switch"
DASH = "–"


def verdict_words(build: Build) -> str:
    """Count what fails, can't be told and is tight."""
    counts = (f"{build.count(each)} {each.word}" for each in (Verdict.FAIL, Verdict.CANT_TELL, Verdict.TIGHT))
    return ", ".join(counts)


def key_words(build: Build) -> str:
    """Name the key switch that stands there and its worst verdict."""
    entry = build.filled.get(KEY)
    if entry is None:
        return "none chosen: no key switch passes"
    worst = worst_at(build).get(KEY)
    return f"{entry.part_id}, {worst.verdict.word if worst else 'not asked'}"


def why_not(build: Build) -> str:
    """Say what keeps the key switch from passing; "" where nothing does."""
    hole = next((hole.sentence for hole in build.holes if hole.place.name == KEY), "")
    worst = worst_at(build).get(KEY)
    return hole or (worst.sentence if worst and worst.verdict > Verdict.PASS else "")


def closes_on(build: Build) -> str:
    """Give what the key's contact closes on; figures of a bike's own lie beside each other."""
    duty = build.duties[KEY]
    return f"{duty.make_a} at {_volts(build)}" if duty.has("make_a") else DASH


def key_opens(build: Build) -> str:
    """Give what the key's contact must open."""
    return f"{units.show(build.duties[KEY].break_a.high, 'current')} at {_volts(build)}"


def _volts(build: Build) -> str:
    return f"{build.duties[KEY].break_v.high:.1f} V"


def parked(build: Build) -> str:
    """Add what stays on at the pack with the key off, as far as it is known."""
    drain_a, unknown = parked_drain_a(build.walks.bike.view)
    days = empty_days(build.facts, drain_a)
    lasts = f", {days:.0f} days to empty" if days < 1e4 and not unknown else ""
    return f"{units.show(drain_a, 'current')}{f', and {unknown} not known' if unknown else lasts}"


def fault_lines(build: Build) -> list[str]:
    """Say what fails in this arrangement, and how."""
    loads = {load.name for load in build.facts.job.loads}
    return [_fault_line(fault, loads) for fault in build.walks.key_faults]


def _fault_line(fault: KeyFault, loads: set[str]) -> str:
    if fault.loses:
        return f"{fault.what}: goes dark: {_named(fault.loses, loads)}"
    if not fault.stays:
        return f"{fault.what}: nobody notices"
    drives = {"contactor", *NEEDED} & set(fault.stays)
    stops = "the stop switch still opens the contactor" if fault.stops else "not even the stop switch opens it"
    return f"{fault.what}: stays on: {_named(fault.stays, loads)}{f'; {stops}' if 'contactor' in drives else ''}"


def _named(names: tuple[str, ...], loads: set[str]) -> str:
    """Name them, everything at 12 V that was on in one word."""
    return dark_words(names, loads & set(names))


def compared(build: Build) -> Mapping[str, object]:
    """Give what the sheet and the record compare beside the counts."""
    return {"closes_on": closes_on(build), "opens": key_opens(build), "fails": fault_lines(build)}
