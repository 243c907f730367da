"""A figure of the bike with both its ends, its unit and where it comes from."""

from dataclasses import dataclass, field, replace
from functools import partial

from bom import units
from bom.trace import Origin, Step, Trace, job_origin, resolved


@dataclass(frozen=True)
class Span:
    """A figure known exactly (low equals high) or only to lie between two ends.

    dimension  name of the quantity, as in bom.units ("voltage", "current", ...), or "" for a plain number
    because    where the figure comes from, for the reader of a paper
    datum      the fact that would settle it, where the ends differ
    trace      who gave it, or the formula that made it; two figures are the same whatever their traces
    """

    low: float
    high: float
    dimension: str
    because: str
    datum: str = ""
    trace: Trace | None = field(default=None, compare=False, repr=False)

    @classmethod
    def of(cls, value: float, dimension: str, because: str, trace: Trace | None = None) -> "Span":
        """Make a figure that is known exactly."""
        return cls(value, value, dimension, because, "", trace)

    @classmethod
    def given(cls, value: float, dimension: str, because: str, key: str, of: str = "") -> "Span":
        """Make a figure that the job gives under a key, of one load or donor item where there are several."""
        return cls(value, value, dimension, because, "", job_origin(key, of))

    @classmethod
    def fixed(cls, value: float, dimension: str, because: str, source: str = "") -> "Span":
        """Make a figure that stands in the program."""
        return cls(value, value, dimension, because, "", Origin("program", because, "", source))

    @property
    def known(self) -> bool:
        """Tell whether both ends agree."""
        return self.low == self.high

    def scaled(self, factor: float, because: str, formula: str, **inputs: "Span") -> "Span":
        """Multiply both ends by a positive factor; the formula calls this figure X."""
        traced = partial(Step, formula, {"X": self, **inputs})
        return replace(self, low=self.low * factor, high=self.high * factor, because=because, trace=traced)

    def at_high(self) -> "Span":
        """Give the high end alone, where a formula takes the worst."""
        if self.known:
            return self
        traced = partial(Step, "highest(X)", {"X": self})
        return replace(self, low=self.high, because=f"high end: {self.because}", trace=traced)

    def at_low(self) -> "Span":
        """Give the low end alone."""
        if self.known:
            return self
        traced = partial(Step, "lowest(X)", {"X": self})
        return replace(self, high=self.low, because=f"low end: {self.because}", trace=traced)

    def origin(self) -> Origin | Step | None:
        """Give who gave it, or what made it; None where nobody said."""
        return resolved(self.trace)

    def __str__(self) -> str:
        """Print the figure, or both its ends."""
        if self.known:
            return units.show(self.low, self.dimension)
        return f"{units.show(self.low, self.dimension)} to {units.show(self.high, self.dimension)}"
