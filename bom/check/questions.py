"""Questions worth asking: figures of parts that would change a verdict of this bike, before ordering and on arrival.

A figure is asked when a rule of this build reads it of that part at that place, is untold for want of it (or tight
only because it is the seller's word), and the worst verdict of the place would change if it were good. A blank that
no answer leans on is not asked; neither is one of a place that fails anyway.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

import numpy as np

from bom import units
from bom.build import Build
from bom.check.asked import Bench
from bom.check.donor import OPENED, OPENED_MINUTES, OPENED_STARTS, own_part
from bom.check.question import Question, question_of
from bom.check.trial import Needed, figures_needed
from bom.check.trial_whole import figures_the_whole_needs
from bom.choose.candidates import candidates
from bom.choose.filled import Hole
from bom.duties.model import Duty
from bom.judge.ask import judge_parts, verdicts
from bom.judge.compare import HEARSAY
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.loom.model import Place
from bom.read.catalogue import Catalogue

MOST_LEFT_OUT = 3
# What a contact opened on the bench proves.
OPENS = ("breaking_points", "dc_volts_v", "carry_a", "make_a")


def questions(build: Build, catalogue: Catalogue) -> tuple[Question, ...]:
    """List the questions of a build: parts that stand, donor items to be tested, then candidates left out."""
    found = [
        *_of_standing(build, catalogue),
        *_of_the_bike(build, catalogue),
        *_of_donor(build, catalogue),
        *(question for hole in build.holes for question in _of_open(hole, build, catalogue)),
    ]
    return tuple(_joined(found))


def _of_standing(build: Build, catalogue: Catalogue) -> Iterator[Question]:
    for place in _leaning_places(build.findings):
        entry = build.filled.get(place)
        if entry is not None:
            stands = "donor" if entry.origin == "donor" else "bought"
            needed = figures_needed(_bench(build, place, catalogue), entry.part, _of_the_whole(build, place))
            yield from (question_of(stands, place, entry.part, each, catalogue) for each in needed)


def _of_the_bike(build: Build, catalogue: Catalogue) -> Iterator[Question]:
    """Ask what rules about the whole bike are untold for; nothing of a part that fails at its place anyway."""
    failed = {place for f in build.findings if f.verdict == Verdict.FAIL for place in f.subject.split(" / ")}
    for each in figures_the_whole_needs(build):
        if each.place in failed:
            continue
        stands = "donor" if build.filled[each.place].origin == "donor" else "bought"
        needed = Needed(each.column, True, Verdict.CANT_TELL, each.then, each.waiting)
        yield question_of(stands, each.place, each.part, needed, catalogue)


def _of_donor(build: Build, catalogue: Catalogue) -> Iterator[Question]:
    """Ask of the donor's own part where a bought one stands until the test is made.

    Of a loom the area tells all the rest, and the run with the most amps asks most.
    """
    told, items = {item.name: item for item in build.donor}, {item.name: item for item in build.facts.job.donor.items}
    heaviest: dict[tuple[str, str], Place] = {}
    for place in sorted(build.loom.places, key=lambda place: _amps(build.duties[place.name])):
        if place.item and told[place.item].verdict == "test first":
            heaviest[place.item, place.family] = place
    for place in heaviest.values():
        part = own_part(place.family, items[place.item], build.walks.bike.view)
        for each in figures_needed(_bench(build, place.name, catalogue), part):
            if place.family != "cable" or each.column == "area_mm2":
                question = question_of("donor", place.name, part, each, catalogue)
                tried = OPENED_STARTS in told[place.item].test
                yield _opened(question, build.duties[place.name]) if tried else question


def _amps(duty: Duty) -> float:
    return duty.carry_a.high if duty.has("carry_a") else 0.0


def _opened(question: Question, duty: Duty) -> Question:
    """Let a donor contact on 12 V be tried on the bench, as its item says: what it opened there counts as measured."""
    if question.column not in OPENS:
        return question
    opened = OPENED.format(amps=units.show(duty.break_a.high, "current"))
    return replace(question, test=opened, proves="settles", passes=question.need, minutes=OPENED_MINUTES)


def _of_open(hole: Hole, build: Build, catalogue: Catalogue) -> Iterator[Question]:
    """Ask of candidates that fail nothing at an open place: those that lack the fewest figures, then the cheapest."""
    facts, name = build.facts, hole.place.name
    if hole.verdict != Verdict.CANT_TELL:
        return
    memory = build.walks.bike.view.memory
    option = candidates(replace(build.loom, places=(hole.place,)), facts.job, catalogue, facts.margins, memory)[name]
    answers = judge_parts(option.parts, build.duties[name], facts.margins)
    untold = np.flatnonzero(verdicts(answers, (len(option.parts),)) == Verdict.CANT_TELL)
    asked = []
    for index in sorted(untold, key=lambda row: option.costs[row]):
        part = option.parts.take([int(index)])
        asked.append((part, figures_needed(_bench(build, name, catalogue), part)))
    asked = sorted(((part, needed) for part, needed in asked if needed), key=lambda entry: len(entry[1]))
    for part, needed in asked[:MOST_LEFT_OUT]:
        yield from (question_of("left out", name, part, each, catalogue) for each in needed)


def _leaning_places(findings: Iterable[Finding]) -> list[str]:
    """List the places of which an answer is untold, or tight for hearsay."""
    leaning = [
        finding
        for finding in findings
        if finding.part
        and (finding.verdict == Verdict.CANT_TELL or (finding.verdict == Verdict.TIGHT and finding.evidence in HEARSAY))
    ]
    return list(dict.fromkeys(place for finding in leaning for place in finding.subject.split(" / ")))


def _of_the_whole(build: Build, place: str) -> list[Verdict]:
    """Gather what rules about the whole bike say of a place."""
    return [f.verdict for f in build.findings if not f.part and place in f.subject.split(" / ")]


def _bench(build: Build, place: str, catalogue: Catalogue) -> Bench:
    parts = {name: entry.part for name, entry in build.filled.items()}
    table = catalogue.families[build.loom.place(place).family]
    free = frozenset(name for name, entry in build.filled.items() if entry.origin == "chosen")
    return Bench(place, build.duties, build.facts.margins, build.loom.links, parts, table, free)


def _joined(found: Sequence[Question]) -> list[Question]:
    """Put together what is asked of one figure of one part at several places, the worst answer first."""
    groups: dict[tuple[str, str, str], list[Question]] = {}
    for question in found:
        groups.setdefault((question.stands, question.part_id, question.column), []).append(question)
    return [
        replace(group[0], places=tuple(dict.fromkeys(place for each in group for place in each.places)))
        for group in groups.values()
    ]
