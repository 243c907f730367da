"""A memory only saves time: a conversion answers the same whatever was converted with it before."""

import random
from collections.abc import Callable

import pytest

from bom.arrangement import ALL
from bom.build import Build
from bom.convert import convert
from bom.judge.ask import judge_pairs, judge_parts, passing
from bom.memory import Memory
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile

Edited = Callable[..., JobFile]

EDITS: tuple[dict[str, object], ...] = (
    {},
    {"wishes.two_wire": True},
    {"wishes.two_wire": False},
    {"wishes.buffer_battery": True},
    {"wishes.contactor": False, "wishes.isolator": "breaker"},
    {"wishes.meter": "volts and amps"},
    {"pack.series": 15},
    {"donor.earth": "positive"},
    {"ambient.box": "70 °C"},
    {"donor.items.horn button.relay": True},
    {"donor.items.kill switch.relay": True, "donor.items.kill switch.keep": "yes"}
    | {"donor.items.kill switch.contact": "closes to stop"},
)
STARTERS = ("street-72", "frame-return-105")
ORDERS = range(2)


def contents(build: Build) -> dict[str, object]:
    """Give all of a build that is printed."""
    return {
        "filled": {name: (entry.part_id, entry.origin) for name, entry in build.filled.items()},
        "holes": [(hole.place.name, hole.sentence, hole.verdict) for hole in build.holes],
        "findings": build.findings,
        "needs": {name: duty.needs for name, duty in build.duties.items()},
        "words": {name: duty.words for name, duty in build.duties.items()},
        "donor": repr(build.donor),
        "bill": (build.bill.total, repr(build.bill)),
        "walks": repr(
            (
                build.walks.faults,
                build.walks.opens,
                build.walks.strays,
                build.walks.waking,
                build.walks.dip,
                build.walks.key_faults,
            )
        ),
        "amps": [(standing.state.name, standing.solution.amps) for standing in build.walks.states],
        "passes": build.passes,
    }


def fresh(job: JobFile, catalogue: Catalogue, key_at: str) -> dict[str, object]:
    """Convert with nothing known."""
    for answers in (judge_parts, judge_pairs, passing):
        answers.cache_clear()
    return contents(convert(job, catalogue, catalogue.margins, key_at, lambda text: None, Memory()))


@pytest.fixture(scope="module", params=STARTERS)
def alone(
    request: pytest.FixtureRequest, edited: Edited, catalogue: Catalogue
) -> list[tuple[JobFile, str, dict[str, object]]]:
    """Convert each edited job by itself, in two key arrangements that take turns."""
    jobs = [edited(request.param, edits) for edits in EDITS]
    turns = [(job, ALL[(number + turn) % len(ALL)]) for number, job in enumerate(jobs) for turn in (0, 1)]
    return [(job, key_at, fresh(job, catalogue, key_at)) for job, key_at in turns]


@pytest.mark.parametrize("order", ORDERS)
def test_what_was_converted_before_changes_nothing(
    order: int, alone: list[tuple[JobFile, str, dict[str, object]]], catalogue: Catalogue
) -> None:
    memory = Memory()
    for job, key_at, expected in random.Random(order).sample(alone, len(alone)):
        again = contents(convert(job, catalogue, catalogue.margins, key_at, lambda text: None, memory))
        for what, answer in expected.items():
            assert again[what] == answer, what


def test_a_question_is_worked_out_once() -> None:
    memory, asked = Memory(), []
    for bears in (1, 2, 1):
        assert memory.once("double", bears, lambda bears=bears: asked.append(bears) or 2 * bears) == 2 * bears
    assert asked == [1, 2]
