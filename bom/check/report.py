"""The findings alone, as lines for a terminal or as JSON."""

from dataclasses import asdict
from math import isnan
from typing import TYPE_CHECKING

from bom.build import Build
from bom.check.cause_words import Line, cause_data, cause_lines, known_by, places_words
from bom.check.causes import Cause, from_causes
from bom.check.cure_words import cure_words
from bom.check.donor_words import DonorVerdict
from bom.check.why_text import block, unbroken
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.read.questions import quick_way

RECEIVED = "RECEIVED"

if TYPE_CHECKING:
    from bom.session import Session


def shown(build: Build, *, everything: bool) -> list[Finding]:
    """List the findings worth printing: all, or those that are not a clean pass."""
    return [finding for finding in build.findings if everything or finding.verdict > Verdict.PASS]


def as_text(session: "Session", *, everything: bool) -> str:
    """Print one cause a block, then what passes if everything is asked for, then what arrived."""
    build = session.build
    blocks = [_cause_block(cause, session) for cause in build.causes]
    for finding in shown(build, everything=everything):
        if finding.verdict <= Verdict.PASS:
            head = f"{finding.verdict.word.upper():<11} {finding.subject} ({finding.rule})"
            blocks.append(block(head, (finding.sentence, known_by(finding))))
    return "\n".join((*blocks, *received_lines(build)))


def received_lines(build: Build) -> list[str]:
    """Print a block for each part that came in place of what was ordered, and a line for each that stands nowhere."""
    from bom.arrived.arrivals import arrivals, aside_lines

    blocks = []
    for came in arrivals(build):
        wide = max((len(each.what) for each in came.differs), default=0)
        table = [f"{each.what:<{wide}}  {each.was} -> {each.now}" for each in came.differs]
        lines = filter(None, (*table, came.counted, *came.worst))
        blocks.append(block(f"{RECEIVED:<11} {came.heading}", lines))
    return [*blocks, *(block(f"{RECEIVED:<11} {line}", ()) for line in aside_lines(build))]


def _received_data(build: Build) -> list[dict[str, object]]:
    from bom.arrived.received_rows import received_rows

    return [{**vars(row), "was_said": row.was_said.word, "now_said": row.now_said.word} for row in received_rows(build)]


def _cause_block(cause: Cause, session: "Session") -> str:
    """Print a cause: verdict, harm, title, the numbers that decide, what is alike, what helps, what else it must meet.

    A finding's key stands in brackets, as `why` takes it.
    """
    head = f"{cause.verdict.word.upper():<11} {cause.harm.word:<9} {cause.title}"
    first, *others = cause_lines(cause)
    lines = [_keyed(first), places_words(cause), known_by(first.first) if first.first else ""]
    lines += [_find_out(cause, session), _cure("Or" if cause.asks else "Cure", cure_words(cause, session))]
    for line in others:
        lines += [f"Also {line.verdict.word}: {_keyed(line)}", _cure("  Cure", line.cure)]
    return block(head, lines)


def _keyed(line: Line) -> str:
    return f"{line.text} [{unbroken(line.keys[0])}]" if line.keys else line.text


def _cure(label: str, cure: str) -> str:
    return f"{label}: {cure.rstrip('.')}." if cure else ""


def _find_out(cause: Cause, session: "Session") -> str:
    """Say how a figure of the bike is found, or which figures lack; "" where none does, or the part fails anyway."""
    if not cause.data or cause.verdict == Verdict.FAIL:
        return ""
    if not cause.asks:
        return f"Find out: {'; '.join(cause.data)}."
    quick = quick_way(cause.data[0], session.catalogue.find_out)
    return f"How: {quick.way} (about {quick.minutes:g} min)."


def summary(build: Build) -> str:
    """Say the outcome in one line."""
    roots = from_causes(build)
    fails, unknown, tight = (build.count(v) for v in (Verdict.FAIL, Verdict.CANT_TELL, Verdict.TIGHT))
    settle = f"settle these, {roots}, before ordering" if roots else "settle these before ordering"
    outcome = settle if fails or unknown else "nothing fails"
    return (
        f"{fails} fail, {unknown} can't be told, {tight} tight: {outcome}. "
        f"Parts {build.bill.total:,.2f} {build.bill.currency}, key at {build.arrangement}."
    )


def as_json(session: "Session", *, everything: bool) -> dict[str, object]:
    """Give causes, findings, open places, donor verdicts and questions as plain data."""
    build = session.build
    return {
        "arrangement": build.arrangement,
        "sound": build.sound,
        "counts": {verdict.word: build.count(verdict) for verdict in Verdict if verdict != Verdict.NOT_ASKED},
        "open_places": [
            {"place": hole.place.name, "verdict": hole.verdict.word, "sentence": hole.sentence, "datum": hole.datum}
            for hole in build.holes
        ],
        "causes": [cause_data(cause) for cause in build.causes],
        "findings": [
            {**asdict(finding), "verdict": finding.verdict.word} for finding in shown(build, everything=everything)
        ],
        "received": _received_data(build),
        "donor": [_plain(item) for item in build.donor],
        "certainty": {name: asdict(told) for name, told in session.certainties.items()},
        "questions": [asdict(question) for question in session.questions],
    }


def _plain(item: DonorVerdict) -> dict[str, object]:
    figures = {"minutes": item.minutes, "cost": item.cost}
    return {**asdict(item), **{name: None if isnan(value) else value for name, value in figures.items()}}
