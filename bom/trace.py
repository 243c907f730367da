"""Where a figure comes from: somebody gave it, or a formula made it of other figures.

A trace is fastened to a figure where the figure is made. Nobody reads it until `why` asks, so what
costs time is a function that is called only then.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from bom.span import Span

# What a figure may rest on in the end: kind -> how it is called in print.
KINDS: Mapping[str, str] = {
    "job": "job",
    "margin": "margin",
    "catalogue": "catalogue",
    "curve": "catalogue curve",
    "donor": "donor's part",
    "chemistry": "cell table",
    "program": "fixed here",
    "loom": "counted in the loom",
    "solved state": "solved state",
}


@dataclass(frozen=True)
class Origin:
    """A figure that is not worked out.

    kind  one of KINDS
    name  job key with dots ("pack.series"), margin, column, chemistry, or what it is
    of    which one: the load or donor item by name, the part id, the family's curve, the state that was solved
    note  its source, or how it is known
    unit  unit of a plain number
    """

    kind: str
    name: str
    of: str = ""
    note: str = ""
    unit: str = ""

    def __post_init__(self) -> None:
        """Refuse a kind that nobody could print."""
        if self.kind not in KINDS:
            raise KeyError(self.kind)


@cache
def job_origin(key: str, of: str = "") -> Origin:
    """Name a key of the job; the same ones are asked for at every place."""
    return Origin("job", key, of)


@dataclass(frozen=True)
class Fact:
    """A word or a table that a formula takes, or that is compared; not a number.

    text   as printed
    value  as the formula takes it
    """

    text: str
    value: object
    origin: Origin


@dataclass(frozen=True)
class Step:
    """A figure worked out.

    formula  of the inputs' names, in the signs of arithmetic and the functions of bom.replay;
             "A to B" gives a low and a high end each its own formula
    inputs   by the names the formula uses
    """

    formula: str
    inputs: Mapping[str, "Span | Fact"]


Trace = Origin | Callable[[], "Origin | Step | None"]


def resolved(trace: Trace | None) -> Origin | Step | None:
    """Call what is worked out only when asked."""
    return trace() if callable(trace) else trace


def step(formula: str, **inputs: "Span | Fact") -> Step:
    """Write a step with its inputs by name."""
    return Step(formula, inputs)
