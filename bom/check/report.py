"""The findings alone, as lines for a terminal or as JSON."""

from collections import Counter
from dataclasses import asdict
from math import isnan
from typing import TYPE_CHECKING

from bom.build import Build
from bom.check.cause_words import Line, cause_data, cause_lines, known_by, places_words
from bom.check.causes import Cause
from bom.check.certainty import certainty_lines
from bom.check.donor_words import DonorVerdict
from bom.judge.finding import Finding
from bom.judge.verdict import Verdict
from bom.read.questions import quick_way

if TYPE_CHECKING:
    from bom.session import Session

UNTOLD = "not known"
INDENT = "\n            "


def shown(build: Build, *, everything: bool) -> list[Finding]:
    """List the findings worth printing: all, or those that are not a clean pass."""
    return [finding for finding in build.findings if everything or finding.verdict > Verdict.PASS]


def as_text(session: "Session", *, everything: bool) -> str:
    """Print one cause a block, then what passes if everything is asked for, then the donor."""
    build = session.build
    blocks = [_cause_block(cause, session) for cause in build.causes]
    for finding in shown(build, everything=everything):
        if finding.verdict <= Verdict.PASS:
            lines = [f"{finding.verdict.word.upper():<11} {finding.subject} ({finding.rule})", finding.sentence]
            blocks.append(INDENT.join(filter(None, (*lines, known_by(finding)))))
    return "\n".join((*blocks, *received_lines(build), donor_text(session)))


def received_lines(build: Build) -> list[str]:
    """Print a block for each part that came in place of what was ordered, and a line for each that stands nowhere."""
    from bom.arrived.arrivals import arrivals, aside_lines

    blocks = []
    for came in arrivals(build):
        wide = max((len(each.what) for each in came.differs), default=0)
        table = [f"{each.what:<{wide}}  {each.was} -> {each.now}" for each in came.differs]
        blocks.append(INDENT.join(filter(None, (came.heading, *table, came.counted, *came.worst))))
    return [f"{'RECEIVED':<11} {block}" for block in (*blocks, *aside_lines(build))]


def _received_data(build: Build) -> list[dict[str, object]]:
    from bom.papers.received_rows import received_rows

    return [{**vars(row), "was_said": row.was_said.word, "now_said": row.now_said.word} for row in received_rows(build)]


def _cause_block(cause: Cause, session: "Session") -> str:
    """Print a cause: verdict, harm, title, the numbers that decide, what is alike, what helps, what else it must meet.

    A finding's key stands in brackets, as `why` takes it.
    """
    head = f"{cause.verdict.word.upper():<11} {cause.harm.word:<9} {cause.title}"
    first, *others = cause_lines(cause)
    lines = [head, _keyed(first), places_words(cause), known_by(first.first) if first.first else ""]
    lines += [_find_out(cause, session), f"{'Or' if cause.asks else 'Cure'}: {cause.cure.rstrip('.')}."]
    lines += [f"Also {line.verdict.word}: {_keyed(line)}" for line in others]
    return INDENT.join(filter(None, lines))


def _keyed(line: Line) -> str:
    return f"{line.text} [{line.keys[0]}]" if line.keys else line.text


def _find_out(cause: Cause, session: "Session") -> str:
    """Say how a figure of the bike is found, or which figures lack; "" where none does, or the part fails anyway."""
    if not cause.data or cause.verdict == Verdict.FAIL:
        return ""
    if not cause.asks:
        return f"Find out: {'; '.join(cause.data)}."
    quick = quick_way(cause.data[0], session.catalogue.find_out)
    return f"How: {quick.way} (about {quick.minutes:g} min)."


def donor_text(session: "Session") -> str:
    """Print what becomes of each donor item: verdict, reason, what to do, what stands instead, what certainty costs."""
    blocks, currency = [], session.build.bill.currency
    for item in session.build.donor:
        gate = f"{item.gate}: " if item.gate else ""
        lines = [f"{item.verdict.upper():<11} {item.name} (donor's {item.kind})", f"{gate}{item.reason}"]
        lines += [f"Known by: {item.evidence}."] if item.evidence not in ("", UNTOLD) else []
        lines += [f"Do: {item.change}{_minutes(item)}."] if item.change else []
        lines += [f"Test: {item.test}{_minutes(item) if not item.change else ''}."] if item.test else []
        lines += [f"Parts: {parts_words(item, currency)}."] if item.takes and item.verdict != "goes" else []
        stands = item.verdict == "goes" and (item.instead or item.takes)
        lines += [f"Instead: {instead_words(item, currency)}."] if stands else []
        lines += [f"To keep it: {item.kept.words(currency)}."] if item.kept else []
        sure = session.certainties.get(item.name)
        lines += certainty_lines(sure, item.test) if sure else []
        blocks.append("\n            ".join(lines))
    return "\n".join(blocks)


def parts_words(item: DonorVerdict, currency: str) -> str:
    """Name the parts that an item's change takes, with what they cost."""
    return f"{item.takes} ({'not priced' if isnan(item.cost) else f'{item.cost:,.2f} {currency}'})"


def instead_words(item: DonorVerdict, currency: str) -> str:
    """Name what stands in an item's place, with what it costs where the item goes."""
    priced = item.verdict == "goes" and not isnan(item.cost)
    return f"{item.takes} ({item.cost:,.2f} {currency})" if priced else item.instead


def donor_counts(build: Build) -> str:
    """Count the verdicts, and add the minutes and parts of all that the donor asks."""
    named = {"stays": "stay", "stays if": "stay if", "test first": "to be tested first", "goes": "go"}
    counts = Counter(item.verdict for item in build.donor)
    told = [f"{counts[verdict]} {words}" for verdict, words in named.items() if counts[verdict]]
    minutes = sum(item.minutes for item in build.donor if not isnan(item.minutes))
    cost = sum(item.cost for item in build.donor if not isnan(item.cost))
    return f"{', '.join(told)}; about {minutes:g} min of work and tests, parts {cost:,.2f} {build.bill.currency}"


def _minutes(item: DonorVerdict) -> str:
    return "" if isnan(item.minutes) else f" (about {item.minutes:g} min)"


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
