"""The record: everything a later program may want to read, as JSON with sorted keys.

The keys are listed in templates/record.md. A figure that is not known, or has no limit, is null.
"""

import json
from dataclasses import asdict
from math import isfinite
from typing import Any

from bom import __version__
from bom.arrived.arrivals import arrivals
from bom.arrived.received_rows import received_rows
from bom.build import Build
from bom.check.cause_words import cause_data
from bom.check.certainty import Certainty
from bom.check.donor_gates import donor_type
from bom.check.gates_text import gates_data
from bom.choose.filled import Filled, Hole
from bom.duties.budget import Budget
from bom.duties.place_words import words_of
from bom.judge.verdict import Verdict
from bom.money.bill import Line
from bom.money.prices import Purchase
from bom.papers.arrangements import compared
from bom.papers.lead_rows import LeadRow, lead_rows
from bom.papers.record_walks import walks_record
from bom.papers.standing import headline
from bom.papers.wire_rows import wire_rows
from bom.session import Session
from bom.span import Span

FORMAT = 2  # raised when a key changes its meaning or goes


def record(session: Session) -> str:
    """Give the record's text, one entry of a list or a table a line; the same build gives the same text."""
    build = session.build
    content = {
        "format": FORMAT,
        "made_by": {"name": "donorbill", "version": __version__},
        **_head(session),
        "arrangements": [_compared(each) for each in session.builds],
        "pack": {name: _span(span) for name, span in vars(build.facts.pack).items()},
        "places": {place.name: _place(build, place.name) for place in build.loom.places},
        "holes": [_hole(hole) for hole in build.holes],
        "causes": [cause_data(cause) for cause in build.causes],
        "findings": [vars(finding) for finding in build.findings],
        "received": [vars(row) for row in received_rows(build)],
        "arrived": [{**asdict(each), "heading": each.heading} for each in arrivals(build)],
        "aside": [vars(each) for each in build.aside],
        "donor": [asdict(item) for item in build.donor],
        "certainty": {name: _certainty(told) for name, told in session.certainties.items()},
        "donor_gates": gates_data(build),
        "donor_type": donor_type(build.facts.job),
        "questions": [vars(question) for question in session.questions],
        "bill": {
            "currency": build.bill.currency,
            "total": build.bill.total,
            "lines": [_line(line) for line in build.bill.lines],
        },
        "wires": [vars(row) for row in wire_rows(build)],
        "leads": _leads(build),
        "budget": _budget(build.facts.budget),
        **walks_record(build),
        "margins": {name: margin.value for name, margin in session.margins.entries.items()},
        "defaults": [
            {"key": entry.key, "value": entry.value, "meaning": entry.meaning} for entry in session.loaded.defaults
        ],
    }
    return _laid_out(_plain(content)) + "\n"


def _head(session: Session) -> dict[str, object]:
    build, job = session.build, session.loaded.job
    return {
        "job": {
            "name": session.loaded.name,
            "title": job.title,
            "customer": job.customer,
            "date": job.date.isoformat(),
        },
        "headline": headline(build),
        "arrangement": build.arrangement,
    }


def _certainty(told: Certainty) -> dict[str, object]:
    return {**vars(told), "wanted": [vars(entry) for entry in told.wanted]}


def _hole(hole: Hole) -> dict[str, object]:
    return {"place": hole.place.name, "sentence": hole.sentence, "verdict": hole.verdict, "datum": hole.datum}


def _laid_out(value: Any, depth: int = 2) -> str:
    """Write lists and tables of the first two levels one entry a line, so that two records compare by line."""
    if depth and value and isinstance(value, dict):
        lines = [f"{_dumped(key)}: {_laid_out(value[key], depth - 1)}" for key in sorted(value)]
        return "{\n" + ",\n".join(lines) + "\n}"
    if depth and value and isinstance(value, list):
        return "[\n" + ",\n".join(_dumped(entry) for entry in value) + "\n]"
    return _dumped(value)


def _dumped(value: Any) -> str:
    return json.dumps(value, sort_keys=True, ensure_ascii=False, allow_nan=False)


def _plain(value: Any) -> Any:
    """Turn values into what JSON holds: verdicts into words, figures without a value into null."""
    if type(value) in (str, bool, int) or value is None:
        return value
    if isinstance(value, float):
        # Ten digits keep every figure and drop the last bits, in which machines differ.
        return float(f"{value:.10g}") if isfinite(value) else None
    if isinstance(value, dict):
        return {str(key): _plain(entry) for key, entry in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(entry) for entry in value]
    return value.word if isinstance(value, Verdict) else str(value)


def _span(span: Span) -> dict[str, object]:
    return {
        "low": span.low,
        "high": span.high,
        "dimension": span.dimension,
        "because": span.because,
        "datum": span.datum,
    }


def _place(build: Build, name: str) -> dict[str, object]:
    place, duty = build.loom.place(name), build.duties[name]
    return {
        "title": place.title,
        "family": place.family,
        "circuit": place.circuit,
        "zone": place.zone,
        "quantity": place.quantity,
        "part": _part(build.filled.get(name)),
        "needs": {need: _span(span) for need, span in duty.needs.items()},
        "words": words_of(place, build.facts),
    }


def _part(entry: Filled | None) -> dict[str, object] | None:
    if entry is None:
        return None
    return {
        "part_id": entry.part_id,
        "name": entry.part.word("name")[0],
        "origin": entry.origin,
        "evidence": entry.part.word("evidence")[0],
    }


def _line(line: Line) -> dict[str, object]:
    return {
        "part_id": line.part_id,
        "name": line.name,
        "family": line.family,
        "places": line.places,
        "quantity": line.quantity,
        "spare": line.spare,
        "unit": line.unit,
        "cost": line.cost,
        "purchase": _purchase(line.purchase) if line.purchase else None,
    }


def _purchase(buy: Purchase) -> dict[str, object]:
    offer = buy.offer
    return {
        "offer_id": offer.offer_id,
        "supplier": offer.supplier,
        "supplier_code": offer.supplier_code,
        "pack_size": offer.pack_size,
        "packs": buy.packs,
        "pack_price": buy.pack_price,
        "lead_days": offer.lead_days,
        "price_date": offer.price_date,
    }


def _leads(build: Build) -> list[dict[str, object]]:
    """Give the rows of control leads, each with both its sides."""
    return [_lead(row) for row in lead_rows(build)]


def _lead(row: LeadRow) -> dict[str, object]:
    return {**vars(row), "first": vars(row.first), "second": vars(row.second) if row.second else None}


def _budget(budget: Budget) -> dict[str, object]:
    return {
        "rail_v": budget.rail_v,
        "states_a": dict(budget.states),
        "loads": {
            name: {"each_w": entry.each_w, "amps": entry.amps, "source": entry.source}
            for name, entry in budget.loads.items()
        },
    }


def _compared(build: Build) -> dict[str, object]:
    return {
        "arrangement": build.arrangement,
        "places": len(build.loom.places),
        "holes": len(build.holes),
        "total": build.bill.total,
        "counts": {verdict.word: build.count(verdict) for verdict in Verdict},
        "parts": {name: entry.part_id for name, entry in build.filled.items()},
        "key": compared(build),
    }
