"""The fuse table: what each fuse is, what it guards, and the ratings that would serve in its place."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import nan

import numpy as np

from bom.build import Build
from bom.choose.filled import NONE
from bom.duties.model import Duty
from bom.judge.ask import judge_pairs, judge_parts, verdicts
from bom.judge.compare import Judgement
from bom.judge.verdict import Verdict
from bom.loom.model import Place
from bom.money.bill import FUSES
from bom.papers.wire_rows import wire_numbers
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.rules import fuse_guards_its_wire, fuse_holds_the_load


@dataclass(frozen=True)
class FuseRow:
    """One fuse as the papers print it; NaN where a figure is not known.

    wires    numbers of the wires it guards
    holds_a  amps it carries for ever at its ambient
    wire_a   amps the thinnest guarded wire carries
    fits     ratings of the same body in the catalogue that pass every rule at this place
    """

    place: str
    part: str
    name: str
    rated_a: float
    dc_volts_v: float
    breaking_a: float
    carry_a: float
    fault_low_a: float
    fault_high_a: float
    wires: tuple[str, ...]
    holds_a: float
    wire_a: float
    fits: tuple[float, ...]


def fuse_rows(build: Build, catalogue: Catalogue) -> list[FuseRow]:
    """List every fuse of the loom, pack side first."""
    places = [place for family in FUSES for place in build.loom.places if place.family == family]
    numbers = wire_numbers(build)
    return [_row(place, build, catalogue.families[place.family], numbers) for place in places]


def _row(place: Place, build: Build, table: Parts, numbers: Mapping[str, str]) -> FuseRow:
    duty, entry = build.duties[place.name], build.filled.get(place.name)
    guarded = [link.second for link in build.loom.links if link.kind == "guards" and link.first == place.name]
    part = entry.part if entry else None
    loads = _asked_of_load(part, duty, build) if part else []
    guards = _asked_of_wires(part, place.name, guarded, build) if part else []
    return FuseRow(
        place=place.name,
        part=entry.part_id if entry else NONE,
        name=part.word("name")[0] if part else "",
        rated_a=_figure(part, "rated_a"),
        dc_volts_v=_figure(part, "dc_volts_v"),
        breaking_a=_figure(part, "dc_breaking_a"),
        carry_a=duty.carry_a.high if duty.has("carry_a") else nan,
        fault_low_a=duty.fault_low_a.low if duty.has("fault_low_a") else nan,
        fault_high_a=duty.fault_high_a.high if duty.has("fault_high_a") else nan,
        wires=tuple(numbers[name] for name in guarded),
        holds_a=_least(loads),
        wire_a=_least([answers[0] for answers in guards]),
        fits=_fits(part, table, place.name, build) if part else (),
    )


def _figure(part: Parts | None, name: str) -> float:
    return float(part.number(name)[0]) if part else nan


def _asked_of_load(fuses: Parts, duty: Duty, build: Build) -> list[Judgement]:
    """Ask the rule of the load, where the place has one."""
    rule = fuse_holds_the_load.RULE
    return list(rule.judge(fuses, duty, build.facts.margins)) if duty.has(*rule.only_with) else []


def _asked_of_wires(fuses: Parts, place: str, guarded: list[str], build: Build) -> list[list[Judgement]]:
    """Ask the rule of the wire about each wire that stands."""
    duties, margins = build.duties, build.facts.margins
    return [
        list(fuse_guards_its_wire.RULE.judge(fuses, build.filled[name].part, duties[place], duties[name], margins))
        for name in guarded
        if name in build.filled
    ]


def _least(judgements: list[Judgement]) -> float:
    """Take the least of what is offered; NaN where nothing is, or one is not known."""
    return float(np.min([judgement.offered for judgement in judgements])) if judgements else nan


def _fits(part: Parts, table: Parts, place: str, build: Build) -> tuple[float, ...]:
    """List the ratings of the table's fuses of one body that pass every rule here, with the parts they bear on."""
    body = part.word("body")[0]
    alike = table.take([index for index, shape in enumerate(table.word("body")) if shape == body])
    links = [link for link in build.loom.links if place in (link.first, link.second)]
    if not len(alike) or any(other not in build.filled for link in links for other in (link.first, link.second)):
        return ()
    margins, duties = build.facts.margins, build.duties
    worst_of = verdicts(judge_parts(alike, duties[place], margins), (len(alike),))
    for link in links:
        first, second = (alike if name == place else build.filled[name].part for name in (link.first, link.second))
        answers = judge_pairs(link.kind, first, second, duties[link.first], duties[link.second], margins)
        worst_of = np.maximum(worst_of, np.ravel(verdicts(answers, (len(first), len(second)))))
    return tuple(sorted(set(alike.number("rated_a")[worst_of <= Verdict.PASS].tolist())))
