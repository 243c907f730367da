"""Rules: what one file of bom/rules holds, and how all of them are found."""

import pkgutil
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from importlib import import_module

from bom.duties.model import Duty
from bom.judge.compare import Judgement
from bom.judge.harm import BY_WORD, Harm
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.verdict import Verdict
from bom.loom.model import LINKS
from bom.parts import Parts
from bom.read.families import BY_NAME
from bom.read.margins import Margins

PartJudge = Callable[[Parts, Duty, Margins], Sequence[Judgement]]
PairJudge = Callable[[Parts, Parts, Duty, Duty, Margins], Sequence[Judgement]]
LoomJudge = Callable[[LoomView], Sequence[LoomAnswer]]

HEADS = ("Asks", "Why", "Harm", "Says", "Cure", "Ignores", "Source")
SAYS = {verdict.word: verdict for verdict in (Verdict.FAIL, Verdict.CANT_TELL, Verdict.TIGHT)}


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
    harm     what goes wrong where it fails
    says     the answers it can give beside pass, the worst first; hearsay makes any pass tight and is not counted here
    shape    PartRule, PairRule or LoomRule
    """

    name: str
    title: str
    asks: str
    why: str
    harm: Harm
    says: tuple[Verdict, ...]
    cure: str
    ignores: str
    source: str
    shape: PartRule | PairRule | LoomRule

    @property
    def severity(self) -> str:
        """Print the answers it can give beside pass."""
        return ", ".join(verdict.word for verdict in self.says)

    @property
    def places(self) -> tuple[str, ...]:
        """Say where it is asked: the parts it looks at, the kind of pair, or the whole bike."""
        if isinstance(self.shape, PartRule):
            return tuple(BY_NAME[family].title for family in self.shape.families)
        return (LINKS[self.shape.link],) if isinstance(self.shape, PairRule) else ("whole bike",)


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
    return rule_of(module_name.replace("_", "-"), module.__doc__ or "", module.RULE)


def rule_of(name: str, text: str, shape: PartRule | PairRule | LoomRule) -> Rule:
    """Make a rule of the words of its file; ValueError names what is missing of them, or not in a closed list."""
    title, sections = read_words(text)
    for head in HEADS:
        if not sections[head]:
            raise ValueError(f"rule {name}: its docstring has no section {head}")
    return Rule(
        name,
        title,
        sections["Asks"],
        sections["Why"],
        _harm(name, sections["Harm"]),
        _says(name, sections["Says"]),
        sections["Cure"],
        sections["Ignores"],
        sections["Source"],
        shape,
    )


def _harm(name: str, text: str) -> Harm:
    word = text.removesuffix(".")
    if word not in BY_WORD:
        raise ValueError(f'rule {name}: Harm is "{word}", not one of {", ".join(BY_WORD)}')
    return BY_WORD[word]


def _says(name: str, text: str) -> tuple[Verdict, ...]:
    words = [word.strip() for word in text.removesuffix(".").split(",")]
    for word in words:
        if word not in SAYS:
            raise ValueError(f'rule {name}: Says names "{word}", not one of {", ".join(SAYS)}')
    if words != [word for word in SAYS if word in words]:
        raise ValueError(f"rule {name}: Says names each answer once, the worst first: {', '.join(SAYS)}")
    return tuple(SAYS[word] for word in words)


def read_words(text: str) -> tuple[str, dict[str, str]]:
    """Split a rule's docstring into its title and its headed sections."""
    lines = text.strip().splitlines()
    sections: dict[str, str] = dict.fromkeys(HEADS, "")
    head = ""
    for line in lines[1:]:
        first, colon, rest = line.partition(":")
        if colon and first in HEADS:
            head, sections[first] = first, rest.strip()
        elif head and line.strip():
            sections[head] += " " + line.strip()
    return lines[0], sections
