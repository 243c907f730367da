"""What must hold of any good build, on the starter jobs."""

from collections.abc import Callable, Iterator
from dataclasses import replace

import numpy as np
import pytest

from bom.build import Build
from bom.choose.filled import Filled
from bom.convert import convert
from bom.duties.model import Duty
from bom.judge.ask import Answer, judge_pairs, judge_parts
from bom.judge.compare import Demand, Judgement
from bom.judge.rule import part_rules, rules
from bom.judge.verdict import Verdict
from bom.memory import Memory
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile
from bom.read.margins import Margins

Converted = Callable[..., Build]
Edited = Callable[..., JobFile]
STARTERS = ("street-72", "moped-48", "frame-return-105")

# A rating that must reach its duty, and the rule that must speak when it no longer does.
REACHES = [
    ("main_fuse", "dc_volts_v", "holds-dc-volts"),
    ("main_fuse", "dc_breaking_a", "fuse-breaks-the-fault"),
    ("tap_fuse", "dc_volts_v", "holds-dc-volts"),
    ("tap_fuse", "dc_breaking_a", "fuse-breaks-the-fault"),
    ("blade_fuse", "dc_volts_v", "holds-dc-volts"),
    ("fuse_holder", "dc_volts_v", "holds-dc-volts"),
    ("fuse_holder", "rated_a", "joint-carries"),
    ("fuse_box", "ways", "connector-has-the-ways"),
    ("fuse_box", "bus_a", "fuse-box-carries"),
    ("contactor", "dc_volts_v", "holds-dc-volts"),
    ("contactor", "carry_a", "contact-carries"),
    ("contactor", "coil_max_v", "coil-fits-the-rail"),
    ("relay", "dc_volts_v", "holds-dc-volts"),
    ("relay", "coil_max_v", "coil-fits-the-rail"),
    ("converter", "input_max_v", "converter-survives-full-charge"),
    ("converter", "isolation_v", "converter-isolation-holds"),
    ("precharge_resistor", "dc_volts_v", "holds-dc-volts"),
    ("power_connector", "dc_volts_v", "holds-dc-volts"),
    ("signal_connector", "ways", "connector-has-the-ways"),
    ("cable", "class_dc_v", "cable-holds-the-volts"),
    ("lug", "terminal_max_c", "lug-stands-the-heat"),
    ("terminal", "terminal_max_c", "lug-stands-the-heat"),
    ("terminal", "rated_a", "joint-carries"),
    ("meter", "range_max_v", "meter-shows-full-charge"),
    ("meter", "supply_max_v", "meter-is-fed-right"),
    ("charge_port", "rated_a", "joint-carries"),
    ("post", "lugs", "joint-has-room"),
    ("post", "rated_a", "joint-carries"),
    ("splice", "wires", "joint-has-room"),
    ("splice", "dc_volts_v", "holds-dc-volts"),
    ("splice", "rated_a", "joint-carries"),
    ("cap_switch", "dc_volts_v", "holds-dc-volts"),
    ("cap_switch", "carry_a", "contact-carries"),
    ("flasher", "load_max_w", "flasher-suits-the-lamps"),
    ("lamp", "supply_max_v", "runs-on-the-rail"),
]


def chosen(build: Build) -> Iterator[tuple[str, Filled]]:
    return ((name, entry) for name, entry in build.filled.items() if entry.origin == "chosen")


def worst(answers: list[Answer]) -> Verdict:
    return Verdict(max((int(answer.judgement.verdicts.max()) for answer in answers), default=0))


def with_figure(part: Parts, column: str, value: float) -> Parts:
    return replace(part, numbers={**part.numbers, column: np.array([value])}, whole=None)


@pytest.mark.parametrize("starter", STARTERS)
def test_every_chosen_part_passes_its_own_check(starter: str, converted: Converted, margins: Margins) -> None:
    build = converted(starter)
    for name, entry in chosen(build):
        assert worst(judge_parts(entry.part, build.duties[name], margins)) <= Verdict.PASS, name


@pytest.mark.parametrize("starter", STARTERS)
def test_every_chosen_pair_passes_its_own_check(starter: str, converted: Converted, margins: Margins) -> None:
    build = converted(starter)
    names = {name for name, _ in chosen(build)}
    for link in build.loom.links:
        if {link.first, link.second} <= names:
            pair = build.filled[link.first].part, build.filled[link.second].part
            duties = build.duties[link.first], build.duties[link.second]
            assert worst(judge_pairs(link.kind, *pair, *duties, margins)) <= Verdict.PASS, link


@pytest.mark.parametrize(("family", "column", "rule"), REACHES)
def test_a_rating_below_its_duty_is_flagged(
    family: str, column: str, rule: str, converted: Converted, margins: Margins
) -> None:
    asked = 0
    for entry, duty in chosen_of(family, converted):
        for index, needed in reaching(rule, column, entry.part, duty, margins):
            asked += 1
            low, high = (float(np.ravel(end)[0]) for end in (needed.low, needed.high))
            for figure, answer in (
                (high, Verdict.PASS),
                (low * 0.999, Verdict.FAIL),
                (np.nan, Verdict.CANT_TELL),
                (10 * high, Verdict.PASS),
            ):
                changed = with_figure(entry.part, column, figure)
                assert by_rule(rule, changed, duty, margins)[index].verdicts.tolist() == [answer], entry.place.name
    assert asked, "no starter job asks this"


