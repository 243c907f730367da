"""One short of the fault walk, and how it ends."""

from dataclasses import dataclass
from enum import IntEnum
from math import inf, nan

LEAST_FLOW_A = 0.05
LATE_S = 5.0
TO_FRAME = "the frame"
COMMON_MINUS = "converter's common minus"  # what joins both sides of one that is not isolated


class End(IntEnum):
    """How a short ends, worst last."""

    NO_CURRENT = 0
    CLEARED = 1
    LATE = 2
    HELD = 3
    LETS_GO = 4
    STUB = 5
    UNFUSED = 6
    NEVER = 7
    NOT_KNOWN = 8
    BURNS = 9
    BURSTS = 10

    @property
    def word(self) -> str:
        """Give the words of the papers."""
        return WORDS[self]


WORDS = {
    End.NO_CURRENT: "no current",
    End.CLEARED: "a fuse opens",
    End.LATE: "a fuse opens late",
    End.HELD: "nothing opens; the wires carry it",
    End.LETS_GO: "the converter lets go",
    End.STUB: "a stub burns first",
    End.UNFUSED: "ahead of every fuse",
    End.NEVER: "the fuse need never open",
    End.NOT_KNOWN: "can't tell",
    End.BURNS: "a wire burns first",
    End.BURSTS: "the fuse bursts or arcs on",
}


@dataclass(frozen=True)
class Hot:
    """The hottest wire of a short.

    end_c    how hot it gets until the fuse has opened
    limit_c  what its insulation stands for seconds
    rest_c   what it stands for ever, where it was to begin with
    amps     that heat it most, of the least and the greatest of the short
    time_s   for which they do, as far as the fuse lets them through
    burns_s  by when those amps bring it to what it stands, no heat leaving it; NaN where that takes longer than 5 s
    """

    wire: str
    end_c: float
    limit_c: float
    rest_c: float
    amps: float = nan
    time_s: float = inf
    burns_s: float = nan

    @property
    def burns(self) -> bool:
        """Tell whether it passes what its insulation stands."""
        return self.end_c > self.limit_c


@dataclass(frozen=True)
class Fault:
    """One short, and what becomes of it.

    point, to      where, and onto what: its return, or the frame
    low_a, high_a  least and greatest amps through the short
    source         what feeds most of it, "" where nothing flows
    limited        True where the converter's limit holds the amps down
    fuse           fuse that opens; where none surely does the smallest of the path, "" where there is none
    opens          whether the fuse surely opens
    bursts         by what a fuse that blows is short of breaking the short ("32 V on 88 V"), "" where it is not
    unsaid         figure that lacks to know whether it breaks ("DC volts"), "" where none does
    known          False where its times, whether it breaks, or the converter's limit, are not known
    earliest_s     before this it surely does not open
    latest_s       by then it surely has; inf: it need never
    would_do_a     greatest rating of its kind that would surely open in time, where this one does not; NaN: none
    also_opens     another fuse of the path that may open first or as well, "" for none
    wire, stub     hottest wire that a fuse guards, and hottest that none does
    path           what carries most of the current, in the order of the loom
    """

    point: str
    to: str
    low_a: float
    high_a: float
    source: str
    limited: bool
    fuse: str
    opens: bool
    bursts: str
    unsaid: str
    known: bool
    earliest_s: float
    latest_s: float
    would_do_a: float
    also_opens: str
    wire: Hot | None
    stub: Hot | None
    path: tuple[str, ...]

    @property
    def end(self) -> End:
        """Say how it ends."""
        if self.high_a < LEAST_FLOW_A:
            return End.NO_CURRENT
        if self.bursts:
            return End.BURSTS
        if not self.known:
            return End.NOT_KNOWN
        return self._fed_end() if not self.opens else self._opened_end()

    def _opened_end(self) -> End:
        return self._burnt or (End.LATE if self.latest_s > LATE_S else End.CLEARED)

    @property
    def _burnt(self) -> End | None:
        """Say what burns, a guarded wire first; None where nothing does."""
        if self.wire and self.wire.burns:
            return End.BURNS
        return End.STUB if self.stub and self.stub.burns else None

    def _fed_end(self) -> End:
        """Tell how one ends that no fuse surely opens on: by what holds the amps down."""
        if not self.limited:
            return (self._burnt or End.NEVER) if self.fuse else End.UNFUSED
        if self.low_a < LEAST_FLOW_A:
            return End.LETS_GO
        hot = [hot for hot in (self.wire, self.stub) if hot and hot.end_c > hot.rest_c + 1.0]
        if hot:
            return End.BURNS
        return End.NEVER if self.fuse else End.HELD
