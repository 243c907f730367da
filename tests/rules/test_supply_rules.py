"""Rules about the whole 12 V supply, on small edits of the street job; figures worked by hand beside each case."""

from collections.abc import Callable, Mapping
from dataclasses import replace

import numpy as np
import pytest

from bom.arrangement import SLEEPING, TWELVE
from bom.choose.needless import may_be_needless
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule, rules
from bom.loom.layout import lay_out
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.margins import Margins

Told = Callable[..., list[LoomAnswer]]


@pytest.fixture
def told(edited: Callable[..., object], facts_of: Callable[..., object], margins: Margins) -> Told:
    def ask(rule: str, edits: object, key_at: str = TWELVE, parts: Mapping[str, Parts] | None = None) -> object:
        job = edited("street-72", edits)
        view = LoomView(lay_out(job, margins, key_at), facts_of(job, key_at), parts or {}, {})
        shape = next(entry.shape for entry in rules() if entry.name == rule)
        assert isinstance(shape, LoomRule)
        return list(shape.judge(view))

    return ask


def verdict_of(answers: list[LoomAnswer]) -> str:
    return max(answer.verdict for answer in answers).word if answers else "not asked"


def part(catalogue: Catalogue, family: str, **cells: float | str) -> Parts:
    """Take the first part of a family with some of its cells written otherwise."""
    table = catalogue.families[family].take([0])
    numbers = {name: np.array([cells[name]]) for name in cells if name in table.numbers}
    words = {name: (str(cells[name]),) for name in cells if name in table.words}
    exceptions = {"exceptions": ("",)}
    return replace(
        table, numbers={**table.numbers, **numbers}, words={**table.words, **exceptions, **words}, whole=None
    )


def parked(catalogue: Catalogue, capacity_ah: float, leak_ma: float, evidence: str = "data sheet") -> dict[str, Parts]:
    return {
        "converter": part(catalogue, "converter", output_leak_ma=leak_ma, evidence=evidence),
        "buffer battery": part(catalogue, "buffer_battery", capacity_ah=capacity_ah),
    }


# Worked: 400 mA empty 22 Ah in 22 / 0.4 = 55 h, "flat in two days", half of it in 27 h (a builder's report, no source).
# Half of 3 Ah at 0.5 mA lasts 1.5 / 0.0005 / 24 = 125 days, at 2 mA 31.2, at 2.1 mA 29.8.
@pytest.mark.parametrize(
    ("capacity_ah", "leak_ma", "evidence", "key_at", "verdict"),
    [
        (22.0, 400.0, "data sheet", SLEEPING, "tight"),
        (3.0, 0.5, "data sheet", SLEEPING, "pass"),
        (3.0, 0.5, "seller's word", SLEEPING, "tight"),
        (3.0, 2.0, "data sheet", SLEEPING, "pass"),
        (3.0, 2.1, "data sheet", SLEEPING, "tight"),
        (3.0, 2.1, "data sheet", "pack volts", "tight"),  # the key in its feed switches it off too
        (3.0, float("nan"), "data sheet", SLEEPING, "can't tell"),
        (3.0, 400.0, "data sheet", TWELVE, "not asked"),  # it is on, and keeps the battery charged
    ],
)
def test_what_leaks_into_a_converter_counts(
    capacity_ah: float, leak_ma: float, evidence: str, key_at: str, verdict: str, catalogue: Catalogue, told: Told
) -> None:
    found = told("buffer-lasts-parked", {"loads": []}, key_at, parked(catalogue, capacity_ah, leak_ma, evidence))
    assert verdict_of(found) == verdict


def test_a_battery_that_is_flat_in_two_days_is_told_in_hours(catalogue: Catalogue, told: Told) -> None:
    answer = told("buffer-lasts-parked", {"loads": []}, SLEEPING, parked(catalogue, 22.0, 400.0))[0]
    assert (answer.offered, answer.because[:6]) == ("27 h", "400 mA")
    unknown = told("buffer-lasts-parked", {"loads": []}, SLEEPING, parked(catalogue, 22.0, float("nan")))[0]
    assert unknown.datum == "the converter's output leak"


def test_loads_that_stay_on_and_the_leak_add_up(catalogue: Catalogue, told: Told) -> None:
    """Worked: 50 mW at 13.5 V are 3.70 mA; with 3.30 mA of leak half of 9 Ah lasts 4.5 / 0.007 / 24 = 26.8 days."""
    alarm = {"name": "alarm", "kind": "electronics", "power": "0.05 W", "on": ["always"]}
    answer = told("buffer-lasts-parked", {"loads": [alarm]}, SLEEPING, parked(catalogue, 9.0, 3.3))[0]
    assert (answer.verdict.word, answer.offered) == ("tight", "27 days")


# Worked: 8 A of lamps for 10 min x 1.5 = 8 x 10 / 60 x 1.5 = 2.0 Ah; the horn does not burn by night.
LAMPS = [
    {"name": "headlamp", "kind": "electronics", "current": "6 A", "on": ["night"]},
    {"name": "tail lamp", "kind": "LED", "current": "0.5 A", "on": ["riding"]},
    {"name": "stop lamp", "kind": "LED", "current": "1.5 A", "on": ["brake"]},
    {"name": "horn", "kind": "motor", "current": "3 A", "on": ["horn"]},
]


