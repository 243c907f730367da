"""Rules: what one file of bom/rules holds, and how all of them are found."""

import pkgutil
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import import_module

from bom.duties.model import Duty
from bom.judge.compare import Judgement
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.parts import Parts
from bom.read.margins import Margins

PartJudge = Callable[[Parts, Duty, Margins], Sequence[Judgement]]
PairJudge = Callable[[Parts, Parts, Duty, Duty, Margins], Sequence[Judgement]]
LoomJudge = Callable[[LoomView], Sequence[LoomAnswer]]

HEADS = ("Asks", "Why", "Cure", "Ignores", "Source")
ASIDES = ("Harm", "Says")  # headed too, and said by some rules


@dataclass(frozen=True)
class PartRule:
    """Compares the ratings of the parts of some families with the duty of their place.

    only_with  duties without which the rule has nothing to ask; any other missing duty is a fault of the
               program, so that a rule cannot fall silent by mistake
    """

    families: tuple[str, ...]
    judge: PartJudge
    only_with: tuple[str, ...] = ()


@dataclass(frozen=True)
class PairRule:
    """Compares two parts of which one bears on the other; answers a grid, first parts by second parts.

    only_with  duties of the second place without which the rule has nothing to ask
    """

    link: str
    judge: PairJudge
    only_with: tuple[str, ...] = ()


@dataclass(frozen=True)
class LoomRule:
    """Looks at the whole finished build."""

    judge: LoomJudge


@dataclass(frozen=True)
class Rule:
    """A rule with its words.

    name     file name with hyphens
    title    the rule in one sentence
    asks, why, cure, ignores, source  the sections of the file's docstring
    shape    PartRule, PairRule or LoomRule
    """

    name: str
    title: str
    asks: str
    why: str
    cure: str
    ignores: str
    source: str
    shape: PartRule | PairRule | LoomRule


@cache
def rules() -> tuple[Rule, ...]:
    """Find every rule, in the order of their names."""
    import bom.rules

    names = sorted(module.name for module in pkgutil.iter_modules(bom.rules.__path__))
    return tuple(_read(name) for name in names)


@cache
def part_rules(family: str) -> tuple[tuple[Rule, PartRule], ...]:
    """Give the part rules that judge a family."""
    return tuple(
        (rule, rule.shape) for rule in rules() if isinstance(rule.shape, PartRule) and family in rule.shape.families
    )


@cache
def pair_rules(link: str) -> tuple[tuple[Rule, PairRule], ...]:
    """Give the pair rules that judge a kind of link."""
    return tuple((rule, rule.shape) for rule in rules() if isinstance(rule.shape, PairRule) and rule.shape.link == link)


def _read(module_name: str) -> Rule:
    module = import_module(f"bom.rules.{module_name}")
    title, sections = read_words(module.__doc__ or "")
    return Rule(
        module_name.replace("_", "-"),
        title,
        sections["Asks"],
        sections["Why"],
        sections["Cure"],
        sections["Ignores"],
        sections["Source"],
        module.RULE,
    )


def read_words(text: str) -> tuple[str, dict[str, str]]:
    """Split a rule's docstring into its title and its headed sections."""
    lines = text.strip().splitlines()
    sections: dict[str, str] = dict.fromkeys((*HEADS, *ASIDES), "")
    head = ""
    for line in lines[1:]:
        first, colon, rest = line.partition(":")
        if colon and first in sections:
            head, sections[first] = first, rest.strip()
        elif head and line.strip():
            sections[head] += " " + line.strip()
    return lines[0], sections
