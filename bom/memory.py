"""What one run has worked out already, so that a like job, or another key arrangement, need not ask it again."""

from collections.abc import Callable, Hashable
from typing import Any, TypeVar

T = TypeVar("T")


class Memory:
    """Answers by what they were worked out from. One for each run, handed down; nothing in it is ever changed.

    A key names the question and all that bears on its answer, by value or by the very object. Figures kept here
    carry no trace that anybody follows: `why` asks anew.
    """

    def __init__(self) -> None:
        """Start with nothing known."""
        self._known: dict[Hashable, Any] = {}

    def once(self, question: str, bears: Hashable, work: Callable[[], T]) -> T:
        """Give the answer to a question, worked out when it is first asked."""
        key = (question, bears)
        if key not in self._known:
            self._known[key] = work()
        known: T = self._known[key]
        return known
