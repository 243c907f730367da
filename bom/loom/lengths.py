"""Lengths of wire that know which runs of the job, and which margins, they were added up from."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from bom.read.job import Runs
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, job_origin


@dataclass(frozen=True)
class Term:
    """One run or margin in a length: how often it counts, and its own length."""

    times: float
    each_m: float
    origin: Origin

    def counted_too(self, other: "Term") -> "Term":
        """Count it as often as both together."""
        return Term(self.times + other.times, self.each_m, self.origin)

    def counted(self, times: float) -> "Term":
        """Count it more often."""
        return Term(self.times * times, self.each_m, self.origin)


class Length(float):
    """A length in metres that remembers what it is a sum of, through sums and whole multiples.

    terms  by the name of the run or margin
    """

    terms: Mapping[str, Term]

    @classmethod
    def of(cls, value_m: float, terms: Mapping[str, Term]) -> "Length":
        """Make a length with its terms."""
        length = cls(value_m)
        length.terms = terms
        return length

    @classmethod
    def single(cls, value_m: float, origin: Origin) -> "Length":
        """Make a length that somebody gave."""
        return cls.of(value_m, {origin.name: Term(1.0, value_m, origin)})

    def __add__(self, other: float) -> "Length":
        """Add another such length."""
        terms = dict(self.terms)
        for name, term in (other.terms if isinstance(other, Length) else {}).items():
            terms[name] = term.counted_too(terms[name]) if name in terms else term
        return Length.of(float(self) + float(other), terms)

    def __radd__(self, other: float) -> "Length":
        """Start a sum."""
        return self + other

    def __mul__(self, times: float) -> float:
        """Count it several times; by anything but a whole number it is no length of wire any more."""
        if type(times) is not int:
            return float(self) * times
        return Length.of(float(self) * times, {name: term.counted(times) for name, term in self.terms.items()})

    def __rmul__(self, times: float) -> float:
        """Count it several times."""
        return self * times

    def __truediv__(self, parts: float) -> float:
        """Share it evenly; over anything but a whole number it is a ratio."""
        if type(parts) is not int:
            return float(self) / parts
        return Length.of(float(self) / parts, {name: term.counted(1 / parts) for name, term in self.terms.items()})


class TracedRuns:
    """The runs of a job, each as a length that knows its key."""

    def __init__(self, runs: Runs) -> None:
        """Take the runs as read."""
        self._runs = runs

    def __getattr__(self, name: str) -> Length:
        """Give a run by its key."""
        return Length.single(getattr(self._runs, name), job_origin(f"runs.{name}"))


def margin_m(margins: Margins, name: str) -> Length:
    """Give a margin that is a length."""
    return Length.single(getattr(margins, name), Origin("margin", name, unit="m"))


def length_figure(length_m: float, because: str, wire: str) -> Span:
    """Give a wire's length with what it was added up from; one of unknown terms is the loom's own."""
    terms = list(length_m.terms.values()) if isinstance(length_m, Length) else []
    if len(terms) == 1 and terms[0].times == 1:
        return Span.of(length_m, "length", because, terms[0].origin)
    if not terms:
        return Span.of(length_m, "length", because, Origin("loom", wire))
    return Span.of(length_m, "length", because, lambda: _step(terms))


def _step(terms: Sequence[Term]) -> Step:
    pieces, inputs = [], {}
    for term in terms:
        name = f"L_{term.origin.name.removeprefix('runs.')}"
        inputs[name] = Span.of(term.each_m, "length", "", term.origin)
        shared = f"{name} / {1 / term.times:g}" if term.times < 1 else f"{term.times:g} * {name}"
        pieces.append(name if term.times == 1 else shared)
    return Step(" + ".join(pieces), inputs)
