"""Ratings that are curves, reduced to one number for the duty at hand; only printed points count."""

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache, partial

import numpy as np
import numpy.typing as npt

from bom.duties.model import Duty
from bom.judge import rating_traces as traces
from bom.parts import Parts, Rating
from bom.physics.breaking import covers
from bom.read.margins import Margins
from bom.span import Span

Column = npt.NDArray[np.float64]
TimePoint = tuple[float, float, float]
# Beyond this no published limits exist, and more current never opens a fuse later.
MOST_MULTIPLE = 1000.0
# Final temperatures of the insulation in a short: IEC 60364-4-43 Table 43A; silicone as XLPE (from memory).
SHORT_C = {"PVC": 160.0, "XLPE": 250.0, "silicone": 250.0, "": 160.0}


def _value(row: object, name: str) -> float:
    return float(row[name])  # type: ignore[index]


def breaking_amps(parts: Parts, *, volts: Span, time_constant: Span, reverse: bool, by_print: bool = False) -> Rating:
    """Amps each part may break at these volts or higher and this time constant or longer.

    NaN where no printed point covers the duty; a point without a time constant covers none. by_print: of the donor's
    own part only what is printed counts.
    """
    wanted = ("reverse", "both") if reverse else ("forward", "both")
    volts_v, time_constant_ms = volts.high, time_constant.high
    best = []
    for index in range(len(parts)):
        printed = [
            ((_value(row, "volts_v"), _value(row, "breaks_a"), _value(row, "time_constant_ms")), str(row["evidence"]))
            for row in traces.counted_points(parts, index, wanted, by_print=by_print)
        ]
        covered = [
            (point[1], evidence)
            for point, evidence in printed
            if covers(point=point, voltage_v=volts_v, time_constant_ms=time_constant_ms)
        ]
        best.append(max(covered, default=(np.nan, "no printed point")))
    traced = partial(traces.breaking, parts, volts, time_constant, wanted, by_print=by_print)
    return replace(_rating(best), trace=traced)


def _rating(points: Sequence[tuple[float, str]]) -> Rating:
    return Rating(np.array([value for value, _ in points]), np.array([word for _, word in points], dtype=object))


def connector_amps(parts: Parts, *, area_mm2: float, ambient_c: float) -> Rating:
    """Amps each connector carries with a wire no larger than this one, in air at least this warm.

    The curve of the largest listed wire that is not thicker counts, at the next hotter listed air.
    """
    table, rows = _whole(parts)
    whole = _table_connector_amps(table, area_mm2, ambient_c)
    return Rating(whole.values[rows], whole.evidence[rows])


@lru_cache(maxsize=256)
def _table_connector_amps(table: Parts, area_mm2: float, ambient_c: float) -> Rating:
    out = []
    for part in table.ids:
        points = [
            (_value(row, "area_mm2"), _value(row, "carry_a"), str(row["evidence"]))
            for row in table.rows("connector_amps", part)
            if _value(row, "area_mm2") <= area_mm2 and _value(row, "ambient_c") >= ambient_c
        ]
        out.append(max(points, default=(0.0, np.nan, "no printed point"))[1:])
    return _rating(out)


def _whole(parts: Parts) -> tuple[Parts, list[int]]:
    """Give the whole table that parts come from, and their rows in it."""
    table, rows = parts.whole or (parts, range(len(parts)))
    return table, list(rows)


def time_band(parts: Parts, index: int) -> Sequence[TimePoint]:
    """Give the published opening-time limits of one fuse: (multiple, earliest s, latest s)."""
    return sorted(
        (_value(row, "multiple"), _value(row, "earliest_s"), _value(row, "latest_s"))
        for row in parts.rows("fuse_time_bands", parts.word("time_band")[index])
    )


def latest_opening_s(parts: Parts, *, current: Span) -> Rating:
    """Longest time each fuse may take to open on a known current; NaN where its limits are not known."""
    table, rows = _whole(parts)
    traced = partial(traces.opening, parts, "latest_opening", current, MOST_MULTIPLE)
    return Rating(_table_latest_opening(table, current.low)[rows], parts.evidence_of("rated_a"), traced)


