"""What becomes of each donor item: stays, stays if, goes, or test first."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import isnan, nan

from bom.check.donor_contacts import BREAKS, contact_cells, print_words
from bom.check.donor_settle import settled, settled_by_reading
from bom.check.donor_side import side_words
from bom.check.gates import cells_of, open_gates, worst
from bom.check.judge_build import judge_one
from bom.choose.donor import donor_part, served
from bom.choose.filled import Filled
from bom.duties.model import Duty
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.read.donor_matrix import VERDICTS, Cell, Matrix
from bom.read.job import Item, Load


@dataclass(frozen=True)
class DonorVerdict:
    """What becomes of one donor item.

    verdict  "stays", "stays if", "goes" or "test first"
    reason   one sentence, with the numbers that decide where there are any
    instead  what is bought in its stead
    gate     gate of the donor that decides, "" where numbers do
    change   what must be done for it to stay
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


WORDS = {
    Verdict.NOT_ASKED: "stays",
    Verdict.PASS: "stays",
    Verdict.TIGHT: "stays if",
    Verdict.CANT_TELL: "test first",
    Verdict.FAIL: "goes",
}
BENCH = "at its own volts and amps, on the bench, before the bike is stripped"
OPENED = "write the amps it opened 20 times on 13.5 V DC, with its own load, as tested, with held and reading"


def donor_verdicts(
    view: LoomView, duties: Mapping[str, Duty], filled: Mapping[str, Filled], matrix: Matrix
) -> tuple[DonorVerdict, ...]:
    """Judge every donor item, and every lamp and horn the donor brings.

    Where an item has places in the loom the same rules judge it that judge a bought part; the matrix adds what its
    kind of donor asks besides.
    """
    job = view.facts.job
    named = {item.name for item in job.donor.items}
    items = [_item(item, view, duties, filled, matrix) for item in job.donor.items]
    lights = [_light(load, view, matrix) for load in job.loads if load.fit == "donor" and load.name not in named]
    return (*items, *(light for light in lights if light is not None))


def _item(
    item: Item, view: LoomView, duties: Mapping[str, Duty], filled: Mapping[str, Filled], matrix: Matrix
) -> DonorVerdict:
    if not item.may_stay:
        failed = f"it did not hold on the bench: {item.reading}."
        reason = "the builder does not want it kept." if item.keep == "no" else failed
        return DonorVerdict(item.name, item.kind, item.keep, "goes", reason, _instead(item, filled))
    by_numbers = _by_numbers(item, view, duties, filled)
    fed = [load for load in view.facts.job.loads if load.name in (*item.feeds, item.name)]
    if item.kind == "flasher":
        fed = [load for load in view.facts.job.loads if "indicate" in load.on]
    cells = cells_of(matrix, item.kind, open_gates(view, fed, item.kind))
    left = (*settled(cells, item, by_numbers.verdict if by_numbers else ""), *contact_cells(item, view))
    told = _joined(by_numbers, DonorVerdict(item.name, item.kind, item.keep, "", "", ""), left)
    tried = item.held and (settled_by_reading(cells, item) or item.tested) and item.reading not in told.reason
    more = [f"On the bench: {item.reading}."] if tried else []
    return replace(told, reason=" ".join(filter(None, (told.reason, *more, side_words(item, view)))))


def _light(load: Load, view: LoomView, matrix: Matrix) -> DonorVerdict | None:
    """Judge a lamp or horn of the load list that the donor brings; nothing of other loads."""
    kind = light_kind(load)
    if not kind:
        return None
    cells = cells_of(matrix, kind, open_gates(view, [load], kind))
    return _joined(None, DonorVerdict(load.name, kind, "if it passes", "", "", ""), cells)


def light_kind(load: Load) -> str:
    """Name the kind of a lamp or horn by what it is for; "" for any other load."""
    if "horn" in load.on:
        return "horn"
    if load.kind not in ("filament", "LED"):
        return ""
    if "indicate" in load.on:
        return "indicators"
    if load.run == "dash" or load.purpose in ("instrument", "telltale"):
        return "dash lamps"
    return "tail lamp" if load.run == "rear" or "brake" in load.on else "head lamp"


