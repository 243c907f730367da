"""Every complaint of a schema as a fault: line, place, what was found, what would be accepted."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from bom.errors import Fault
from bom.read.locate import Lines
from bom.read.spot import Path, Spot, fields_of, spot_of
from bom.read.wording import choices, either, wanted
from bom.read.words import nearest, nearest_word
from bom.units import listed

_LONGEST_FOUND = 60


def faults_of(error: ValidationError, *, file: str, lines: Lines, model: type[BaseModel]) -> list[Fault]:
    """Turn everything a schema complains of into faults, one for each place.

    file   path as the builder gave it
    lines  the lines of that file's text
    model  the schema that was checked
    """
    faults: dict[tuple[str, str], Fault] = {}
    there = {(*path[:-1], key) for path, key in misspelt(error, model)}
    for detail in error.errors(include_url=False):
        spot = spot_of(model, detail["loc"])
        if detail["type"] == "missing" and spot.path in there:
            continue  # the fault of the misspelt key says it all
        fault = _fault(detail, spot, file, lines)
        known = faults.setdefault((fault.place, fault.found), fault)
        # The alternatives of a union complain one by one about the same text.
        if fault.accepted not in known.accepted:
            faults[fault.place, fault.found] = replace(known, accepted=either((known.accepted, fault.accepted)))
    return list(faults.values())


def misspelt(error: ValidationError, model: type[BaseModel]) -> list[tuple[Path, str]]:
    """List the unknown keys that are near a known one: the path of each, and the key that was meant."""
    spots = [spot_of(model, detail["loc"]) for detail in error.errors() if detail["type"] == "extra_forbidden"]
    meant = [(spot.path, nearest_word(str(spot.path[-1]), list(fields_of(spot.table)))) for spot in spots if spot.table]
    return [(path, key) for path, key in meant if key]


def _fault(detail: ErrorDetails, spot: Spot, file: str, lines: Lines) -> Fault:
    return Fault(file, lines.line(spot.path), lines.place(spot.path), _found(detail, spot), _accepted(detail, spot))


def _found(detail: ErrorDetails, spot: Spot) -> str:
    match detail["type"]:
        case "extra_forbidden":
            return str(spot.path[-1])
        case "missing":
            return ""
        case "union_tag_invalid" | "union_tag_not_found":
            return str(detail.get("ctx", {}).get("tag", ""))
        case "value_error" | "assertion_error" if isinstance(detail["input"], Mapping | BaseModel):
            return ""  # a rule about the whole table, which has no one offending text
    return _text(detail["input"])


def _accepted(detail: ErrorDetails, spot: Spot) -> str:
    context = detail.get("ctx", {})
    accepted = wanted(spot.want) or f"{detail['msg'].replace('Input should', 'It should')}."
    match detail["type"]:
        case "extra_forbidden":
            accepted = _unknown_key(spot)
        case "missing":
            accepted = _missing(spot)
        case "value_error" | "assertion_error":
            accepted = str(context["error"])
        case "literal_error" | "enum":
            accepted = _not_a_choice(detail["input"], spot)
        case "union_tag_invalid" | "union_tag_not_found":
            accepted = _wrong_tag(context)
        case "too_short" | "string_too_short":
            accepted = f"Write at least {_things(detail, context['min_length'])}."
        case "too_long" | "string_too_long":
            accepted = f"Write at most {_things(detail, context['max_length'])}."
    return accepted


def _unknown_key(spot: Spot) -> str:
    known = list(fields_of(spot.table)) if spot.table else []
    hint = nearest(str(spot.path[-1]), known) or f" The keys are {', '.join(known)}."
    return f"There is no such key here.{hint}"


def _missing(spot: Spot) -> str:
    about = f" ({spot.want.description})" if spot.want.description else ""
    return f"It is missing{about}. {wanted(spot.want)}".rstrip()


def _not_a_choice(value: object, spot: Spot) -> str:
    hint = nearest(value, choices(spot.want)) if isinstance(value, str) else ""
    return f"{wanted(spot.want)}{hint}"


def _wrong_tag(context: Mapping[str, Any]) -> str:
    key = str(context["discriminator"]).strip("'")
    tags = str(context.get("expected_tags", ""))
    if not tags:
        return f'The key "{key}" is missing; it says which kind of table this is.'
    words = tags.strip("'").split("', '")
    return f'Write {listed(words)} for "{key}".'


def _things(detail: ErrorDetails, count: int) -> str:
    thing = "character" if detail["type"].startswith("string") else "item"
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"


def _text(value: object) -> str:
    """What was found, as it stands in the file; tables and lists are only named."""
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, Mapping | BaseModel):
        return "a table"
    if isinstance(value, list | tuple):
        return "a list"
    text = str(value)
    return text if len(text) <= _LONGEST_FOUND else f"{text[:_LONGEST_FOUND]}..."