def chosen_of(family: str, converted: Converted) -> list[tuple[Filled, Duty]]:
    """List up to six places of a family in each starter job."""
    found = []
    for starter in STARTERS:
        build = converted(starter)
        places = [(entry, build.duties[name]) for name, entry in chosen(build) if entry.place.family == family]
        found += places[:6]
    return found


def by_rule(rule: str, part: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    shape = next(shape for entry, shape in part_rules(part.family) if entry.name == rule)
    return list(shape.judge(part, duty, margins)) if duty.has(*shape.only_with) else []


def reaching(rule: str, column: str, part: Parts, duty: Duty, margins: Margins) -> list[tuple[int, Demand]]:
    """Find the comparisons that ask this very column to reach something: those that a blank makes unknown."""
    blank = by_rule(rule, with_figure(part, column, np.nan), duty, margins)
    return [
        (index, judgement.needed)
        for index, judgement in enumerate(blank)
        if judgement.sense == "at least" and judgement.verdicts.tolist() == [Verdict.CANT_TELL]
    ]


def silent(text: str) -> None:
    pass


def reversed_rows(catalogue: Catalogue) -> Catalogue:
    families = {
        name: replace(table.take(range(len(table) - 1, -1, -1)), whole=None, donor=())
        for name, table in catalogue.families.items()
    }
    offers = {part: tuple(reversed(rows)) for part, rows in catalogue.offers.items()}
    return replace(catalogue, families=families, offers=offers)


@pytest.mark.parametrize("starter", STARTERS)
def test_row_order_of_the_catalogue_does_not_matter(
    starter: str, converted: Converted, edited: Edited, catalogue: Catalogue
) -> None:
    build = converted(starter)
    turned = convert(edited(starter), reversed_rows(catalogue), catalogue.margins, build.facts.key_at, silent, Memory())
    assert {name: entry.part_id for name, entry in turned.filled.items()} == {
        name: entry.part_id for name, entry in build.filled.items()
    }
    assert turned.bill.total == build.bill.total


# Beside the starter jobs: wishes that bring their own rules.
BRAKE = {"function": "brake", "signal": "12 V high-active", "to": "front brake switch"}
FROM_DONOR = {"name": "motor controller", "kind": "controller", "keeps_apart": True, "leads": [BRAKE]}
VARIANTS = (
    {"wishes.buffer_battery": True},
    {"wishes.pilot_lamp": True},
    {"pins.converter": "CV-0303"},  # common minus
    {"wishes.meter": "volts and amps"},
    {"wishes.contactor": False, "wishes.isolator": "breaker"},
    {"controller.key_input": "12 V", "controller.key_return": "own terminal"},
    {"loads.rear indicators.telltale": "through two diodes"},
    {"donor.lamp_return": "frame", "wishes.two_wire": True},
    {"devices": [FROM_DONOR]},
    {"wishes.key": "12 V, sleeping converter"},
    {"donor.items.horn button.relay": True},
    {"pack.bms.opens": "minus", "pack.on_cell_minus": []},
)


def test_every_rule_is_asked_somewhere(converted: Converted) -> None:
    builds = [converted(starter) for starter in STARTERS] + [converted("street-72", edits) for edits in VARIANTS]
    asked = {finding.rule for build in builds for finding in build.findings}
    assert asked == {rule.name for rule in rules()}


def test_starter_jobs_are_as_their_first_lines_say(converted: Converted) -> None:
    """Street bike, small two-stroke and classic can be built; the lock at 105 V cannot, and the key alone is why."""
    assert converted("street-72").sound
    assert converted("moped-48").sound
    classic = converted("positive-earth-60")
    assert classic.sound
    assert classic.count(Verdict.CANT_TELL) == 0
    assert {told.verdict for told in classic.donor} == {"stays", "stays if", "test first", "goes"}
    failed = {f.subject for f in converted("frame-return-105").findings if f.verdict == Verdict.FAIL}
    assert failed == {"key switch"}


def test_leads_are_weighed_with_the_part_that_wants_them(
    catalogue: Catalogue, edited: Callable[..., JobFile], margins: Margins
) -> None:
    """A sensing closer that costs less than a timer costs more with its leads, fuses and holders (arithmetic)."""
    cheap = tuple(replace(offer, breaks=((1, 9.0),)) for offer in catalogue.offers["CC-0201"])
    shop = replace(catalogue, offers={**catalogue.offers, "CC-0201": cheap})
    built = convert(edited("moped-48"), shop, margins, "12 V", silent, Memory())
    assert built.filled["contactor closer"].part.word("senses_bus") == ("no",)
    forced = edited("moped-48", {"pins": {"contactor closer": "CC-0201"}})
    assert built.bill.total < convert(forced, shop, margins, "12 V", silent, Memory()).bill.total


@pytest.mark.parametrize("starter", STARTERS)
def test_every_place_of_a_build_has_its_duty_and_no_other(starter: str, converted: Converted) -> None:
    build = converted(starter)
    assert set(build.duties) == {place.name for place in build.loom.places}
    held = [link for link in build.loom.links if link.kind == "takes fuse" and link.first == "fuse box"]
    assert build.duties["fuse box"].ways.high == len(held)
