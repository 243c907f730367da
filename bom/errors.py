"""What can go wrong with a builder's input, and with a formula used out of range."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, order=True)
class Fault:
    """One thing wrong in one file: where it is, what was found, what would be accepted.

    file      path as the builder gave it
    line      1-based; 0 when the fault has no line (a file that is missing)
    place     key path ("pack.series"), or column name for a table
    found     the offending text, or "" when something is missing
    accepted  one sentence saying what to write instead
    """

    file: str
    line: int
    place: str
    found: str
    accepted: str

    def __str__(self) -> str:
        """Say the fault in one line."""
        line = f" line {self.line}" if self.line else ""
        place = f", {self.place}" if self.place else ""
        found = f'found "{self.found}". ' if self.found else ""
        return f"{self.file}{line}{place}: {found}{self.accepted}"


class InputError(Exception):
    """Every fault of the files read, together."""

    def __init__(self, faults: Sequence[Fault]) -> None:
        """Keep the faults in file and line order."""
        self.faults = tuple(sorted(set(faults)))
        super().__init__("\n".join(str(fault) for fault in self.faults))


class RangeError(ValueError):
    """A formula was asked outside the range it is published or tested for."""
