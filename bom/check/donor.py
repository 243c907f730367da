"""What becomes of each donor item: stays, stays if, goes, or test first."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from math import isnan, nan

from bom.check.donor_contacts import BREAKS, print_words
from bom.check.donor_ruled_out import ruled_out
from bom.check.donor_settle import TRIED, settled, settled_by_reading
from bom.check.donor_side import side_words
from bom.check.donor_words import DonorVerdict, place_of
from bom.check.gates import cells_of, open_gates, worst
from bom.check.judge_build import judge_one
from bom.choose.donor import donors_own
from bom.choose.donor_loom import SAID
from bom.choose.filled import Filled
from bom.duties.model import Duty
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.loom.low_volt import lamp_place
from bom.parts import Parts
from bom.read.donor_matrix import VERDICTS, Cell, Matrix
from bom.read.job import Item, JobFile, Load

WORDS = {
    Verdict.NOT_ASKED: "stays",
    Verdict.PASS: "stays",
    Verdict.TIGHT: "stays if",
    Verdict.CANT_TELL: "test first",
    Verdict.FAIL: "goes",
}
BENCH = "at its own volts and amps, on the bench, before the bike is stripped"
LET_GO = "press it and let go; it stays with: it stays in stop; write that as latches"
OPENED_MINUTES = 10.0  # a rough estimate
OPENED_STARTS = "close and open it 20 times"
OPENED = (
    f"{OPENED_STARTS} on 13.5 V DC with its own load, at least {{amps}}; it stays with: it opens each time and "
    "stays under 0.1 ohm closed; write those amps as tested"
)


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
    lights = [_light(load, view, filled, matrix) for load in job.loads if load.name not in named]
    return tuple(ruled_out(told, view) for told in (*items, *lights) if told is not None)


def _item(
    item: Item, view: LoomView, duties: Mapping[str, Duty], filled: Mapping[str, Filled], matrix: Matrix
) -> DonorVerdict:
    if not item.may_stay:
        failed = f"it did not hold on the bench: {item.reading}."
        reason = "the builder does not want it kept." if item.keep == "no" else failed
        evidence = SAID if item.keep == "no" else TRIED
        return DonorVerdict(item.name, item.kind, item.keep, "goes", reason, _instead(item, filled), evidence=evidence)
    by_numbers = _by_numbers(item, view, duties, filled)
    fed = [load for load in view.facts.job.loads if load.name in (*item.feeds, item.name)]
    if item.kind == "flasher":
        fed = [load for load in view.facts.job.loads if "indicate" in load.on and not load.is_telltale]
    cells = cells_of(matrix, item.kind, open_gates(view, fed, item.kind))
    left = settled(cells, item, by_numbers.verdict if by_numbers else "")
    told = _joined(by_numbers, DonorVerdict(item.name, item.kind, item.keep, "", "", ""), left)
    tried = item.held and (settled_by_reading(cells, item) or item.tested) and item.reading not in told.reason
    more = [f"On the bench: {item.reading}."] if tried else []
    return replace(told, reason=" ".join(filter(None, (told.reason, *more, side_words(item, view)))))


def _light(load: Load, view: LoomView, filled: Mapping[str, Filled], matrix: Matrix) -> DonorVerdict | None:
    """Judge a lamp or horn of the load list that the donor brings, or brought; nothing of other loads."""
    kind = light_kind(load)
    if not kind or (load.fit == "new" and not _replaces(load, view.facts.job)):
        return None
    if load.fit == "new":
        return _replaced(load, kind, view, filled, matrix)
    cells = cells_of(matrix, kind, open_gates(view, [load], kind))
    return _joined(None, DonorVerdict(load.name, kind, "if it passes", "", "", ""), cells)


def _replaces(load: Load, job: JobFile) -> bool:
    """Tell whether a bought lamp or horn stands where the donor had one: it says what it was, or the donor had 6 V."""
    return load.is_bought and not load.is_telltale and (load.was is not None or job.donor.supply == "6 V")


def _replaced(load: Load, kind: str, view: LoomView, filled: Mapping[str, Filled], matrix: Matrix) -> DonorVerdict:
    """Tell of a lamp or horn that gives way to a bought one why it goes, and what stands in its place."""
    was = load if load.was is None else load.model_copy(update={"kind": "filament"})
    gone = [cell for cell in cells_of(matrix, kind, open_gates(view, [was])) if cell.verdict == "goes"]
    entry = filled.get(lamp_place(load))
    reason, gate = (f"{gone[-1].because}.", gone[-1].gate) if gone else ("the builder puts another in its place.", "")
    told = DonorVerdict(load.name, kind, "no", "goes", reason, _named(entry) if entry else "", gate=gate)
    return replace(told, evidence=_known_by(gone[-1]) if gone else SAID)


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
        decided = replace(decided, evidence=_known_by(deciding))
    return _with_work(decided, beside)


def _known_by(cell: Cell) -> str:
    return cell.source.removesuffix(", no source")


def _told_by(numbers: DonorVerdict, cell: Cell) -> bool:
    """Tell whether numbers say what a cell says: the plain case, and a contact printed for pack volts."""
    printed = cell.gate == "key at pack volts" and cell.verdict == "goes" and numbers.verdict != "goes"
    return (cell.gate == "always" and cell.verdict == "stays") or printed


def _with_work(decided: DonorVerdict, cells: Sequence[Cell]) -> DonorVerdict:
    """Say what must be done, what takes its place, or what would settle it."""
    asked = [cell for cell in cells if cell.change and cell.verdict == decided.verdict]
    if decided.verdict == "test first":
        own = [decided.test] if decided.test not in ("", BENCH) else []
        opened = OPENED_STARTS in decided.test
        asking = [cell for cell in cells if cell.test and not (opened and cell.gate == "6 V")]
        tests = [*own, *(f"{cell.test}; it stays with: {cell.settles}" for cell in asking)]
        minutes = _minutes(asking)
        minutes = OPENED_MINUTES + (0.0 if isnan(minutes) else minutes) if opened else minutes
        return replace(decided, test="; ".join(dict.fromkeys(tests)) or BENCH, minutes=minutes)
    change = "; ".join(dict.fromkeys(filter(None, (decided.change, *(cell.change for cell in asked)))))
    told = [f"{cell.test}: {cell.settles}" for cell in asked if cell.test and cell.settles]
    takes = "; ".join(dict.fromkeys(cell.takes for cell in asked if cell.takes))
    minutes, test = _minutes(asked), "; ".join(dict.fromkeys(told))
    return replace(decided, change=change, takes=takes, minutes=minutes, test=test)


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
    hearsay = worst_of.verdict == Verdict.TIGHT and worst_of.evidence == "unknown"
    verdict = "test first" if hearsay else WORDS[worst_of.verdict]  # a figure that nobody can place is to be measured
    if entries and not kept and verdict == "stays":
        verdict, reason = "goes", f"it passes alone, but nothing that must go with it fits it. {reason}"
    cure = "try it before every ride" if item.relay and item.kind == "kill switch" else worst_of.cure.rstrip(".")
    change = cure if verdict == "stays if" else ""
    if kept and len(kept) < len(entries):
        gone = dict.fromkeys(entry.place.circuit for entry in entries if entry.origin != "donor")
        reason = f"{len(kept)} of {len(entries)} runs stay; renew the others, in the {', '.join(gone)}. {reason}"
        verdict = "stays if"
    opens = worst_of.rule == BREAKS
    tested = OPENED.format(amps=worst_of.needed.removeprefix("at least ")) if opens else BENCH
    tested += f"; {LET_GO}" if any(datum.endswith("latches") for datum in lacking) else ""
    test = tested if verdict == "test first" else ""
    blank = DonorVerdict(item.name, item.kind, item.keep, verdict, reason, instead, change=change, test=test)
    return replace(blank, evidence="not known" if worst_of.verdict == Verdict.CANT_TELL else worst_of.evidence)


def own_part(family: str, item: Item, view: LoomView) -> Parts:
    """Describe the donor's own part, whatever stands in its places now."""
    return donors_own(family, item, view.facts.job, view.facts.margins, view.memory)


def _named(entry: Filled) -> str:
    return f"{entry.part_id} {entry.part.word('name')[0]}"


def _instead(item: Item, filled: Mapping[str, Filled]) -> str:
    """Name the part bought in its stead, where the loom has a place of its kind."""
    entry = filled.get(place_of(item.kind, item.name))
    return _named(entry) if entry else ""
