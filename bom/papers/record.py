"""The record: everything a later program may want to read, as JSON with sorted keys.

The keys are listed in templates/record.md. A figure that is not known, or has no limit, is null.
"""

import json
from dataclasses import asdict
from math import isfinite
from typing import Any

from bom import __version__
from bom.build import Build
from bom.choose.filled import Filled
from bom.duties.budget import Budget
from bom.judge.verdict import Verdict
from bom.money.bill import Line
from bom.papers.standing import headline
from bom.papers.wire_rows import wire_rows
from bom.session import Session
from bom.span import Span

FORMAT = 1  # raised when a key changes its meaning or goes


def record(session: Session) -> str:
    """Give the record's text; the same build gives the same text."""
    build, job = session.build, session.loaded.job
    content = {
        "format": FORMAT,
        "made_by": {"name": "donorbill", "version": __version__},
        "job": {
            "name": session.loaded.name,
            "title": job.title,
            "customer": job.customer,
            "date": job.date.isoformat(),
        },
        "headline": headline(build),
        "arrangement": build.arrangement,
        "arrangements": [_compared(each) for each in session.builds],
        "pack": {name: _span(span) for name, span in vars(build.facts.pack).items()},
        "places": {place.name: _place(build, place.name) for place in build.loom.places},
        "holes": [
            {"place": hole.place.name, "sentence": hole.sentence, "verdict": hole.verdict, "datum": hole.datum}
            for hole in build.holes
        ],
        "findings": [asdict(finding) for finding in build.findings],
        "donor": [asdict(item) for item in build.donor],
        "bill": {
            "currency": build.bill.currency,
            "total": build.bill.total,
            "lines": [_line(line) for line in build.bill.lines],
        },
        "wires": [asdict(row) for row in wire_rows(build)],
        "budget": _budget(build.facts.budget),
        "margins": {name: margin.value for name, margin in session.margins.entries.items()},
        "defaults": [
            {"key": entry.key, "value": entry.value, "meaning": entry.meaning} for entry in session.loaded.defaults
        ],
    }
    text = json.dumps(_plain(content), indent=2, sort_keys=True, ensure_ascii=False, allow_nan=False)
    return text + "\n"


def _plain(value: Any) -> Any:
    """Turn values into what JSON holds: verdicts into words, figures without a value into null."""
    if isinstance(value, Verdict):
        return value.word
    if isinstance(value, dict):
        return {str(key): _plain(entry) for key, entry in value.items()}
    if isinstance(value, list | tuple):
        return [_plain(entry) for entry in value]
    if isinstance(value, bool | str) or value is None:
        return value
    if isinstance(value, int | float):
        # Ten digits keep every figure and drop the last bits, in which machines differ.
        return (
            float(f"{value:.10g}")
            if isinstance(value, float) and isfinite(value)
            else (None if isinstance(value, float) else value)
        )
    return _plain(vars(value)) if hasattr(value, "__dict__") else str(value)


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
        "words": dict(duty.words),
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
    buy = line.purchase
    return {
        "part_id": line.part_id,
        "name": line.name,
        "family": line.family,
        "places": line.places,
        "quantity": line.quantity,
        "spare": line.spare,
        "unit": line.unit,
        "cost": line.cost,
        "purchase": None
        if buy is None
        else {
            "offer_id": buy.offer.offer_id,
            "supplier": buy.offer.supplier,
            "supplier_code": buy.offer.supplier_code,
            "pack_size": buy.offer.pack_size,
            "packs": buy.packs,
            "pack_price": buy.pack_price,
            "lead_days": buy.offer.lead_days,
            "price_date": buy.offer.price_date,
        },
    }


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
    }
