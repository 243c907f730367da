"""The way through the house: lay out, duties, qualify, choose, check, price."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
import numpy.typing as npt

from bom.arrangement import arranged
from bom.arrived.judged import as_received
from bom.build import Build
from bom.check.donor import donor_verdicts
from bom.check.donor_costs import Shelf, priced
from bom.check.judge_build import judge_build
from bom.choose.candidates import Candidates, candidates, kit
from bom.choose.filled import Filled
from bom.choose.joint import Pair, Slot, choose
from bom.choose.miss import Miss, open_place
from bom.choose.needless import Idle, may_be_needless, without
from bom.counts import MOST_PASSES, counted_beforehand, facts_of, raised_by_parts, raised_by_states
from bom.duties.circuits import Facts
from bom.duties.envelope import envelope
from bom.duties.model import Duty
from bom.judge.ask import judge_pairs, passing, verdicts
from bom.judge.finding import Finding
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.loom.layout import lay_out
from bom.loom.model import Loom
from bom.memory import Memory
from bom.money.bill import Need, bill
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.read.states import states_of

Say = Callable[[str], None]


def convert(
    job: JobFile,
    catalogue: Catalogue,
    margins: Margins,
    key_at: str,
    say: Say,
    memory: Memory,
    most_passes: int = MOST_PASSES,
) -> Build:
    """Choose, check and price one arrangement.

    Duties start from the job alone; where the chosen coils draw more than was counted, the count is
    raised and the choice made again, so many times at most. Raises RuntimeError when that does not settle. The memory
    is that of the run: it needs the same catalogue and margins, and any job.
    """
    job = arranged(job, key_at)
    loom = lay_out(job, margins, key_at)
    options = candidates(loom, job, catalogue, margins, memory)
    counted, states = counted_beforehand(loom, job, key_at, margins), states_of(catalogue.states, job)
    for number in range(1, most_passes + 1):
        facts = facts_of(job, margins, counted, key_at, states)
        duties = envelope(loom, facts)
        say(f"key at {key_at}: choosing among {sum(len(o.parts) for o in options.values())} candidates")
        allowed = _qualify(options, duties, margins, job)
        choice = _choose(loom, options, allowed, duties, margins, job, memory)
        raised = raised_by_parts(facts, choice.filled)
        if raised == counted:
            view = _view(loom, facts, duties, choice, memory)
            raised = raised_by_states(counted, view)
            if raised == counted or number == most_passes:  # what does not come to rest is a finding
                ordered = _finish(job, catalogue, view, options, allowed, choice, number)
                return as_received(ordered, loom, states, catalogue, memory) if job.received else ordered
        counted = raised
    raise RuntimeError("coils, charger and the parts they bear on did not settle; report this job")


def _view(loom: Loom, facts: Facts, duties: Mapping[str, Duty], choice: "_Choice", memory: Memory) -> LoomView:
    """Look at the loom with the parts chosen, and without what they have no use for."""
    wanted = without(loom, choice.needless)
    parts = {name: entry.part for name, entry in choice.filled.items()}
    ends = [{link.first, link.second} for link in loom.links]
    near = {name for pair in ends if pair & choice.needless for name in pair}
    known = {name: duty for name, duty in duties.items() if name not in near}  # nothing near them was dropped
    return LoomView(wanted, facts, parts, envelope(wanted, facts, known), memory)


def _qualify(
    options: Mapping[str, Candidates], duties: Mapping[str, Duty], margins: Margins, job: JobFile
) -> dict[str, tuple[int, ...]]:
    """List the candidates of each place that pass alone."""
    return {name: _allowed(option, duties[name], margins, job) for name, option in options.items()}


def _allowed(option: Candidates, duty: Duty, margins: Margins, job: JobFile) -> tuple[int, ...]:
    """List the candidates that every part rule passes; a forced one stands whatever they say."""
    if option.forced:
        return (0,)
    worst = Verdict.TIGHT if job.wishes.tight else Verdict.PASS
    return passing(option.parts, duty, margins, worst)


@dataclass(frozen=True)
class _Choice:
    """What stands where, and the places that nothing chosen has a use for."""

    filled: dict[str, Filled]
    needless: frozenset[str]


def _choose(
    loom: Loom,
    options: Mapping[str, Candidates],
    allowed: Mapping[str, tuple[int, ...]],
    duties: Mapping[str, Duty],
    margins: Margins,
    job: JobFile,
    memory: Memory,
) -> _Choice:
    """Choose all places together; one that may be needless has "nothing", free of charge, as its last candidate."""
    tables = {name: option.parts.take(allowed[name]) for name, option in options.items()}
    optional = {name: idle for name, idle in may_be_needless(loom).items() if not options[name].forced}
    slots = [_slot(name, option, allowed[name], memory, optional=name in optional) for name, option in options.items()]
    pairs = _pairs(loom, options, tables, duties, margins, job, memory)
    picked = choose(slots, [*map(partial(_with_nothing, optional), pairs), *_wanted(optional, tables)], memory)
    chosen = {name: index for name, index in picked.items() if index is not None and index < len(allowed[name])}
    filled = {
        name: Filled(options[name].place, tables[name].take([index]), _origin(options[name], tables[name], index))
        for name, index in chosen.items()
    }
    return _Choice(filled, frozenset(name for name, index in picked.items() if index == len(allowed[name])))


def _with_nothing(optional: Mapping[str, Idle], pair: Pair) -> Pair:
    """Let nothing go with every partner."""
    rows, columns = pair.first in optional, pair.second in optional
    if not rows and not columns:
        return pair
    return replace(pair, fits=np.pad(pair.fits, ((0, int(rows)), (0, int(columns))), constant_values=True))


def _wanted(optional: Mapping[str, Idle], tables: Mapping[str, Parts]) -> list[Pair]:
    """Let nothing stand only beside a part that has no use for the place."""
    pairs = []
    for name, idle in optional.items():
        decider = tables[idle.decider]
        if len(decider):
            fits = np.ones((len(tables[name]) + 1, len(decider)), dtype=bool)
            fits[-1] = idle.of(decider)
            pairs.append(Pair(name, idle.decider, fits, loose=False))
    return pairs


def _slot(name: str, option: Candidates, allowed: tuple[int, ...], memory: Memory, *, optional: bool) -> Slot:
    def weighed() -> Slot:
        ids = [option.parts.ids[index] for index in allowed]
        order = {part: rank for rank, part in enumerate(sorted(ids), start=1)}
        costs, ranks = [option.costs[index] for index in allowed], [order[part] for part in ids]
        nothing = [0] if optional else []
        return Slot("", (*costs, *nothing), (*ranks, *nothing))

    return replace(memory.once("slot", (option.parts, option.costs, allowed, optional), weighed), name=name)


def _origin(option: Candidates, table: Parts, index: int) -> str:
    if table.is_donor(index):
        return "donor"
    return "pinned" if option.forced else "chosen"


def _pairs(
    loom: Loom,
    options: Mapping[str, Candidates],
    tables: Mapping[str, Parts],
    duties: Mapping[str, Duty],
    margins: Margins,
    job: JobFile,
    memory: Memory,
) -> list[Pair]:
    pairs = []
    worst = Verdict.TIGHT if job.wishes.tight else Verdict.PASS
    for link in loom.links:
        first, second = tables[link.first], tables[link.second]
        if not len(first) or not len(second):
            continue
        asked = (link.kind, first, second, duties[link.first], duties[link.second], margins)
        fits = memory.once("fits", (*asked, worst), partial(_fits, asked, worst))
        loose = options[link.first].forced or options[link.second].forced
        pairs.append(Pair(link.first, link.second, fits, loose))
    return pairs


def _fits(asked: tuple[str, Parts, Parts, Duty, Duty, Margins], worst: Verdict) -> npt.NDArray[np.bool_]:
    """Tell which parts go together."""
    _, first, second, *_ = asked
    return np.asarray(verdicts(judge_pairs(*asked), (len(first), len(second))) <= worst)


def _finish(
    job: JobFile,
    catalogue: Catalogue,
    view: LoomView,
    options: Mapping[str, Candidates],
    allowed: Mapping[str, tuple[int, ...]],
    choice: _Choice,
    passes: int,
) -> Build:
    filled, loom, facts, duties = choice.filled, view.loom, view.facts, view.duties
    findings = judge_build(view, duties)
    _no_chosen_part_fails(findings, filled, job)
    passing = {name: option.parts.take(allowed[name]) for name, option in options.items()}
    miss = Miss(options, passing, duties, loom.links, facts.margins)
    holes = tuple(open_place(place, miss) for place in loom.places if place.name not in filled)
    shelf = Shelf(job, filled, {name: _cost(options[name], entry, catalogue) for name, entry in filled.items()})
    donor = priced(donor_verdicts(view, duties, filled, catalogue.donor_matrix), shelf)
    bought = bill(_needs(filled, loom), catalogue, facts.margins, job.money)
    return Build(loom, facts, duties, filled, holes, findings, donor, bought, passes, view.walks)


def _cost(option: Candidates, entry: Filled, catalogue: Catalogue) -> float:
    """Give what stands at a place costs there; NaN of a pinned part that nobody sells."""
    if entry.origin == "pinned" and entry.part_id not in catalogue.offers:
        return float("nan")
    return option.costs[option.parts.ids.index(entry.part_id)]


def _no_chosen_part_fails(findings: tuple[Finding, ...], filled: Mapping[str, Filled], job: JobFile) -> None:
    """A part that was chosen and then fails its own check is a fault of this program, not of the bike."""
    forced = {name for name, entry in filled.items() if entry.origin == "pinned" or entry.place.keep == "yes"}
    worst = Verdict.TIGHT if job.wishes.tight else Verdict.PASS
    for finding in findings:
        subjects = finding.subject.split(" / ")
        if finding.part and finding.verdict > worst and not forced & set(subjects):
            raise RuntimeError(f"a chosen part fails its own check: {finding.key}: {finding.sentence}")


def _needs(filled: Mapping[str, Filled], loom: Loom) -> list[Need]:
    needs = []
    conductors = {wire.name: wire.count for wire in loom.wires}
    for name, entry in filled.items():
        if entry.origin == "donor":
            continue
        part, place = entry.part, entry.place
        needs.append(
            Need(entry.part_id, part.word("name")[0], place.family, name, place.quantity, conductors.get(name, 1))
        )
        for extra, count in kit(part, 0):
            family = "contact" if extra == part.word("contact_part")[0] else "seal"
            needs.append(Need(extra, "", family, name, count))
    return needs
