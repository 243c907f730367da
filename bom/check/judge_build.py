"""Judging a finished build: every part, every pair, and the whole."""

from collections.abc import Callable, Hashable, Mapping
from dataclasses import replace
from functools import partial

from bom.duties.model import Duty
from bom.judge.ask import Answer, judge_pairs, judge_parts
from bom.judge.finding import Finding, finding_of, loom_finding
from bom.judge.loom_view import LoomView
from bom.judge.rule import LoomRule, rules
from bom.memory import Memory
from bom.parts import Parts


def judge_build(view: LoomView, duties: Mapping[str, Duty]) -> tuple[Finding, ...]:
    """Ask every rule about the build; worst answers first, then by subject."""
    margins = view.facts.margins
    found: list[Finding] = []
    for name, part in view.parts.items():
        found += judge_one(name, part, duties[name], view)
    for link in view.loom.links:
        if link.first in view.parts and link.second in view.parts:
            first, second = view.parts[link.first], view.parts[link.second]
            asked = (link.kind, first, second, duties[link.first], duties[link.second], margins)
            subject = f"{link.first} / {link.second}"
            found += _findings(subject, asked, partial(judge_pairs, *asked), (first, second), view.memory)
    for rule in rules():
        if isinstance(rule.shape, LoomRule):
            found += [loom_finding(rule, answer) for answer in rule.shape.judge(view)]
    return tuple(sorted(found, key=lambda finding: (-finding.verdict, finding.subject, finding.rule, finding.what)))


def judge_one(name: str, part: Parts, duty: Duty, view: LoomView) -> list[Finding]:
    """Ask every part rule about the one part of a place."""
    asked = (part, duty, view.facts.margins)
    return _findings(name, asked, partial(judge_parts, *asked), (part,), view.memory)


def _findings(
    subject: str,
    asked: Hashable,
    judge: Callable[[], tuple[Answer, ...]],
    parts: tuple[Parts, ...],
    memory: Memory,
) -> list[Finding]:
    """Put answers into words; those of places that ask the same of the same parts differ in the subject alone."""

    def in_words() -> list[Finding]:
        return [finding_of(answer, "", parts) for answer in judge()]

    def named() -> list[Finding]:
        return [replace(finding, subject=subject) for finding in memory.once("in words", asked, in_words)]

    return memory.once("finding", (subject, asked), named)