def earliest_opening_s(parts: Parts, *, current: Span) -> Rating:
    """Shortest time in which each fuse may open on a known current; NaN where its limits are not known."""
    from bom.physics.fuse import earliest_s

    out = []
    for index, rated in enumerate(parts.number("rated_a")):
        points = time_band(parts, index)
        multiple = min(current.low / rated, MOST_MULTIPLE) if rated > 0 else np.nan
        out.append(float(earliest_s(multiple=multiple, points=points)) if points and rated > 0 else np.nan)
    traced = partial(traces.opening, parts, "earliest_opening", current, MOST_MULTIPLE)
    return Rating(np.array(out), parts.evidence_of("rated_a"), traced)


@lru_cache(maxsize=256)
def _table_latest_opening(table: Parts, current_a: float) -> Column:
    from bom.physics.fuse import latest_s

    out = []
    for index, rated in enumerate(table.number("rated_a")):
        points = time_band(table, index)
        multiple = min(current_a / rated, MOST_MULTIPLE) if rated > 0 else np.nan
        out.append(float(latest_s(multiple=multiple, points=points)) if points and rated > 0 else np.nan)
    return np.array(out)


@lru_cache(maxsize=64)
def _table_rerating(table: Parts, ambient_c: float) -> Column:
    from bom.physics.fuse import rerating_fraction

    out = []
    for curve in table.word("rerating"):
        points = sorted(
            (_value(row, "ambient_c"), _value(row, "fraction")) for row in table.rows("fuse_rerating", curve)
        )
        covered = bool(points) and ambient_c <= points[-1][0]
        out.append(float(rerating_fraction(ambient_c=ambient_c, points=points)) if covered else np.nan)
    return np.array(out)


def rerating(parts: Parts, *, ambient_c: float) -> Column:
    """Fraction of its rating that each fuse keeps at this ambient; NaN where no curve covers it."""
    table, rows = _whole(parts)
    return _table_rerating(table, ambient_c)[rows]


def converter_amps(parts: Parts, *, ambient_c: float, label_fraction: float) -> Rating:
    """Amps each converter holds at this ambient: its own curve, else a fraction of its label amps.

    A curve counts at its next hotter listed ambient; past its end the answer is NaN.
    """
    label, out = parts.rating("output_a"), []
    for part, amps in zip(parts.ids, label.values, strict=True):
        rows = parts.rows("converter_derating", part)
        fractions = [_value(row, "fraction") for row in rows if _value(row, "ambient_c") >= ambient_c]
        out.append(amps * (max(fractions, default=np.nan) if rows else label_fraction))
    return label.with_values(np.array(out))


def cable_ampacity(parts: Parts, duty: Duty, margins: Margins) -> Rating:
    """Amps each cable carries for ever in this place's air, among its loaded wires, at its terminals' limit."""
    table, rows = _whole(parts)
    amps = _table_ampacity(table, duty.ambient_c.high, duty.together.high, margins.terminal_c)[rows]
    return Rating(amps, parts.evidence_of("area_mm2"), partial(traces.ampacity, parts, duty, margins))


@lru_cache(maxsize=256)
def _table_ampacity(table: Parts, ambient_c: float, together: float, terminal_c: float) -> Column:
    """Work a whole table out once: a loom asks for the same few ambients and bundles again and again."""
    from bom.physics.ampacity import ampacity_a

    unknown = [name == "" for name in table.word("insulation")]
    answer = ampacity_a(
        area_mm2=table.number("area_mm2"),
        conductor_mm=table.number("conductor_mm"),
        outside_mm=table.number("outside_mm"),
        resistance_20_mohm_per_m=table.number("resistance_mohm_per_m"),
        cable_max_c=table.number("conductor_max_c"),
        terminal_max_c=terminal_c,
        ambient_c=ambient_c,
        insulation=[name or "PVC" for name in table.word("insulation")],
        loaded_wires=together,
    )
    return np.where(unknown, np.nan, np.atleast_1d(answer))


def drop_v(parts: Parts, duty: Duty, margins: Margins) -> Rating:
    """Volts each cable loses at this place's running amps, at the lower of its own and its terminals' heat limit."""
    from bom.physics.conductor import hot_resistance_ohm

    limit = np.nan_to_num(parts.number("conductor_max_c"), nan=margins.terminal_c)
    ohm = hot_resistance_ohm(
        resistance_20_mohm_per_m=parts.number("resistance_mohm_per_m"),
        length_m=duty.length_m.high,
        temperature_c=np.minimum(limit, margins.terminal_c),
    )
    return parts.rating("resistance_mohm_per_m").with_values(
        ohm * duty.carry_a.high, partial(traces.drop, parts, duty, margins)
    )
