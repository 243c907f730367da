"""What is asked of a supplier, and what is tested when a part arrives, as rows."""

from collections.abc import Sequence
from dataclasses import dataclass

from bom.check.question import Question

DATA_SHEET_ONLY = "data sheet only"
FINDS_FAULTS = "finds faults only"


@dataclass(frozen=True)
class GoodsRow:
    """One test on a part that has arrived.

    part    id and name
    places  where it goes
    passes  the reading to pass
    proves  "settles it", that it only finds faults, or that the data sheet alone settles it
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
    """List the tests of parts that stand or may stay."""
    rows = [question for question in questions if question.stands != "left out"]
    return [_row(question) for question in rows]


def _row(question: Question) -> GoodsRow:
    proves = {"settles": "settles it", "finds faults only": FINDS_FAULTS, "nothing": DATA_SHEET_ONLY}
    own = question.part_id if question.stands == "donor" else f"{question.part_id} {question.name}"
    return GoodsRow(
        part=own,
        places=", ".join(question.places),
        figure=question.what,
        test=question.test,
        passes=question.passes,
        proves=proves[question.proves],
        minutes=question.minutes,
        now=question.now,
        then=question.then,
    )
