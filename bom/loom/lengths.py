"""Lengths of wire that know which runs of the job, and which margins, they were added up from."""

from collections.abc import Mapping

from bom.read.job import Runs
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step


class Length(float):
    """A length in metres that remembers what it is a sum of, through sums and whole multiples.

    terms  run or margin -> how often it counts; and its own length
    """

    terms: Mapping[Origin, tuple[float, float]]

    @classmethod
    def of(cls, value_m: float, terms: Mapping[Origin, tuple[float, float]]) -> "Length":
        """Make a length with its terms."""
        length = cls(value_m)
        length.terms = terms
        return length

    def __add__(self, other: float) -> "Length":
        """Add another such length."""
        terms = dict(self.terms)
        for origin, (times, length_m) in (other.terms if isinstance(other, Length) else {}).items():
            terms[origin] = (times + terms.get(origin, (0.0, 0.0))[0], length_m)
        return Length.of(float(self) + float(other), terms)

    def __radd__(self, other: float) -> "Length":
        """Start a sum."""
        return self + other

    def __mul__(self, times: float) -> "Length":
        """Count it several times."""
        terms = {origin: (count * times, length_m) for origin, (count, length_m) in self.terms.items()}
        return Length.of(float(self) * times, terms)

    def __rmul__(self, times: float) -> "Length":
        """Count it several times."""
        return self * times

    def __truediv__(self, parts: float) -> "Length":
        """Share it evenly."""
        terms = {origin: (count / parts, length_m) for origin, (count, length_m) in self.terms.items()}
        return Length.of(float(self) / parts, terms)


class TracedRuns:
    """The runs of a job, each as a length that knows its key."""

    def __init__(self, runs: Runs) -> None:
        """Take the runs as read."""
        self._runs = runs

    def __getattr__(self, name: str) -> Length:
        """Give a run by its key."""
        value_m: float = getattr(self._runs, name)
        return Length.of(value_m, {Origin("job", f"runs.{name}"): (1.0, value_m)})


def margin_m(margins: Margins, name: str) -> Length:
    """Give a margin that is a length."""
    value_m: float = getattr(margins, name)
    return Length.of(value_m, {Origin("margin", name, unit="m"): (1.0, value_m)})


def length_figure(length_m: float, because: str, wire: str) -> Span:
    """Give a wire's length with what it was added up from; one of unknown terms is the loom's own."""
    terms = dict(length_m.terms) if isinstance(length_m, Length) else {}
    if len(terms) == 1 and next(iter(terms.values()))[0] == 1.0:
        return Span.of(length_m, "length", because, next(iter(terms)))
    if not terms:
        return Span.of(length_m, "length", because, Origin("loom", wire))
    return Span.of(length_m, "length", because, lambda: _step(terms))


def _step(terms: Mapping[Origin, tuple[float, float]]) -> Step:
    pieces, inputs = [], {}
    for origin, (times, each_m) in terms.items():
        name = f"L_{origin.name.removeprefix('runs.')}"
        inputs[name] = Span.of(each_m, "length", "", origin)
        shared = f"{name} / {1 / times:g}" if times < 1 else f"{times:g} * {name}"
        pieces.append(name if times == 1 else shared)
    return Step(" + ".join(pieces), inputs)
