"""Why nothing can stand at a place: what was asked, who came nearest, which neighbour blocks."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from bom.choose.candidates import Candidates
from bom.choose.filled import Hole
from bom.duties.model import Duty
from bom.judge.ask import Answer, judge_pairs, judge_parts, verdicts
from bom.judge.compare import Column
from bom.judge.finding import Finding, finding_of
from bom.judge.verdict import Verdict
from bom.loom.model import Link, Place
from bom.parts import Parts
from bom.read.families import BY_NAME
from bom.read.margins import Margins

# How far off an answer counts: a rating that is not known is as bad as one half short.
UNKNOWN_SHORTFALL = 0.5
TIGHT_SHORTFALL = 0.01
VOLTS, BREAKS = ("holds-dc-volts",), ("contact-breaks-dc", "fuse-breaks-the-fault", "breaker-breaks-the-fault")


@dataclass(frozen=True)
class Miss:
    """What is known of a choice in which some places stay open."""

    options: Mapping[str, Candidates]
    passing: Mapping[str, Parts]
    duties: Mapping[str, Duty]
    links: Sequence[Link]
    margins: Margins


def open_place(place: Place, miss: Miss) -> Hole:
    """Say in a few sentences why a place stays open, and which facts would settle it."""
    option, title = miss.options[place.name], BY_NAME[place.family].title
    if not len(option.parts):
        return Hole(place, f"No {title} in the catalogue has an offer.")
    if len(miss.passing[place.name]):
        return _blocked(place, title, miss)
    answers = judge_parts(option.parts, miss.duties[place.name], miss.margins)
    worst = verdicts(answers, (len(option.parts),))
    lacks = worst == Verdict.CANT_TELL
    lacking = int(lacks.sum())
    speaks = ~_mute(answers, len(option.parts))
    among = next((some for some in (lacks & speaks, speaks) if some.any()), np.ones_like(lacks))
    nearest = option.parts.take([_nearest(answers, option.costs, among)])
    against = _against(judge_parts(nearest, miss.duties[place.name], miss.margins), place.name, (nearest,))
    reasons = " ".join(f"{finding.verdict.word}: {finding.sentence}" for finding in against)
    more = f" {lacking} of {len(option.parts)} fail nothing but lack a figure." if lacking else ""
    sentence = f"No {title} passes. Nearest is {nearest.ids[0]} ({nearest.word('name')[0]}): {reasons}{more}"
    data = dict.fromkeys(finding.datum for finding in against if finding.datum)
    verdict = max((finding.verdict for finding in against), default=Verdict.FAIL)
    against = [finding for finding in against if finding.verdict == against[0].verdict]
    return Hole(place, sentence, verdict, "; ".join(data), tuple(dict.fromkeys(finding.rule for finding in against)))


def _mute(answers: Sequence[Answer], count: int) -> npt.NDArray[np.bool_]:
    """Find the candidates that say nothing of direct current: of an AC print alone nothing is near."""
    silent = [
        verdicts([answer for answer in answers if answer.rule.name in names], (count,)) == Verdict.CANT_TELL
        for names in (VOLTS, BREAKS)
    ]
    return np.asarray(silent[0] & silent[1])


def _nearest(answers: Sequence[Answer], costs: Sequence[float], among: npt.NDArray[np.bool_]) -> int:
    """Find the candidate of some that falls short least, over all rules together; of equals the cheapest."""
    total = np.zeros(len(costs))
    for answer in answers:
        judgement = answer.judgement
        needed: Column = np.maximum(np.abs(judgement.needed.high), 1e-9)
        short = np.abs(judgement.offered - judgement.needed.high) / needed
        off = np.where(np.isfinite(short), np.clip(short, 0.05, 5.0), 1.0)
        verdict = judgement.verdicts
        total = total + np.select(
            [verdict == Verdict.FAIL, verdict == Verdict.CANT_TELL, verdict == Verdict.TIGHT],
            [off, UNKNOWN_SHORTFALL, TIGHT_SHORTFALL],
            0.0,
        )
    return int(np.lexsort((np.array(costs), total, ~among))[0])


def _blocked(place: Place, title: str, miss: Miss) -> Hole:
    """Name the neighbour with which no passing candidate goes, and the rule that says so."""
    for link in miss.links:
        if place.name not in (link.first, link.second):
            continue
        first, second = miss.passing[link.first], miss.passing[link.second]
        if not len(first) or not len(second):
            continue
        duties = miss.duties[link.first], miss.duties[link.second]
        answers = judge_pairs(link.kind, first, second, *duties, miss.margins)
        grid = verdicts(answers, (len(first), len(second)))
        if (grid <= Verdict.PASS).any():
            continue
        row, column = np.unravel_index(int(np.argmin(grid)), grid.shape)
        pair = first.take([int(row)]), second.take([int(column)])
        found = judge_pairs(link.kind, *pair, *duties, miss.margins)
        finding = _against(found, f"{link.first} / {link.second}", pair)[0]
        other = link.second if link.first == place.name else link.first
        sentence = f"No {title} that passes goes with any {other} that passes. {finding.sentence} Cure: {finding.cure}"
        return Hole(place, sentence, finding.verdict, finding.datum, (finding.rule,), other)
    return Hole(place, f"{title.capitalize()}s pass alone, but none together with all the parts it bears on.")


def _against(answers: Sequence[Answer], subject: str, parts: tuple[Parts, ...]) -> list[Finding]:
    """List what is not a clean pass, worst first."""
    findings = [finding_of(answer, subject, parts) for answer in answers]
    return sorted(
        (finding for finding in findings if finding.verdict > Verdict.PASS), key=lambda finding: -finding.verdict
    )
