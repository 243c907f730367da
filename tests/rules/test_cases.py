"""Every rule about parts and pairs against its table of cases in bom/rules/examples.

A table names the duty and one part (or a pair) that passes; each case changes what it names.
Kinds every table must hold: for numbers ample, exact (equality meets), short and blank; for words
right word, wrong word and blank word; for a size exact, over, short and blank.
"""

from collections.abc import Mapping
from typing import Any

import pytest

from bom.check.case_tables import table, worked
from bom.judge.rule import LoomRule, read_words, rules
from bom.judge.verdict import Verdict
from bom.read.margins import Margins

NEEDED = {
    "numbers": {"ample", "exact", "short", "blank"},
    "words": {"right word", "wrong word", "blank word"},
    "a size": {"exact", "over", "short", "blank"},
}
BY_RULE = {rule.name: rule for rule in rules()}
OF_PARTS = sorted(rule.name for rule in rules() if not isinstance(rule.shape, LoomRule))


def all_cases() -> list[object]:
    return [
        pytest.param(name, case, id=f"{name}: {case['name']}") for name in OF_PARTS for case in table(name)["cases"]
    ]


def answer(name: str, case: Mapping[str, Any], margins: Margins) -> Verdict:
    shape = BY_RULE[name].shape
    assert not isinstance(shape, LoomRule)
    return worked(shape, table(name), case, margins).verdict


@pytest.mark.parametrize(("name", "case"), all_cases())
def test_case(name: str, case: Mapping[str, Any], margins: Margins) -> None:
    assert answer(name, case, margins).word == case["verdict"]


@pytest.mark.parametrize("name", OF_PARTS)
def test_every_kind_of_case_is_there(name: str) -> None:
    asks = table(name)["asks"].split(" and ")
    needed = set().union(*(NEEDED[kind] for kind in asks if kind))
    assert needed, f"{name} has no table of cases"
    assert needed <= {case["kind"] for case in table(name)["cases"]}


@pytest.mark.parametrize("name", sorted(BY_RULE))
def test_rule_says_what_it_does(name: str) -> None:
    rule = BY_RULE[name]
    assert rule.title[0].isupper()
    assert rule.title.endswith(".")
    for text in (rule.asks, rule.why, rule.cure, rule.ignores, rule.source):
        assert text.strip().endswith("."), f"{name}: {text}"


def test_words_are_read_from_a_docstring() -> None:
    title, sections = read_words("A title.\n\nAsks:     one: two\n          and three.\nWhy:      because.\n")
    assert title == "A title."
    assert sections["Asks"] == "one: two and three."
    assert sections["Cure"] == ""


@pytest.mark.parametrize("name", OF_PARTS)
def test_declared_answers_are_those_of_the_cases(name: str) -> None:
    told = {case["verdict"] for case in table(name)["cases"]} - {"pass", "not asked"}
    assert told == {verdict.word for verdict in BY_RULE[name].says}