@pytest.mark.parametrize(
    ("wish", "verdict", "offered"), [(None, "can't tell", "not said"), (False, "tight", "none"), (True, "pass", "yes")]
)
def test_the_builder_says_whether_the_lamps_outlive_a_trip(
    wish: bool | None, verdict: str, offered: str, told: Told
) -> None:
    edits = {"loads": LAMPS, "donor.items": [], "wishes.buffer_battery": wish}
    answer = told("lights-survive-a-trip", edits)[0]
    assert (answer.verdict.word, answer.offered) == (verdict, offered)
    if not wish:
        assert "2 Ah" in answer.needed
        assert answer.because == "8 A for 10 min x 1.5; dark after a trip: headlamp, tail lamp, stop lamp"
    # whoever said false is not told to say it
    assert answer.cure == ("a buffer battery of 2 Ah: wishes.buffer_battery = true" if wish is False else "")
    assert (answer.datum == "whether the lamps must outlive a trip: wishes.buffer_battery") == (wish is None)


@pytest.mark.parametrize(
    ("buffer", "meter", "verdict"),
    [
        (True, None, "pass"),  # unsaid, it is bought with the buffer battery
        (True, True, "pass"),
        (True, False, "tight"),  # the builder refuses it
        (False, None, "not asked"),
        (None, None, "not asked"),
    ],
)
def test_a_dead_converter_is_noticed(buffer: bool | None, meter: bool | None, verdict: str, told: Told) -> None:
    """Common practice: a buffer battery carries on for days, and nobody sees that nothing charges it."""
    edits = {"wishes.buffer_battery": buffer, "wishes.rail_meter": meter}
    assert verdict_of(told("dead-converter-is-noticed", edits)) == verdict


# 20 % of 42 Ah are 8.4 Ah; over 5 mA of battery management and 6 mA of converter they last 31.8 days; with a pilot
# lamp of 5 mA that no contactor darkens it is 8.4 / 0.016 / 24 = 21.9 days.
@pytest.mark.parametrize(("contactor", "days"), [(True, "32 days"), (False, "22 days")])
def test_a_pilot_lamp_that_no_contactor_darkens_draws_while_parked(
    contactor: bool, days: str, catalogue: Catalogue, told: Told
) -> None:
    parts = {
        "converter": part(catalogue, "converter", quiescent_ma=6.0),
        "pilot lamp": part(catalogue, "pilot_lamp", current_ma=5.0),
    }
    edits = {"wishes.pilot_lamp": True, "wishes.contactor": contactor, "pack.capacity": "42 Ah"}
    assert told("parked-pack-lasts", edits, TWELVE, parts)[0].offered == days


# Worked: 13 cells x 4.20 V = 54.6 V, all of it on 12 V parts that bear 24 V (common practice); 5 x 4.20 V = 21.0 V.
# Trade: parts sold as isolated were measured to have both minus leads joined; a seller's word does not settle it.
@pytest.mark.parametrize(
    ("isolated", "evidence", "clamp", "series", "verdict", "offered"),
    [
        ("no", "data sheet", False, 13, "fail", "54.6 V"),
        ("no", "data sheet", True, 13, "pass", "a clamp holds them off"),
        ("", "data sheet", False, 13, "can't tell", "54.6 V"),
        ("yes", "data sheet", False, 13, "not asked", ""),
        ("yes", "measured", False, 13, "not asked", ""),
        ("yes", "seller's word", False, 13, "tight", "54.6 V"),
        ("yes", "seller's word", True, 13, "pass", "a clamp holds them off"),
        ("no", "data sheet", False, 5, "not asked", ""),  # less than 24 V harms nothing
    ],
)
def test_a_shorted_converter_is_clamped(
    isolated: str, evidence: str, clamp: bool, series: int, verdict: str, offered: str, catalogue: Catalogue, told: Told
) -> None:
    parts = {"converter": part(catalogue, "converter", isolated=isolated, evidence=evidence)}
    if clamp:
        parts["rail clamp"] = part(catalogue, "clamp")
    edits = {"pack.series": series, "pack.bms.low_cut": None, "controller.regen": None}
    answers = told("shorted-converter-is-clamped", edits, TWELVE, parts)
    assert (verdict_of(answers), answers[0].offered if answers else "") == (verdict, offered)


@pytest.mark.parametrize(("evidence", "stands"), [("seller's word", True), ("data sheet", False)])
def test_a_sellers_word_spares_no_clamp(
    evidence: str, stands: bool, catalogue: Catalogue, edited: Callable[..., object]
) -> None:
    idle = may_be_needless(lay_out(edited("street-72"), catalogue.margins, TWELVE))
    converter = part(catalogue, "converter", isolated="yes", evidence=evidence)
    contactor = part(catalogue, "contactor", suppressed="yes", evidence=evidence)
    assert idle["rail clamp"].of(converter) == idle["contactor clamp"].of(contactor) == [not stands]


def test_a_converter_isolated_by_the_sellers_word_gets_its_clamp(converted: Callable[..., object]) -> None:
    assert "rail clamp" in converted("street-72", {"pins.converter": "CV-0903"}).filled
