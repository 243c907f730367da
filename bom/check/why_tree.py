"""A figure and all it was worked out from, as plain data."""

import math
from typing import Any

from bom.check.made_of import shown
from bom.check.origins import where
from bom.check.why import Account
from bom.dimensions import DIMENSIONS
from bom.replay import agrees
from bom.session import Session
from bom.span import Span
from bom.trace import Fact, Origin, Step

Node = dict[str, Any]


def tree(figure: Span | Fact, session: Session, name: str = "") -> Node:
    """Give a figure with its name in the formula above it, and below it what made it, down to who gave it."""
    if isinstance(figure, Fact):
        node: Node = {"name": name, "text": figure.text, "because": ""}
        return node | {"origin": _origin(figure.origin, session)}
    found = figure.origin()
    unit = found.unit if isinstance(found, Origin) else ""
    node = {"name": name, "text": shown(figure, unit), "because": figure.because}
    node |= {"low": _number(figure.low), "high": _number(figure.high), "unit": _unit(figure, unit)}
    if isinstance(found, Step):
        node["formula"] = found.formula
        node["agrees"] = agrees(found, figure.low, figure.high)
        node["inputs"] = [tree(entry, session, key) for key, entry in found.inputs.items()]
    elif found is not None:
        node["origin"] = _origin(found, session)
    return node


def as_data(account: Account, session: Session, arrangement: str) -> Node:
    """Give one comparison as plain data."""
    finding, rule = account.finding, account.rule
    sides = {"offered": account.offered, "needed": account.needed, "clean_margin": account.wanted}
    trees = {key: tree(figure, session) if figure is not None else None for key, figure in sides.items()}
    if trees["needed"] and not trees["needed"]["because"]:
        trees["needed"]["because"] = finding.because
    return {
        "arrangement": arrangement,
        "finding": finding.key,
        "part": finding.part,
        "verdict": finding.verdict.word,
        "what": finding.what,
        "offered_text": finding.offered,
        "needed_text": finding.needed,
        "because": finding.because,
        "evidence": finding.evidence,
        "datum": finding.datum,
        **trees,
        "rule": {"title": rule.title, "asks": rule.asks, "why": rule.why, "source": rule.source, "cure": finding.cure},
    }


def _number(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _unit(figure: Span, unit: str) -> str:
    return DIMENSIONS[figure.dimension].inside if figure.dimension else unit


def _origin(origin: Origin, session: Session) -> Node:
    place = where(origin, session)
    plain = {"kind": origin.kind, "name": origin.name, "of": origin.of, "note": origin.note}
    return plain | {"file": place.file, "line": place.line, "where": place.words}
