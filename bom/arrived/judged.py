"""A build judged with what arrived: the choice and the bill stay as ordered, all else is worked out anew."""

from collections.abc import Mapping
from dataclasses import replace

from bom.arrived.cures import with_cures
from bom.arrived.stands import Stands, with_received
from bom.arrived.wants import wanted_holes
from bom.build import Build
from bom.check.donor import donor_verdicts
from bom.check.donor_costs import Shelf, priced
from bom.check.judge_build import judge_build
from bom.counts import MOST_PASSES, facts_of, raised_by_parts, raised_by_states
from bom.duties.envelope import envelope
from bom.judge.loom_view import LoomView
from bom.loom.model import Loom
from bom.memory import Memory
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.states import State


def as_received(ordered: Build, whole: Loom, states: tuple[State, ...], catalogue: Catalogue, memory: Memory) -> Build:
    """Judge everything again with what arrived in its place; `whole` is the loom with every place it may want."""
    stands = with_received(ordered, whole, catalogue)
    view = _view(ordered, stands, states, memory)
    holes = (
        *(hole for hole in ordered.holes if hole.place.name not in stands.filled),
        *wanted_holes(stands, ordered, view, catalogue),
    )
    findings = with_cures(judge_build(view, view.duties), ordered, stands.filled, holes)
    costs = dict.fromkeys(stands.filled, 0.0)  # what arrived is paid for
    shelf = Shelf(view.facts.job, stands.filled, costs)
    donor = priced(donor_verdicts(view, view.duties, stands.filled, catalogue.donor_matrix), shelf)
    return replace(
        ordered,
        loom=stands.loom,
        facts=view.facts,
        duties=view.duties,
        filled=stands.filled,
        holes=holes,
        findings=findings,
        donor=donor,
        walks=view.walks,
        ordered=ordered,
        aside=stands.aside,
    )


def _view(ordered: Build, stands: Stands, states: tuple[State, ...], memory: Memory) -> LoomView:
    """Raise what the parts that stand draw until it rests; what does not come to rest is a finding."""
    facts, parts = ordered.facts, _parts(stands)
    counted = raised_by_parts(facts, stands.filled)
    for _ in range(MOST_PASSES):
        facts = facts_of(facts.job, facts.margins, counted, facts.key_at, states)
        view = LoomView(stands.loom, facts, parts, envelope(stands.loom, facts), memory)
        raised = raised_by_states(counted, view)
        if raised == counted:
            break
        counted = raised
    return view


def _parts(stands: Stands) -> Mapping[str, Parts]:
    return {name: entry.part for name, entry in stands.filled.items()}
