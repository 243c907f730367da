"""The findings alone, as lines for a terminal or as JSON."""

from dataclasses import asdict
from math import isnan

from bom.build import Build
from bom.check.donor import DonorVerdict
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict


def shown(build: Build, *, everything: bool) -> list[Finding]:
    """List the findings worth printing: all, or those that are not a clean pass."""
    return [finding for finding in build.findings if everything or finding.verdict > Verdict.PASS]


def as_text(build: Build, *, everything: bool) -> str:
    """Print one finding a block: verdict, place, sentence, and what helps."""
    blocks = [
        f"{hole.verdict.word.upper():<11} {hole.place.name} stays open\n            {hole.sentence}"
        for hole in build.holes
    ]
    for finding in shown(build, everything=everything):
        lines = [f"{finding.verdict.word.upper():<11} {finding.subject} ({finding.rule})", finding.sentence]
        if finding.datum:
            lines.append(f"Find out: {finding.datum}.")
        if finding.verdict > Verdict.PASS:
            lines.append(f"Cure: {finding.cure}")
        blocks.append("\n            ".join(lines))
    return "\n".join((*blocks, donor_text(build)))


def donor_text(build: Build) -> str:
    """Print what becomes of each donor item: verdict, reason, what to do, what takes its place."""
    blocks = []
    for item in build.donor:
        gate = f"{item.gate}: " if item.gate else ""
        lines = [f"{item.verdict.upper():<11} {item.name} (donor's {item.kind})", f"{gate}{item.reason}"]
        lines += [f"Do: {item.change}{_minutes(item)}."] if item.change else []
        lines += [f"Test: {item.test}{_minutes(item) if not item.change else ''}."] if item.test else []
        lines += [f"Instead: {item.instead}."] if item.instead else []
        blocks.append("\n            ".join(lines))
    return "\n".join(blocks)


def _minutes(item: DonorVerdict) -> str:
    return "" if isnan(item.minutes) else f" (about {item.minutes:g} min)"


def as_json(build: Build, *, everything: bool) -> dict[str, object]:
    """Give findings, open places and donor verdicts as plain data."""
    return {
        "arrangement": build.arrangement,
        "sound": build.sound,
        "counts": {verdict.word: build.count(verdict) for verdict in Verdict if verdict != Verdict.NOT_ASKED},
        "open_places": [
            {"place": hole.place.name, "verdict": hole.verdict.word, "sentence": hole.sentence, "datum": hole.datum}
            for hole in build.holes
        ],
        "findings": [
            {**asdict(finding), "verdict": finding.verdict.word} for finding in shown(build, everything=everything)
        ],
        "donor": [_plain(item) for item in build.donor],
    }


def _plain(item: DonorVerdict) -> dict[str, object]:
    return {**asdict(item), "minutes": None if isnan(item.minutes) else item.minutes}
