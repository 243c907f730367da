"""Only figures that change a verdict are asked: of suppliers before ordering, and on the bench when a part arrives."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from math import nan

import numpy as np
import pytest

from bom.build import Build
from bom.check.question import Question
from bom.check.questions import questions
from bom.convert import convert
from bom.judge.verdict import Verdict
from bom.memory import Memory
from bom.papers.ask_rows import goods_rows, supplier_lines
from bom.parts import Parts
from bom.read.catalogue import Catalogue
from bom.read.job import JobFile

Cells = Mapping[str, float | str]
Asked = tuple[Build, tuple[Question, ...]]
Asks = Callable[..., Asked]
CONVERTER = "CV-0461"
FLASHER = "FL-0202"  # electronic, either earth, 0.1 to 150 W, all by its data sheet


def changed(parts: Parts, some: Mapping[str, Cells]) -> Parts:
    """Write other cells into the rows of some parts."""
    numbers = {name: np.array(column) for name, column in parts.numbers.items()}
    words = {name: list(column) for name, column in parts.words.items()}
    for part_id, cells in some.items():
        for name, value in cells.items():
            (numbers if name in numbers else words)[name][parts.index(part_id)] = value  # type: ignore[index,assignment]
    return replace(parts, numbers=numbers, words={name: tuple(column) for name, column in words.items()})


@pytest.fixture(scope="session")
def asks(catalogue: Catalogue, edited: Callable[..., JobFile]) -> Asks:
    """Convert a starter with parts pinned and cells of the catalogue changed, and ask."""

    def make(
        family: str, some: Mapping[str, Cells], pins: Mapping[str, str], starter: str = "street-72", **edits: object
    ) -> Asked:
        shop = replace(catalogue, families={**catalogue.families, family: changed(catalogue.families[family], some)})
        job = edited(starter, {"pins": dict(pins), **edits})
        build = convert(job, shop, shop.margins, "12 V", lambda text: None, Memory())
        return build, questions(build, shop)

    return make


def of(asked: Asked, part_id: str) -> dict[str, Question]:
    return {question.column: question for question in asked[1] if question.part_id == part_id}


def worst_at(build: Build, place: str) -> Verdict:
    return max(finding.verdict for finding in build.findings if place in finding.subject.split(" / "))


def test_a_blank_that_decides_is_asked(asks: Asks) -> None:
    """Worked: two lamps of 21 W a side are 42 W; the most watts of the flasher are blank, all else holds."""
    found = of(asks("flasher", {FLASHER: {"load_max_w": nan}}, {"flasher": FLASHER}), FLASHER)
    assert list(found) == ["load_max_w"]
    asked = found["load_max_w"]
    assert asked.need == "most lamp watts at least 42 W"
    assert (asked.now, asked.places, asked.proves) == ("can't tell", ("flasher",), "settles")
    assert "42 W" in asked.passes
    assert "42 W" in asked.ask


@pytest.mark.parametrize(("watts", "worst"), [(42.0, Verdict.PASS), (41.9, Verdict.FAIL)])
def test_the_figure_does_what_the_question_says(asks: Asks, watts: float, worst: Verdict) -> None:
    """Worked: 42 W meet 42 W, and the place stands as the question foretold; 41.9 W do not."""
    _, blank = asks("flasher", {FLASHER: {"load_max_w": nan}}, {"flasher": FLASHER})
    build, _ = asks("flasher", {FLASHER: {"load_max_w": watts}}, {"flasher": FLASHER})
    assert worst_at(build, "flasher") == worst
    if worst != Verdict.FAIL:
        assert [question.then for question in blank] == [worst.word]


def test_a_question_is_idle_where_another_answer_fails(asks: Asks) -> None:
    """Worked: the loom leads two leads to a flasher; with three pins it fails, whatever watts it takes."""
    asked = asks("flasher", {FLASHER: {"load_max_w": nan, "pins": 3.0}}, {"flasher": FLASHER})
    assert worst_at(asked[0], "flasher") == Verdict.FAIL
    assert not of(asked, FLASHER)


def test_two_blanks_that_both_decide_are_both_asked(asks: Asks) -> None:
    """Worked: either of them alone leaves the place untold; so asking neither would be silent."""
    asked = asks("flasher", {FLASHER: {"load_max_w": nan, "polarity": ""}}, {"flasher": FLASHER})
    assert set(of(asked, FLASHER)) == {"load_max_w", "polarity"}


def test_a_blank_that_no_answer_leans_on_is_not_asked(asks: Asks) -> None:
    """Worked: no rule of this bike reads what a charger draws from the pack while the mains are off."""
    build, _ = asks("charger", {}, {})
    charger = build.filled["charger"].part_id
    asked = asks("charger", {charger: {"standby_ma": nan}}, {"charger": charger})
    assert asked[1] == ()


def test_the_seller_s_word_is_asked_for_its_sheet(asks: Asks) -> None:
    """Worked: what only the seller says is tight at best; with a data sheet nothing else at the meter is."""
    build, _ = asks("meter", {}, {})
    meter = build.filled["meter"].part_id
    asked = asks("meter", {meter: {"exceptions": "range_max_v=seller's word"}}, {"meter": meter})
    found = of(asked, meter)
    assert list(found) == ["range_max_v"]
    assert (found["range_max_v"].now, found["range_max_v"].then) == ("tight", "pass")
    assert not found["range_max_v"].blank
    assert "known here by word alone" in found["range_max_v"].ask


def test_the_seller_s_word_is_idle_where_the_place_stays_tight(asks: Asks) -> None:
    """Worked: a converter that is not potted stays tight; a sheet of its amps would not change its worst verdict."""
    spoilt = {CONVERTER: {"potted": "no", "exceptions": "output_a=seller's word"}}
    asked = asks("converter", spoilt, {"converter": CONVERTER})
    assert worst_at(asked[0], "converter") == Verdict.TIGHT
    assert not of(asked, CONVERTER)


def test_a_figure_only_the_whole_bike_wants_is_asked(asks: Asks) -> None:
    """Worked: days parked are a share of the pack over all key-off amps; without the converter's there is no sum."""
    build, _ = asks("converter", {}, {})
    part_id = build.filled["converter"].part_id
    found = of(asks("converter", {part_id: {"quiescent_ma": nan}}, {"converter": part_id}), part_id)
    assert list(found) == ["quiescent_ma"]
    assert "days" in found["quiescent_ma"].need


