"""What a loom rule sees of a finished build, and how it answers."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

from bom.duties.circuits import Facts
from bom.duties.model import Duty
from bom.judge.verdict import Verdict
from bom.loom.model import Loom
from bom.memory import Memory
from bom.parts import Parts
from bom.span import Span
from bom.trace import Fact, Origin

if TYPE_CHECKING:
    from bom.circuit.walks import Walks


@dataclass(frozen=True)
class LoomView:
    """The loom with the parts that stand in it, and what was solved and walked of it.

    memory  what this run has worked out already
    """

    loom: Loom
    facts: Facts
    parts: Mapping[str, Parts]
    duties: Mapping[str, Duty]
    memory: Memory = field(default_factory=Memory, compare=False, repr=False)

    @cached_property
    def walks(self) -> "Walks":
        """Give the solved states and the walks; the solver is loaded when they are first asked for."""
        from bom.circuit.walks import Walks

        return Walks.of(self)


SOLVED_BY = "nodal analysis of the loom with the parts that stand in it"


@dataclass(frozen=True)
class LoomAnswer:
    """One answer about the whole build, in printed words.

    offers, needs  the figures (or words) behind what is printed, each with where it comes from; `why` prints them
    at_fault       places whose part may be the cause, the likeliest first; none where it is no part's doing
    cure           what helps, where it is not what the rule says in general
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
    at_fault: tuple[str, ...] = ()
    cure: str = ""


def solved(value: float, dimension: str, what: str, state: str) -> Span:
    """Give a figure that the circuit was solved for, in a state or with a short."""
    return Span.of(value, dimension, what, Origin("solved state", state, "", SOLVED_BY))


def said(text: str, key: str) -> Fact:
    """Give a word that the job says under a key."""
    return Fact(text, text, Origin("job", key))
