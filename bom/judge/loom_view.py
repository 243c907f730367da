"""What a loom rule sees of a finished build, and how it answers."""

from collections.abc import Mapping
from dataclasses import dataclass

from bom.duties.circuits import Facts
from bom.judge.verdict import Verdict
from bom.loom.model import Loom
from bom.parts import Parts
from bom.span import Span
from bom.trace import Fact, Origin


@dataclass(frozen=True)
class LoomView:
    """The loom with the parts that stand in it."""

    loom: Loom
    facts: Facts
    parts: Mapping[str, Parts]


@dataclass(frozen=True)
class LoomAnswer:
    """One answer about the whole build, in printed words.

    offers, needs  the figures (or words) behind what is printed, each with where it comes from; `why` prints them
    """

    subject: str
    verdict: Verdict
    what: str
    offered: str
    needed: str
    because: str
    datum: str = ""
    offers: Span | Fact | None = None
    needs: Span | Fact | None = None


def said(text: str, key: str) -> Fact:
    """Give a word that the job says under a key."""
    return Fact(text, text, Origin("job", key))
