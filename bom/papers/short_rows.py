"""The fault walk as rows: shorts that are alike share one, worst first."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf, isfinite, nan

from bom.build import Build
from bom.circuit.fault import End, Fault, Hot

MELTS_C = 1000.0  # copper melts near 1085 °C; no figure above this means anything
FRAME = "the frame"
CURES = {
    End.BURSTS: "a fuse that breaks these DC volts and amps, by its print",
    End.BURNS: "thicker wire, or a smaller or faster fuse",
    End.NOT_KNOWN: "find the fuse's opening times, or the converter's limit",
    End.NEVER: "a smaller fuse",
    End.UNFUSED: "shortest lead, own sleeve, nothing tapped off it, every stud covered",
    End.STUB: "each stub as short as can be, in a sleeve of its own",
    End.LETS_GO: "12 V goes dark and nothing gets hot: find the short before the key is turned again",
    End.HELD: "lamps dim, wires get warm, nothing opens: key off, find it",
    End.LATE: "warm wire before the fuse opens: key off, find it; a smaller fuse where the load allows",
    End.CLEARED: "find the reason, then the same fuse again",
    End.NO_CURRENT: "nothing flows until a second place touches: test the isolation",
}


@dataclass(frozen=True)
class ShortRow:
    """Shorts of one end, fuse, source and target; the worst figures of all.

    hot       the wire that comes nearest to its limit, None where nothing flows
    path      what the greatest of them runs through; of shorts to the frame alone
    would_do  "32 A" or less would surely open, "" where that is not asked or not known
    """

    end: End
    points: tuple[str, ...]
    to: str
    low_a: float
    high_a: float
    source: str
    limited: bool
    fuse: str
    earliest_s: float
    latest_s: float
    also_opens: str
    hot: Hot | None
    path: tuple[str, ...]
    would_do_a: float

    @property
    def stands_c(self) -> float:
        """Give what the hottest wire stands: for the seconds of the short, or for ever where no fuse opens."""
        if self.hot is None:
            return nan
        return self.hot.limit_c if isfinite(self.latest_s) else self.hot.rest_c

    @property
    def cure(self) -> str:
        """Say what helps."""
        if self.end == End.NEVER and self.would_do_a > 0:
            return f"a fuse of {self.would_do_a:.3g} A or less"
        return CURES[self.end]


def short_rows(build: Build) -> list[ShortRow]:
    """Group the shorts, worst end first."""
    groups: dict[tuple[End, str, str, str, str], list[Fault]] = {}
    for fault in build.walks.faults:
        groups.setdefault((fault.end, _fuse(fault), fault.to, fault.source, fault.also_opens), []).append(fault)
    return sorted((_row(alike) for alike in groups.values()), key=lambda row: -row.end)


def _fuse(fault: Fault) -> str:
    """Name the fuse that opens, or should have; none where the converter's limit ends it."""
    return "" if fault.end in (End.LETS_GO, End.HELD) else fault.fuse


def _row(alike: Sequence[Fault]) -> ShortRow:
    first = alike[0]
    hots = [hot for fault in alike for hot in (fault.wire, fault.stub) if hot]
    widest = max(alike, key=lambda fault: round(fault.high_a, 3))
    return ShortRow(
        end=first.end,
        points=tuple(fault.point for fault in alike),
        to=first.to,
        low_a=min(fault.low_a for fault in alike),
        high_a=widest.high_a,
        source=first.source,
        limited=any(fault.limited for fault in alike),
        fuse=_fuse(first),
        earliest_s=min(fault.earliest_s for fault in alike),
        latest_s=max(fault.latest_s for fault in alike),
        also_opens=first.also_opens,
        hot=max(hots, key=lambda hot: round(hot.end_c - hot.limit_c, 3), default=None),
        path=widest.path if first.to == FRAME else (),
        would_do_a=min((fault.would_do_a for fault in alike if fault.would_do_a > 0), default=inf),
    )


def celsius(hot: Hot | None) -> str | float:
    """Give how hot the wire gets: a word where it melts, a dash where nothing flows."""
    if hot is None:
        return "–"
    return round(hot.end_c) if hot.end_c < MELTS_C else "melts"


def hottest_words(row: ShortRow) -> str:
    """Name the hottest wire, and by when the short has burnt it where it does."""
    if row.hot is None:
        return "–"
    burnt = row.end in (End.BURNS, End.STUB) and row.hot.burns and isfinite(row.hot.burns_s)
    return f"{row.hot.wire}, burnt in {row.hot.burns_s:.2g} s" if burnt else row.hot.wire


def seconds(value: float, flows: bool) -> str | float:
    """Give the seconds until a fuse opens: a word where none need, a dash where nothing flows."""
    if not flows:
        return "–"
    return value if isfinite(value) else "never"
