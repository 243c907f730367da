"""The way through the house: lay out, duties, qualify, choose, check, price."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import partial

import numpy as np
import numpy.typing as npt

from bom.arrangement import arranged
from bom.build import Build
from bom.check.donor import donor_verdicts
from bom.check.donor_costs import Shelf, priced
from bom.check.judge_build import judge_build
from bom.choose.candidates import Candidates, candidates, kit
from bom.choose.filled import Filled
from bom.choose.joint import Pair, Slot, choose
from bom.choose.miss import Miss, open_place
from bom.choose.needless import Idle, may_be_needless, without
from bom.choose.received import with_received
from bom.duties.budget import budget
from bom.duties.circuits import Counted, Facts
from bom.duties.coil_traces import counted_traces, key_wires_a, raised_traces
from bom.duties.envelope import envelope
from bom.duties.model import Duty
from bom.duties.volts import pack_facts
from bom.judge.ask import judge_pairs, passing, verdicts
from bom.judge.finding import Finding
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.loom.layout import lay_out
from bom.loom.model import Loom
from bom.loom.relay_names import STOP_RELAY
from bom.memory import Memory
from bom.money.bill import Need, bill
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.margins import Margins
from bom.read.states import State, states_of

MOST_PASSES = 6
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
    counted, states = _counted(loom, job, key_at, margins), states_of(catalogue.states, job)
    for number in range(1, most_passes + 1):
        facts = _facts(job, margins, counted, key_at, states)
        duties = envelope(loom, facts)
        say(f"key at {key_at}: choosing among {sum(len(o.parts) for o in options.values())} candidates")
        allowed = _qualify(options, duties, margins, job)
        choice = _choose(loom, options, allowed, duties, margins, job, memory)
        raised = _raised(facts, choice.filled)
        if raised == counted:
            view = _view(loom, facts, duties, choice, memory)
            raised = _raised_by_states(counted, view)
            if raised == counted or number == most_passes:  # what does not come to rest is a finding
                ordered = _finish(job, catalogue, view, options, allowed, choice, number)
                return _as_received(ordered, states, catalogue, memory) if job.received else ordered
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


def _raised_by_states(counted: Counted, view: LoomView) -> Counted:
    """Raise the amps of each place that a solved state asks more of; never lower them."""
    from bom.circuit.exceeds import exceeds

    over = {excess.place: (excess.amps, excess.state) for excess in exceeds(view)}
    return replace(counted, solved_a={**counted.solved_a, **over}) if over else counted


def _facts(job: JobFile, margins: Margins, counted: Counted, key_at: str, states: tuple[State, ...]) -> Facts:
    pack = pack_facts(job, margins, counted.charge_end_v)
    return Facts(job, margins, pack, budget(job, margins, counted.hold_a, states), counted, key_at)


def _counted(loom: Loom, job: JobFile, key_at: str, margins: Margins) -> Counted:
    """Count coils before any is chosen, and a key input at 12 V; the charger is taken to end at full charge."""
    # The stop relay is in only while the chain it opens is dead.
    relays = sum(1 for place in loom.places if place.family == "relay" and place.name != STOP_RELAY)
    contactors = sum(1 for place in loom.places if place.family == "contactor")
    beside = key_wires_a(job, key_at, margins)
    hold = relays * margins.relay_coil_a + contactors * margins.contactor_coil_a + beside
    pull = relays * margins.relay_coil_a + contactors * margins.contactor_pull_a + beside
    because = f"{contactors} contactor coil and {relays} relay coils as counted beforehand"
    hold_trace, pull_trace = counted_traces(relays, contactors, job, key_at, margins)
    return Counted(hold, pull, because, 0.0, hold_trace, pull_trace)


def _raised(facts: Facts, filled: Mapping[str, Filled]) -> Counted:
    """Raise the count to what the chosen parts draw and reach; never lower it."""
    counted, key_at, margins = facts.counted, facts.key_at, facts.margins
    beside, full_charge_v = key_wires_a(facts.job, key_at, margins), facts.pack.full_charge_v.high
    driven = [entry for entry in filled.values() if entry.place.family in ("relay", "contactor")]
    coils = [entry.part for entry in driven if entry.place.name != STOP_RELAY]
    hold, pull = (
        beside + sum(float(np.nan_to_num(part.number(column)[0])) for part in coils)
        for column in ("coil_hold_a", "coil_pull_a")
    )
    charger = filled.get("charger")
    end_v = float(np.nan_to_num(charger.part.number("end_v")[0])) if charger else 0.0
    if hold <= counted.hold_a and pull <= counted.pull_a and end_v <= max(counted.charge_end_v, full_charge_v):
        return counted
    because = counted.because if hold <= counted.hold_a else "coils of the chosen contactor and relays together"
    traces = raised_traces(counted, facts.job, key_at, margins, coils)
    end_v = max(end_v, counted.charge_end_v)
    return Counted(
        max(hold, counted.hold_a), max(pull, counted.pull_a), because, end_v, *traces, solved_a=counted.solved_a
    )


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


def _as_received(ordered: Build, states: tuple[State, ...], catalogue: Catalogue, memory: Memory) -> Build:
    """Judge everything again with what arrived in its place; the choice and the bill stay as ordered."""
    facts, loom = ordered.facts, ordered.loom
    filled = with_received(ordered.filled, loom, facts.job, catalogue)
    counted = _raised(facts, filled)
    for _ in range(MOST_PASSES):
        facts = _facts(facts.job, facts.margins, counted, facts.key_at, states)
        duties = envelope(loom, facts)
        parts = {name: entry.part for name, entry in filled.items()}
        view = LoomView(loom, facts, parts, duties, memory)
        raised = _raised_by_states(counted, view)
        if raised == counted:
            break
        counted = raised
    findings = judge_build(view, duties)
    holes = tuple(hole for hole in ordered.holes if hole.place.name not in filled)
    costs = dict.fromkeys(filled, 0.0)  # what arrived is paid for
    donor = priced(donor_verdicts(view, duties, filled, catalogue.donor_matrix), Shelf(facts.job, filled, costs))
    return replace(
        ordered,
        facts=facts,
        duties=duties,
        filled=filled,
        holes=holes,
        findings=findings,
        donor=donor,
        walks=view.walks,
        ordered=ordered,
    )


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
