"""One gate of the ten that a donor goes through, and what the findings say of it."""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from bom.judge.verdict import Verdict

if TYPE_CHECKING:
    from bom.build import Build

NOTHING = "nothing"


@dataclass(frozen=True)
class Gate:
    """One gate, asked of this bike.

    name      what it is about
    question  in one line
    answer    with the numbers or words that decide
    follows   what is to be done, or "nothing"
    verdict   pass: nothing follows; tight: something is to be done; can't tell: something is to be found out; fail
    """

    name: str
    question: str
    answer: str
    follows: str
    verdict: Verdict


def found(build: "Build", rule: str, subjects: Iterable[str] = ()) -> Verdict:
    """Give the worst that a rule found, of some subjects or of all: the gates judge nothing anew."""
    some = set(subjects)
    told = [f.verdict for f in build.findings if f.rule == rule and (not some or f.subject in some)]
    return max(told, default=Verdict.PASS)


def listed(names: Iterable[str]) -> str:
    """Join names as a sentence does."""
    every = list(names)
    return f"{', '.join(every[:-1])} and {every[-1]}" if len(every) > 1 else "".join(every)
