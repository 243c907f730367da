"""Asking one finding again, alone, so that every figure in it tells where it comes from."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from bom.build import Build
from bom.duties.envelope import own_duty
from bom.judge.ask import Answer, judge_pairs, judge_parts
from bom.judge.compare import Judgement
from bom.judge.finding import Finding, finding_of, loom_finding
from bom.judge.loom_view import LoomAnswer
from bom.judge.rule import LoomRule, Rule, rules
from bom.parts import Parts
from bom.read.words import nearest_words
from bom.span import Span
from bom.trace import Fact, Origin


@dataclass(frozen=True)
class Account:
    """A finding with the figures it compares.

    offered, needed  each leads to where it comes from; None where the finding compares no figure
    wanted           the margin asked on top before a pass is clean
    """

    finding: Finding
    rule: Rule
    offered: Span | Fact | None
    needed: Span | Fact | None
    wanted: Span | None = None


def matching(build: Build, text: str) -> list[str]:
    """List the keys of the findings a text names: whole key, whole rule or place, part of either, some words of it."""
    wanted = " ".join(text.split()).casefold()
    readings: tuple[Callable[[Finding], bool], ...] = (
        lambda finding: wanted in (finding.key.casefold(), f"{finding.subject} ({finding.rule})".casefold()),
        lambda finding: wanted in (finding.rule.casefold(), finding.subject.casefold()),
        lambda finding: wanted in _name(finding),
        lambda finding: all(word in _name(finding) for word in wanted.split()),
    )
    for reading in readings if wanted else ():
        found = list(dict.fromkeys(finding.key for finding in build.findings if reading(finding)))
        if found:
            return found
    return []


def _name(finding: Finding) -> str:
    return f"{finding.key}: {finding.what}".casefold()


def nearest_keys(build: Build, text: str) -> list[str]:
    """List the keys most like a text that names none."""
    return nearest_words(text, list(dict.fromkeys(finding.key for finding in build.findings)))


def told_otherwise(build: Build, text: str) -> str:
    """Say what a text names that is no finding: an open place, a thing of the donor, a rule with nothing to ask."""
    wanted = " ".join(text.split()).casefold()
    for hole in build.holes:
        if wanted in (hole.place.name.casefold(), hole.title.casefold()):
            return f"{hole.title.capitalize()}, so that no rule is asked of it. {hole.sentence}"
    for item in build.donor:
        if wanted in (item.name.casefold(), f"{item.name} (donor's {item.kind})".casefold()):
            return f"The donor's {item.name}: {item.verdict}. {item.reason}"
    if wanted in {rule.name for rule in rules()}:
        return f"The rule {wanted} has nothing to ask of this bike."
    return ""


def accounts(build: Build, key: str) -> list[Account]:
    """Ask every comparison of one key again, worst first."""
    wanted = [finding for finding in build.findings if finding.key == key]
    rule = next(rule for rule in rules() if rule.name == wanted[0].rule)
    again = _asked(build, rule, wanted[0].subject)
    if sorted(account.finding.sentence for account in again) != sorted(finding.sentence for finding in wanted):
        raise RuntimeError(f"asked again, {key} is answered otherwise")
    return sorted(again, key=lambda account: (-account.finding.verdict, account.finding.what))


def all_accounts(build: Build) -> list[Account]:
    """Ask every finding of a build again."""
    return [account for key in dict.fromkeys(f.key for f in build.findings) for account in accounts(build, key)]


def _asked(build: Build, rule: Rule, subject: str) -> list[Account]:
    parts = {name: entry.part for name, entry in build.filled.items()}
    if isinstance(rule.shape, LoomRule):
        view = build.walks.bike.view  # as it was judged, with all that was solved of it
        return [_of_loom(rule, answer) for answer in rule.shape.judge(view) if answer.subject == subject]
    answers, involved = _answers(build, parts, subject)
    return [_account(answer, subject, involved) for answer in answers if answer.rule.name == rule.name]


def _answers(build: Build, parts: Mapping[str, Parts], subject: str) -> tuple[list[Answer], tuple[Parts, ...]]:
    """Judge one place, or one pair, on duties shared with no other place."""
    margins = build.facts.margins
    if subject in parts:
        duty = own_duty(build.loom, build.facts, subject)
        return list(judge_parts(parts[subject], duty, margins)), (parts[subject],)
    links = [link for link in build.loom.links if f"{link.first} / {link.second}" == subject]
    first, second = links[0].first, links[0].second
    duties = [own_duty(build.loom, build.facts, name) for name in (first, second)]
    pair = (parts[first], parts[second])
    return [answer for link in links for answer in judge_pairs(link.kind, *pair, *duties, margins)], pair


def _account(answer: Answer, subject: str, parts: tuple[Parts, ...]) -> Account:
    judgement = answer.judgement
    finding = finding_of(answer, subject, parts)
    if judgement.words[0]:
        offered: Span | Fact = Fact(finding.offered, finding.offered, _word_origin(judgement.trace))
        needed: Span | Fact = Fact(finding.needed, finding.needed, _word_origin(judgement.needed.trace))
    else:
        offered, needed = _offered(judgement), _needed(judgement)
    return Account(finding, answer.rule, offered, needed, judgement.wanted)


def _offered(judgement: Judgement) -> Span:
    value = _one(judgement.offered)
    return Span(value, value, judgement.needed.dimension, judgement.what, "", judgement.trace)


def _needed(judgement: Judgement) -> Span:
    asked = judgement.needed
    return Span(_one(asked.low), _one(asked.high), asked.dimension, asked.because, asked.datum, asked.trace)


def _one(values: Any) -> float:
    return float(np.ravel(np.asarray(values, dtype=float))[0])


def _word_origin(trace: Any) -> Origin:
    """Name where a word comes from; without a trace the rule itself sets it."""
    found = trace() if callable(trace) else trace
    return found if isinstance(found, Origin) else Origin("program", "set by the rule", note="set by the rule")


def _of_loom(rule: Rule, answer: LoomAnswer) -> Account:
    return Account(loom_finding(rule, answer), rule, answer.offers, answer.needs)
