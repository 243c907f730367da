"""What is asked of a supplier, and what is tested when a part arrives, as rows."""

from collections.abc import Sequence
from dataclasses import dataclass

from bom.check.question import Question

PROVES = {"settles": "settles it", "finds faults only": "finds faults only", "nothing": "data sheet only"}


@dataclass(frozen=True)
class GoodsRow:
    """One test on a part that has arrived.

    part    id and name
    places  where it goes
    passes  the reading to pass
    proves  whether it settles the figure, only finds faults, or the data sheet alone can tell
    """

    part: str
    places: str
    figure: str
    test: str
    passes: str
    proves: str
    minutes: float
    now: str
    then: str


def supplier_lines(part_id: str, questions: Sequence[Question]) -> list[str]:
    """List what to ask the supplier of a part: blanks one by one, what is hearsay in one sentence."""
    own = [question for question in questions if question.part_id == part_id and question.of_supplier]
    blank = [f"{question.ask} ({question.now}; then {question.then})" for question in own if question.blank]
    heard = [f"{question.what} (this bike asks {question.need})" for question in own if not question.blank]
    sheet = [f"please send the data sheet; known here by word alone: {'; '.join(heard)}"] if heard else []
    return [*blank, *sheet]


def goods_rows(questions: Sequence[Question]) -> list[GoodsRow]:
    """List the tests of parts that stand or may stay; figures of one part that one test finds share a row."""
    groups: dict[tuple[str, str], list[Question]] = {}
    for question in questions:
        if question.stands != "left out":
            groups.setdefault((question.part_id, question.test), []).append(question)
    return [_row(group) for group in groups.values()]


def _row(group: Sequence[Question]) -> GoodsRow:
    first = group[0]
    return GoodsRow(
        part=first.part_id if first.stands == "donor" else f"{first.part_id} {first.name}",
        places=", ".join(dict.fromkeys(place for question in group for place in question.places)),
        figure="; ".join(dict.fromkeys(question.what for question in group)),
        test=first.test,
        passes="; ".join(dict.fromkeys(question.passes for question in group)),
        proves=PROVES[first.proves],
        minutes=first.minutes,
        now=first.now,
        then=first.then,
    )
