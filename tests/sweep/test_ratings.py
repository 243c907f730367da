"""Every rating of every chosen part of sound builds made worse, better and unknown, and the build judged again.

A worse rating must be answered worse at its place, a better one nowhere, and a blank one never as well as before. Part
and pair rules answer for all changes of a part at once, as one table; rules about the whole bike are asked one by one
where they read the figure and no other rule caught it. The answers are those of `judge_build`, which a test confirms.
"""

from collections import Counter
from collections.abc import Callable, Iterable

import pytest

from bom.build import Build
from bom.check.judge_build import judge_build
from bom.judge.finding import Finding
from bom.judge.loom_view import LoomView
from bom.judge.verdict import Verdict
from bom.read.families import FAMILIES
from tests.sweep.builds import BUILDS, OF_A_KIT
from tests.sweep.judged import Bike, Outcome, raise_all, spoil
from tests.sweep.mutants import BETTER, BLANK, WORSE, changed, one
from tests.sweep.table import WAYS, directions, ratings

Converted = Callable[..., Build]


@pytest.fixture(scope="module")
def bikes(converted: Converted) -> list[Bike]:
    return [Bike(name, converted(*job)) for name, job in BUILDS.items()]


@pytest.fixture(scope="module")
def outcomes(bikes: list[Bike]) -> list[Outcome]:
    """Spoil every part once for each duty and each set of neighbours it meets in any of the builds."""
    found, met = [], set()
    for bike in bikes:
        for group, places in bike.groups().items():
            if group not in met:
                met.add(group)
                found += spoil(bike, places)
        found += raise_all(bike)
    return found


def told(bad: list[Outcome]) -> str:
    """Print each change once with the places it was missed at."""
    places: dict[str, list[str]] = {}
    for entry in bad:
        change = entry.change
        text = f"{change.family}.{change.column} = {change.value}"
        places.setdefault(text, []).append(f"{entry.place} ({entry.part}, {entry.build}) {' '.join(entry.worse[:3])}")
    return "\n" + "\n".join(f"{text}: {len(at)} times, as at {at[0]}" for text, at in places.items())


def test_the_builds_are_sound(bikes: list[Bike]) -> None:
    assert not [bike.name for bike in bikes if not bike.build.sound]


def test_a_worse_rating_is_caught(outcomes: list[Outcome]) -> None:
    missed = [entry for entry in outcomes if entry.change.kind == WORSE and not entry.worse]
    assert not missed, told(missed)


def test_a_better_rating_is_not_blamed(outcomes: list[Outcome]) -> None:
    blamed = [entry for entry in outcomes if entry.change.kind == BETTER and entry.worse]
    assert not blamed, told(blamed)


def test_a_rating_not_known_never_passes(outcomes: list[Outcome]) -> None:
    passed = [entry for entry in outcomes if entry.change.kind == BLANK and not entry.worse]
    assert not passed, told(passed)


def test_every_family_is_spoilt(outcomes: list[Outcome], bikes: list[Bike]) -> None:
    families = {bike.parts[entry.place].family for bike in bikes for entry in outcomes if entry.place in bike.parts}
    assert {family.name for family in FAMILIES} - families == OF_A_KIT
    assert all(count > 0 for count in Counter(entry.change.family for entry in outcomes).values())
    assert len(outcomes) > 8000


# Ratings that no sound build can be asked for, with the reason.
NEVER_ASKED = {
    ("converter", "output_peak_a"): "without a buffer battery only constant current opens the fuses",
    ("converter", "output_peak_s"): "without a buffer battery only constant current opens the fuses",
    ("power_connector", "mates_live"): "without a contactor the bus is not filled first",
    ("charger", "ip_code"): "no splash is asked in a box",
    ("fuse_box", "ip_code"): "no splash is asked under the seat",
    ("cap_switch", "make_a"): "it carries more than it closes on",
    ("key_switch", "make_a"): "it carries more than it closes on",
    ("contactor", "make_a"): "it carries more than it closes on, with the bus filled first",
    ("stop_switch", "make_a"): "it carries more than it closes on",
    ("stop_switch", "latches"): "one that is bought opens to stop, and needs no relay",
}


def test_every_rating_is_spoilt(outcomes: list[Outcome]) -> None:
    spoilt = {(entry.change.family, entry.change.column) for entry in outcomes if entry.change.kind != BETTER}
    wanted = {
        key
        for key, entry in directions().items()
        if entry.way != "no rating" and not (entry.way == "measure" and entry.blank)
    }
    assert wanted - spoilt == set(NEVER_ASKED)


def test_the_table_is_whole() -> None:
    assert {(family, column.name) for family, column in ratings()} == set(directions())
    for entry in directions().values():
        assert entry.way in WAYS, entry
        assert entry.why or entry.way not in ("window", "measure", "no rating"), entry


@pytest.mark.parametrize("place", ["main fuse", "isolator", "load relay clamp"])
def test_the_whole_build_says_the_same(bikes: list[Bike], place: str) -> None:
    """Judge the finished build as the program does, with one part changed: the answers of the table are its answers."""
    bike, build = bikes[0], bikes[0].build
    part, before = bike.parts[place], worst_of(bike.build.findings)
    for outcome in spoil(bike, [place]):
        parts = {**bike.parts, place: one(changed(part, [outcome.change]), 0)}
        after = worst_of(judge_build(LoomView(build.loom, build.facts, parts, build.duties), build.duties))
        worse = {key[0] for key, verdict in after.items() if verdict > before.get(key, Verdict.PASS)}
        assert {text.split(" @ ")[0] for text in outcome.worse} <= worse, outcome
        assert bool(worse) == bool(outcome.worse) or outcome.change.kind == BETTER, outcome


def worst_of(findings: Iterable[Finding]) -> dict[tuple[str, str], Verdict]:
    """Give the worst answer of each rule on each subject."""
    worst: dict[tuple[str, str], Verdict] = {}
    for finding in findings:
        key = finding.rule, finding.subject
        worst[key] = max(finding.verdict, worst.get(key, finding.verdict))
    return worst
