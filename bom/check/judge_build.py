"""Judging a finished build: every part, every pair, and the whole."""

from collections.abc import Mapping

from bom.duties.model import Duty
from bom.judge.ask import judge_pairs, judge_parts
from bom.judge.finding import Finding, finding_of, loom_finding
from bom.judge.loom_view import LoomView
from bom.judge.rule import LoomRule, rules
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
            answers = judge_pairs(link.kind, first, second, duties[link.first], duties[link.second], margins)
            subject = f"{link.first} / {link.second}"
            found += [finding_of(answer, subject, (first, second)) for answer in answers]
    for rule in rules():
        if isinstance(rule.shape, LoomRule):
            found += [loom_finding(rule, answer) for answer in rule.shape.judge(view)]
    return tuple(sorted(found, key=lambda finding: (-finding.verdict, finding.subject, finding.rule, finding.what)))


def judge_one(name: str, part: Parts, duty: Duty, view: LoomView) -> list[Finding]:
    """Ask every part rule about the one part of a place."""
    return [finding_of(answer, name, (part,)) for answer in judge_parts(part, duty, view.facts.margins)]
