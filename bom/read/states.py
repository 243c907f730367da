"""Operating states of a bike: the table that comes with the catalogue, and those a job adds."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isnan
from pathlib import Path
from typing import get_args

from bom.errors import Fault
from bom.read.families import Column
from bom.read.job import THROUGH_THE_CONTACTOR, Cells, Condition, JobFile, StateSection, Traction
from bom.read.tables import Table, read_table
from bom.read.words import nearest

COLUMNS = (
    Column("state", "text", required=True),
    Column("on", "text", required=True),
    Column("cells", "choice", get_args(Cells), required=True),
    Column("air_c", low=-40, high=120),
    Column("key", "choice", ("on", "off"), required=True),
    Column("contactor", "choice", ("closed", "open"), required=True),
    Column("traction", "choice", get_args(Traction), required=True),
    Column("source", "text", required=True),
)
# Without these the budget, the drain and the converter's worst hour would rest on nothing.
LEAST_STATES = 8


@dataclass(frozen=True)
class State:
    """An operating state of the bike.

    conditions  words of the job file's `on` that hold in it
    cells       "full", "nominal", "empty" or "highest" (the bus as high as it goes)
    air_c       air about everything; None for the hottest of each zone
    key         True with the key on
    contactor   True with the main contactor closed
    traction    what the controller does: "none", "idle", "continuous", "peak", "regeneration" or "charging"
    source      where the state comes from
    """

    name: str
    conditions: frozenset[str]
    cells: str
    air_c: float | None
    key: bool
    contactor: bool
    traction: str
    source: str


def read_states(path: Path, faults: list[Fault]) -> tuple[State, ...]:
    """Read the table of states; each name stands once."""
    table = read_table(path, COLUMNS, faults)
    seen: set[str] = set()
    for row, line in zip(table.rows, table.lines, strict=True):
        name = str(row["state"])
        if name in seen:
            faults.append(Fault(table.file, line, "state", name, "Write each state once."))
        seen.add(name)
        _check_words(table, line, _words(str(row["on"])), faults)
        if row["contactor"] == "open" and row["traction"] in THROUGH_THE_CONTACTOR:
            accepted = f'Write closed: traction "{row["traction"]}" runs through the contactor.'
            faults.append(Fault(table.file, line, "contactor", "open", accepted))
    if table.readable and len(table.rows) < LEAST_STATES:
        accepted = f"At least {LEAST_STATES} states are wanted: copy the missing rows from the shipped table."
        faults.append(Fault(table.file, 0, "", str(len(table.rows)), accepted))
    return tuple(_state(row) for row in table.rows)


def states_of(shipped: Sequence[State], job: JobFile) -> tuple[State, ...]:
    """Give the catalogue's states, and the job's own behind them; one of the same name takes its place."""
    own = {section.name: _own(section) for section in job.states}
    kept = [own.pop(state.name, state) for state in shipped]
    return (*kept, *own.values())


def _own(section: StateSection) -> State:
    return State(
        section.name,
        frozenset(section.on),
        section.cells,
        section.air,
        section.key,
        section.contactor,
        section.traction,
        "the job",
    )


def _words(text: str) -> list[str]:
    return [word.strip() for word in text.split(";")]


def _check_words(table: Table, line: int, words: Sequence[str], faults: list[Fault]) -> None:
    known = get_args(Condition)
    for word in words if words != [""] else ():  # a blank cell has its own fault
        if word not in known:
            accepted = f"Write words of this list, with semicolons between: {', '.join(known)}.{nearest(word, known)}"
            faults.append(Fault(table.file, line, "on", word, accepted))


def _state(row: dict[str, float | str]) -> State:
    air = float(row["air_c"])
    return State(
        str(row["state"]),
        frozenset(_words(str(row["on"]))),
        str(row["cells"]),
        None if isnan(air) else air,
        row["key"] == "on",
        row["contactor"] == "closed",
        str(row["traction"]),
        str(row["source"]),
    )