def test_breaking_has_no_bench(asks: Asks) -> None:
    """Trade: nobody opens a contactor at pack volts on a bench to see; the maker's table is the only way."""
    found = of(asks("contactor", {}, {"contactor": "CT-0901"}), "CT-0901")
    assert found["breaking_points"].proves == "nothing"
    assert "data sheet" in found["breaking_points"].passes


def test_a_few_candidates_left_out_of_an_open_place_are_asked(asks: Asks, catalogue: Catalogue) -> None:
    """Worked: no flasher says how many watts it takes, so the place stays open; three at most are asked."""
    ids = catalogue.families["flasher"].ids
    job = {"wishes.tight": False, "donor.items.flasher can.keep": "no"}
    asked = asks("flasher", {part_id: {"load_max_w": nan} for part_id in ids}, {}, **job)
    assert "flasher" in [hole.place.name for hole in asked[0].holes]
    left = [question for question in asked[1] if question.stands == "left out"]
    assert 0 < len({question.part_id for question in left}) <= 3
    assert all("load_max_w" in of(asked, question.part_id) for question in left)
    assert not goods_rows(left)  # what is not bought does not arrive


def test_a_donor_contact_is_tried_on_the_bench(asks: Asks) -> None:
    """Trade: what a donor contact opened on 12 V with its own load is a figure, and needs no data sheet."""
    _, found = asks("flasher", {}, {}, starter="moped-48")
    mine = {question.column: question for question in found if question.part_id == "donor: horn button"}
    assert mine["breaking_points"].proves == "settles"
    assert not mine["breaking_points"].of_supplier


def test_what_is_known_by_word_alone_is_one_line(asks: Asks) -> None:
    """A supplier is asked for one data sheet, not for it once a figure; blanks are asked one by one."""
    _, found = asks("contactor", {}, {"contactor": "CT-0901"})
    lines = supplier_lines("CT-0901", found)
    assert sum("data sheet" in line for line in lines) == 1
    assert len(lines) == 1 + sum(question.blank for question in found)


@pytest.mark.parametrize("starter", ["street-72", "moped-48", "frame-return-105"])
def test_a_bike_chosen_by_the_rules_asks_nothing_of_suppliers(asks: Asks, starter: str) -> None:
    """Parts are chosen from those that pass: of these no figure is wanting."""
    _, found = asks("flasher", {}, {}, starter=starter)
    assert not [question for question in found if question.of_supplier]
