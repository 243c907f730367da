"""What a rule says of itself: its harm, its answers and where it is asked."""

import re

import pytest

from bom.judge.harm import BY_WORD, TRADE_TAGS, Harm
from bom.judge.rule import LoomRule, Rule, rule_of, rules
from bom.judge.verdict import Verdict

WORDS = {
    "Asks": "it holds.",
    "Why": "else it burns.",
    "Harm": "fire.",
    "Says": "fail, can't tell.",
    "Cure": "a stronger one.",
    "Ignores": "nothing.",
    "Source": "common practice, no source.",
}
SHAPE = LoomRule(lambda view: [])


def made(**other: str) -> Rule:
    sections = {**WORDS, **other}
    text = "It must hold.\n\n" + "".join(f"{head}: {words}\n" for head, words in sections.items() if words)
    return rule_of("it-holds", text, SHAPE)


def test_the_worst_harm_comes_first() -> None:
    """Trade practice: fire before a live frame, that before a bike that will not stop; the second parcel comes last."""
    worst_first = ["fire", "shock", "runaway", "dark", "damage", "stranded", "order"]
    assert [harm.word for harm in sorted(Harm)] == worst_first == list(BY_WORD)
    assert all(re.fullmatch(r"[A-Z].*\.", harm.meaning) for harm in Harm)


def test_the_trade_tags_name_every_answer_that_is_told() -> None:
    """Of the answers only pass and not asked have no tag: nobody is told of them."""
    told = {verdict.word for verdict in Verdict if verdict > Verdict.PASS}
    assert set(TRADE_TAGS.values()) == told | {"note"}


def test_harm_and_answers_are_read() -> None:
    rule = made(Says="fail, can't tell, tight.")
    assert rule.harm is Harm.FIRE
    assert rule.says == (Verdict.FAIL, Verdict.CANT_TELL, Verdict.TIGHT)
    assert rule.severity == "fail, can't tell, tight"


@pytest.mark.parametrize("head", list(WORDS))
def test_a_missing_section_is_named(head: str) -> None:
    with pytest.raises(ValueError, match=f"rule it-holds: its docstring has no section {head}"):
        made(**{head: ""})


@pytest.mark.parametrize(
    ("head", "words", "told"),
    [
        ("Harm", "smoke.", 'Harm is "smoke", not one of fire, shock'),
        ("Says", "fail, maybe.", 'Says names "maybe", not one of fail'),
        ("Says", "tight, fail.", "the worst first"),
        ("Says", "fail, fail.", "each answer once"),
        ("Says", "pass.", 'Says names "pass"'),
    ],
)
def test_words_outside_the_closed_lists_are_named(head: str, words: str, told: str) -> None:
    with pytest.raises(ValueError, match=told):
        made(**{head: words})


def test_places_come_from_the_shape() -> None:
    by_name = {rule.name: rule for rule in rules()}
    assert by_name["stub-has-the-copper"].places == ("cable",)
    assert by_name["live-half-is-covered"].places == ("power connector", "charge port")
    assert by_name["fuse-guards-its-wire"].places == ("a fuse guards a wire",)
    assert by_name["states-stand"].places == ("whole bike",)
