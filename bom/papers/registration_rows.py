"""The questions for the authority, with the answers the job gives."""

from collections.abc import Iterator

from bom import units
from bom.read.registration import QUESTIONS, Registration


def registration_rows(asked: Registration) -> Iterator[tuple[str, str]]:
    """Give each question and its answer, "" where it is still to be asked."""
    for key, (question, _) in QUESTIONS.items():
        value = getattr(asked, key)
        if value is None:
            answer = ""
        elif isinstance(value, bool):
            answer = "yes" if value else "no"
        else:
            answer = units.show(value, "power")
        yield question, answer
