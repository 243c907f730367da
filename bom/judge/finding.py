"""Findings: a rule's answer on one place, in words and numbers that a builder can act on."""

from dataclasses import dataclass

import numpy as np

from bom import units
from bom.dimensions import DIMENSIONS
from bom.judge.ask import Answer
from bom.judge.compare import HEARSAY, Judgement
from bom.judge.loom_view import LoomAnswer
from bom.judge.rule import Rule
from bom.judge.verdict import Verdict
from bom.parts import Parts
from bom.span import Span

MOST_DIGITS = 10


@dataclass(frozen=True)
class Finding:
    """One comparison on the finished build.

    rule      the rule's name
    subject   the place, or "first place / second place" of a pair
    part      part ids of the subject
    verdict   the answer
    what      the rating compared
    offered   as printed
    needed    as printed, with its sense ("at least 84.0 V")
    because   where the duty comes from
    evidence  how the rating is known
    datum     the fact that would settle a "can't tell"
    sentence  the whole in one line
    cure      what helps
    source    of the rule
    at_fault  of the whole build: places whose part may be the cause, the likeliest first
    """

    rule: str
    subject: str
    part: str
    verdict: Verdict
    what: str
    offered: str
    needed: str
    because: str
    evidence: str
    datum: str
    sentence: str
    cure: str
    source: str
    at_fault: tuple[str, ...] = ()

    @property
    def key(self) -> str:
        """Name the finding: rule and subject."""
        return f"{self.rule} @ {self.subject}"


def finding_of(answer: Answer, subject: str, parts: tuple[Parts, ...]) -> Finding:
    """Put one comparison on one part (or one pair) into words."""
    judgement, rule = answer.judgement, answer.rule
    verdict = Verdict(int(np.ravel(judgement.verdicts)[0]))
    needed = judgement.needed
    span = Span(_one(needed.low), _one(needed.high), needed.dimension, needed.because, needed.datum)
    if judgement.words[0]:
        offered = judgement.words[0][0] or "not known"
        wanted = judgement.words[1] or f"{judgement.sense} {_printed(span)}"
    else:
        offered, asked = _told_apart(_one(judgement.offered), span, verdict)
        wanted = f"{judgement.sense} {asked}"
    datum = _datum(verdict, judgement, span)
    known = judgement.evidence
    evidence = parts[0].word("evidence")[0] if known is None else str(np.ravel(known)[0])
    ids = " / ".join(part.ids[0] for part in parts)
    because = _because(span.because, judgement.margin, judgement.sense)
    told = f"; known only as: {evidence}" if verdict == Verdict.TIGHT and evidence in HEARSAY else ""
    sentence = f"{judgement.what}: {offered}{told}, needs {wanted} ({because})."
    return Finding(
        rule=rule.name,
        subject=subject,
        part=ids,
        verdict=verdict,
        what=judgement.what,
        offered=offered,
        needed=wanted,
        because=because,
        evidence=evidence,
        datum=datum,
        sentence=sentence,
        cure=rule.cure,
        source=rule.source,
    )


def loom_finding(rule: Rule, answer: LoomAnswer) -> Finding:
    """Put an answer about the whole build into words."""
    return Finding(
        rule=rule.name,
        subject=answer.subject,
        part="",
        verdict=answer.verdict,
        what=answer.what,
        offered=answer.offered,
        needed=answer.needed,
        because=answer.because,
        evidence="job",
        datum=answer.datum,
        sentence=f"{answer.what}: {answer.offered}, needs {answer.needed} ({answer.because}).",
        cure=answer.cure or rule.cure,
        source=rule.source,
        at_fault=answer.at_fault,
    )


def _one(values: object) -> float:
    return float(np.ravel(np.asarray(values, dtype=float))[0])


def _show(value: float, dimension: str) -> str:
    if dimension:
        return units.show(value, dimension)
    return "not known" if np.isnan(value) else f"{value:g}"


def _printed(span: Span) -> str:
    low, high = _show(span.low, span.dimension), _show(span.high, span.dimension)
    return low if low == high else f"{low} to {high}"


def _told_apart(value: float, span: Span, verdict: Verdict) -> tuple[str, str]:
    """Print what is offered and what is needed: of a shortfall that rounding would hide, with the digits it takes."""
    offered, needed = _show(value, span.dimension), _printed(span)
    if offered != needed or verdict == Verdict.PASS or not span.known or value == span.low:
        return offered, needed
    unit = f" {DIMENSIONS[span.dimension].inside}" if span.dimension else ""
    for digits in range(3, MOST_DIGITS):
        offered, needed = (f"{figure:.{digits}g}{unit}" for figure in (value, span.low))
        if offered != needed:
            break
    return offered, needed


def _because(text: str, margin: float, sense: str) -> str:
    wanted = "less" if sense == "at most" else "more"
    return f"{text}; a clean pass wants {margin:.0%} {wanted}" if margin else text


def _datum(verdict: Verdict, judgement: Judgement, span: Span) -> str:
    """Name the fact that would settle a "can't tell": of the part, of its neighbour, or of the bike."""
    if verdict != Verdict.CANT_TELL:
        return ""
    if np.isnan(_one(judgement.offered)):
        return f"the part's {judgement.what}"
    return span.datum or f"the other part's figure for {span.because}"
