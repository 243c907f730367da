"""A figure of the bike with both its ends, its unit and where it comes from."""

from dataclasses import dataclass, replace

from bom import units


@dataclass(frozen=True)
class Span:
    """A figure known exactly (low equals high) or only to lie between two ends.

    dimension  name of the quantity, as in bom.units ("voltage", "current", ...), or "" for a plain number
    because    where the figure comes from, for the reader of a paper
    datum      the fact that would settle it, where the ends differ
    """

    low: float
    high: float
    dimension: str
    because: str
    datum: str = ""

    @classmethod
    def of(cls, value: float, dimension: str, because: str) -> "Span":
        """Make a figure that is known exactly."""
        return cls(value, value, dimension, because)

    @property
    def known(self) -> bool:
        """Tell whether both ends agree."""
        return self.low == self.high

    def scaled(self, factor: float, because: str = "") -> "Span":
        """Multiply both ends by a positive factor."""
        return replace(self, low=self.low * factor, high=self.high * factor, because=because or self.because)

    def plus(self, other: "Span", because: str = "") -> "Span":
        """Add two figures of one dimension."""
        return Span(
            self.low + other.low,
            self.high + other.high,
            self.dimension,
            because or f"{self.because} + {other.because}",
            self.datum or other.datum,
        )

    def __str__(self) -> str:
        """Print the figure, or both its ends."""
        if self.known:
            return units.show(self.low, self.dimension)
        return f"{units.show(self.low, self.dimension)} to {units.show(self.high, self.dimension)}"
