"""Every rule explains itself with an example that it works itself: what is bad there does not pass, what is cured does.

The figures of the parts' examples are those of the case tables, which are held to hand-worked answers beside.
"""

import re
from collections.abc import Callable, Iterable
from pathlib import Path

import pytest

import bom.rules
from bom.build import Build
from bom.check.case_tables import FOLDER, table
from bom.check.example_builds import SIDES, of_the_bike
from bom.check.examples import of_parts
from bom.check.explain import explained, harm_meant, listed, meant, not_meant
from bom.judge.finding import Finding
from bom.judge.harm import Harm
from bom.judge.rule import LoomRule, Rule, rules
from bom.judge.verdict import Verdict
from bom.memory import Memory
from bom.read.catalogue import Catalogue
from bom.read.margins import Margins

WIDTH = 100
BY_NAME = {rule.name: rule for rule in rules()}
OF_PARTS = [rule for rule in rules() if not isinstance(rule.shape, LoomRule)]
OF_BIKES = [rule for rule in rules() if isinstance(rule.shape, LoomRule)]
STARTERS = ("street-72", "moped-48", "frame-return-105", "positive-earth-60")


def named(rule: Rule) -> str:
    return rule.name


@pytest.fixture(scope="module")
def memory() -> Memory:
    return Memory()


def test_every_rule_has_a_table_and_every_table_a_rule() -> None:
    assert {path.stem for path in FOLDER.glob("*.toml")} == set(BY_NAME)


@pytest.mark.parametrize("rule", OF_PARTS, ids=named)
def test_an_example_of_parts_fails_and_is_cured(rule: Rule, margins: Margins) -> None:
    assert not isinstance(rule.shape, LoomRule)
    bad, cured = of_parts(rule, rule.shape, margins)
    assert bad.verdict == rule.says[0]
    assert cured.verdict == Verdict.PASS
    parts = [[line for line in side.setting if not line.startswith("its place")] for side in (bad, cured)]
    assert parts[0] != parts[1], "the cure is another part, not another place"


@pytest.mark.parametrize("rule", OF_BIKES, ids=named)
def test_an_example_of_a_bike_is_bad_and_is_cured(rule: Rule, catalogue: Catalogue, memory: Memory) -> None:
    assert isinstance(rule.shape, LoomRule)
    assert [table(rule.name)[side]["title"] for side in SIDES]
    bad, cured = of_the_bike(rule, rule.shape, catalogue, memory)
    assert bad.verdict in rule.says
    assert Verdict.PASS <= cured.verdict < bad.verdict
    assert {entry.finding.verdict for entry in (*bad.told, *cured.told)} <= {Verdict.PASS, *rule.says}


@pytest.mark.parametrize("starter", STARTERS)
def test_starters_get_only_answers_that_are_declared(
    starter: str, converted: Callable[..., Build], undeclared: Callable[[Iterable[Finding]], list[str]]
) -> None:
    assert undeclared(converted(starter).findings) == []


@pytest.mark.parametrize("rule", OF_BIKES, ids=named)
def test_what_a_rule_about_the_bike_declares_it_can_say(rule: Rule) -> None:
    """Each declared answer stands in the rule's own code."""
    code = (Path(bom.rules.__path__[0]) / f"{rule.name.replace('-', '_')}.py").read_text(encoding="utf-8")
    assert {verdict.name for verdict in rule.says} <= set(re.findall(r"Verdict\.([A-Z_]+)", code))


def test_the_list_goes_from_the_worst_harm_to_the_least() -> None:
    told = listed()
    heads = [line.split()[0] for line in told.splitlines() if line[:1].isupper()]
    assert heads == [*(harm.word.upper() for harm in sorted(Harm)), "Explain"]
    assert all(f"  {rule.name} ({rule.severity}): " in told for rule in rules())
    assert max(map(len, told.splitlines())) <= WIDTH
    blocks = re.split(r"\n(?=  \S|\S|\n)", told)
    assert all(block.count("\n") <= 1 for block in blocks), "one or two lines a rule"


@pytest.mark.parametrize("rule", OF_PARTS, ids=named)
def test_an_explanation_keeps_the_width(rule: Rule) -> None:
    told = explained(rule)
    assert max(map(len, told.splitlines())) <= WIDTH
    assert f"\n  {rule.says[0].word.upper()}  " in told
    assert "\n  PASS  " in told


def test_an_explanation_shows_the_figures() -> None:
    """Worked: 20 NMC cells of 4.20 V are full at 84.0 V; a strip fuse for 80 V does not hold that."""
    told = explained(BY_NAME["holds-dc-volts"])
    assert "DC volts: 80.0 V offered, at least 84.0 V needed" in told
    assert "main fuse: DC volts 80 V" in told


def test_an_explanation_shows_how_a_figure_came_about() -> None:
    """Worked: 80 % of 125 A are 100 A."""
    assert "100 A = k × I, k = 0.8, I = 125 A" in explained(BY_NAME["connector-carries"])


def test_an_explanation_of_the_bike_works_it() -> None:
    """Trade: 200 mm without a fuse at most."""
    told = explained(BY_NAME["pack-lead-is-short"])
    assert "FAIL  pack lead: unfused length: 350 mm offered, at most 200 mm needed" in told
    assert "PASS  pack lead: unfused length: 150 mm offered" in told
    assert 'runs.pack_to_fuse = "350 mm"\n' in told
    assert 'runs.pack_to_fuse = "150 mm", as the starter has it\n' in told


@pytest.mark.parametrize(
    ("text", "name"),
    [
        ("holds-dc-volts", "holds-dc-volts"),
        ("Holds DC volts", "holds-dc-volts"),
        ("fuse-breaks-the-falt", "fuse-breaks-the-fault"),
        ("strings", "strings-are-fused"),
        ("lug-fits-the", None),
        ("melted butter", None),
        ("", None),
    ],
)
def test_a_rule_is_meant(text: str, name: str | None) -> None:
    rule = meant(text)
    assert (rule.name if rule else None) == name


def test_a_name_that_means_none_or_several_is_told() -> None:
    assert 'No rule is named by "hold-voltage". The nearest:\n' in not_meant("hold-voltage")
    told = not_meant("lug-fits-the").splitlines()
    assert told == [
        '"lug-fits-the" names 4 rules. Say which:',
        "  lug-fits-the-stud",
        "  lug-fits-the-tail",
        "  lug-fits-the-terminal",
        "  lug-fits-the-wire",
    ]


def test_the_list_counts_each_harm_and_one_harm_is_listed_alone() -> None:
    of_fire = [rule.name for rule in rules() if rule.harm is Harm.FIRE]
    assert f"{len(of_fire)} fire, " in listed()
    assert harm_meant(" Fire") is Harm.FIRE
    assert harm_meant("strings") is None
    told = listed(Harm.FIRE)
    heads = [line.split()[0] for line in told.splitlines() if line[:1].isupper()]
    assert heads == ["FIRE", "Explain"]
    assert [name for name in BY_NAME if f"  {name} (" in told] == of_fire


def test_a_stepped_curve_says_so() -> None:
    """Worked: 20 A; full to 40 C, 0.75 at 60 C: at 50 C the sheet's next hotter point, 15 A, not 17.5 A between."""
    told = " ".join(explained(BY_NAME["converter-feeds-the-loads"]).split())
    assert "I_label = 20 A (the curve's next hotter point counts)" in told


def test_the_cure_of_strings_is_a_fuse_each() -> None:
    """Common practice: two strings in parallel, two fuses."""
    told = explained(BY_NAME["strings-are-fused"])
    assert "PASS  pack: fuses: 2 offered, at least 2 needed" in told