def _joined(numbers: DonorVerdict | None, blank: DonorVerdict, cells: Sequence[Cell]) -> DonorVerdict:
    """Join what the numbers say with what the gates say: the worse of both decides, every change is asked."""
    beside = [cell for cell in cells if not _told_by(numbers, cell)] if numbers else list(cells)
    if not beside:
        return numbers or blank
    deciding = worst(beside)
    if numbers and VERDICTS.index(numbers.verdict) >= VERDICTS.index(deciding.verdict):
        decided = numbers
    else:
        reason, instead = f"{deciding.because}.", numbers.instead if numbers else ""
        gate = "" if deciding.gate == "always" else deciding.gate
        decided = replace(blank, verdict=deciding.verdict, reason=reason, instead=instead, gate=gate)
    return _with_work(decided, beside)


def _told_by(numbers: DonorVerdict, cell: Cell) -> bool:
    """Tell whether numbers say what a cell says: the plain case, and a contact printed for pack volts."""
    printed = cell.gate == "key at pack volts" and cell.verdict == "goes" and numbers.verdict != "goes"
    return (cell.gate == "always" and cell.verdict == "stays") or printed


def _with_work(decided: DonorVerdict, cells: Sequence[Cell]) -> DonorVerdict:
    """Say what must be done, what takes its place, or what would settle it."""
    asked = [cell for cell in cells if cell.change and cell.verdict == decided.verdict]
    if decided.verdict == "test first":
        tests = [f"{cell.test}; it stays with: {cell.settles}" for cell in cells if cell.test]
        tests += [OPENED] if decided.test == OPENED else []
        return replace(decided, test="; ".join(dict.fromkeys(tests)) or BENCH, minutes=_minutes(cells))
    change = "; ".join(dict.fromkeys(cell.change for cell in asked))
    told = [f"{cell.test}: {cell.settles}" for cell in asked if cell.test and cell.settles]
    return replace(decided, change=change, minutes=_minutes(asked), test="; ".join(dict.fromkeys(told)))


def _minutes(cells: Sequence[Cell]) -> float:
    known = [cell.minutes for cell in cells if not isnan(cell.minutes)]
    return sum(known) if known else nan


def _by_numbers(
    item: Item, view: LoomView, duties: Mapping[str, Duty], filled: Mapping[str, Filled]
) -> DonorVerdict | None:
    """Judge an item at its places by the rules; None where the loom has no place for it."""
    places = [place for place in view.loom.places if place.item == item.name]
    if not places:
        return None
    own = {place.family: own_part(place.family, item, view) for place in places}
    findings = [
        finding for place in places for finding in judge_one(place.name, own[place.family], duties[place.name], view)
    ]
    # Of findings alike what a contact breaks tells most.
    worst_of = max(findings, key=lambda finding: (finding.verdict, finding.rule == BREAKS))
    entries = [filled[place.name] for place in places if place.name in filled]
    instead = "; ".join(dict.fromkeys(_named(entry) for entry in entries if entry.origin != "donor"))
    lacking = dict.fromkeys(f.datum for f in findings if f.verdict == worst_of.verdict and f.datum)
    reason = worst_of.sentence + (f" Find out: {'; '.join(lacking)}." if lacking else "") + print_words(item, worst_of)
    kept = [entry for entry in entries if entry.origin == "donor"]
    verdict = WORDS[worst_of.verdict]
    if kept and len(kept) < len(entries):
        gone = dict.fromkeys(entry.place.circuit for entry in entries if entry.origin != "donor")
        reason = f"{len(kept)} of {len(entries)} runs stay; renew the others, in the {', '.join(gone)}. {reason}"
        verdict = "stays if"
    test = (OPENED if worst_of.rule == BREAKS else BENCH) if verdict == "test first" else ""
    return DonorVerdict(item.name, item.kind, item.keep, verdict, reason, instead, test=test)


def own_part(family: str, item: Item, view: LoomView) -> Parts:
    """Describe the donor's own part, whatever stands in its places now."""
    facts = view.facts
    return donor_part(family, item, served(item, facts.job, facts.margins))


def _named(entry: Filled) -> str:
    return f"{entry.part_id} {entry.part.word('name')[0]}"


def _instead(item: Item, filled: Mapping[str, Filled]) -> str:
    """Name the part bought in its stead, where the loom has a place of its kind."""
    names = {"key switch": "key switch", "kill switch": "stop switch", "flasher": "flasher", "fuse box": "fuse box"}
    entry = filled.get(names.get(item.kind, f"switch {item.name}"))
    return _named(entry) if entry else ""
