"""The findings alone, as lines for a terminal or as JSON."""

from dataclasses import asdict

from bom.build import Build
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
    for item in build.donor:
        instead = f" Instead: {item.instead}." if item.instead else ""
        blocks.append(
            f"{item.verdict.upper():<11} {item.name} (donor's {item.kind})\n            {item.reason}{instead}"
        )
    return "\n".join(blocks)


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
        "donor": [asdict(item) for item in build.donor],
    }
