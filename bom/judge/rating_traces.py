"""How a rating was reduced to one number, for those who ask; `bom.judge.ratings` makes the numbers.

Each looks at the first part alone: who asks asks about one part.
"""

from collections.abc import Mapping

import numpy as np

from bom.duties.model import Duty
from bom.parts import DONOR, Parts
from bom.physics.conductor import COPPER_ALPHA_PER_K
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Fact, Origin, Step, step

# Ways of knowing that somebody else than this workshop stands behind, in print.
PRINTED = ("data sheet", "marked")


def counted_points(parts: Parts, index: int, wanted: tuple[str, ...], *, by_print: bool) -> list[Mapping[str, object]]:
    """List the breaking points of one part that count; by_print: of the donor's own, those that are printed."""
    only_print = by_print and parts.is_donor(index)
    return [
        row
        for row in parts.rows("breaking_points", parts.ids[index])
        if row["direction"] in wanted and (not only_print or row["evidence"] in PRINTED)
    ]


def breaking(parts: Parts, volts: Span, time_constant: Span, wanted: tuple[str, ...], *, by_print: bool) -> Step:
    """Show the greatest printed amps at no fewer volts and no shorter time constant."""
    rows = counted_points(parts, 0, wanted, by_print=by_print)
    table = sorted(
        (_number(row["volts_v"]), _number(row["time_constant_ms"]), _number(row["breaks_a"])) for row in rows
    )
    text = "; ".join(f"{amps:g} A at {volt:g} V, {ms:g} ms" for volt, ms, amps in table)
    points = Fact(text or "none printed", table, _curve_of(parts, "breaking_points"))
    return step("printed_break(U, t, points)", U=volts.at_high(), t=time_constant.at_high(), points=points)


def _number(cell: object) -> float:
    return float(str(cell))


def _curve_of(parts: Parts, curve: str) -> Origin:
    """Name a curve of the first part; a donor's own is what the job says of it."""
    if parts.is_donor(0):
        return Origin("donor", curve, parts.ids[0].removeprefix(DONOR))
    return Origin("curve", curve, parts.ids[0])


def connector_curve(connector: Parts, wire: Parts, air: Span, amps: float) -> Span:
    """Show the point of the curve: the largest listed wire not thicker, the next hotter listed air."""
    points = connector.points("connector_amps", connector.ids[0], "area_mm2", "ambient_c", "carry_a")
    area = wire.first("area_mm2")
    return Span.of(
        amps,
        "current",
        "of its curve with this wire in this air",
        lambda: step("curve_amps(A, T, points)", A=area, T=air.at_high(), points=points),
    )


def opening(parts: Parts, name: str, current: Span, most: float) -> Origin | Step:
    """Show the current as a multiple of the rating, read in the fuse's published time band."""
    rated, band = parts.first("rated_a"), parts.first_word("time_band")
    points = parts.points("fuse_time_bands", str(band.value), "multiple", "earliest_s", "latest_s")
    if not points.value or not rated.low > 0:
        return Origin("curve", "fuse_time_bands", str(band.value) or parts.ids[0], "no time limits of this fuse")
    end = Span.fixed(most, "", "multiple at which limits end", "no published limits beyond")
    multiple = Span.of(
        min(current.low / rated.low, most),
        "",
        "current over rating",
        lambda: step("min(I / I_rated, k_most)", I=current, I_rated=rated, k_most=end),
    )
    return step(f"{name}(multiple, points)", multiple=multiple, points=points)


def converter(parts: Parts, air: Span, margins: Margins) -> Step:
    """Show label amps times the curve's share, or times the margin where there is no curve."""
    label, of = parts.first("output_a"), parts.ids[0]
    if not parts.rows("converter_derating", of):
        return step("k * I_label", k=margins.of("converter_label_fraction"), I_label=label)
    points = parts.points("converter_derating", of, "ambient_c", "fraction")
    return step("share_at(T, points) * I_label", T=air.at_high(), points=points, I_label=label)


def fuse_rerating(parts: Parts, air: Span, value: float) -> Span:
    """Show the share of its rating a fuse keeps in warm air."""
    curve = parts.first_word("rerating")
    points = parts.points("fuse_rerating", str(curve.value), "ambient_c", "fraction")
    if np.isnan(value):
        note = f"no curve that reaches {air}"
        return Span.of(value, "", "share kept", Origin("curve", "fuse_rerating", str(curve.value), note))
    return Span.of(value, "", "share kept in warm air", lambda: step("rerating(T, points)", T=air, points=points))


def sure_multiple(parts: Parts, margins: Margins, value: float, *, printed: bool) -> Span:
    """Show the multiple of its rating that surely opens a fuse: of its time band, else the margin."""
    if not printed:
        return margins.of("fuse_source_multiple")
    band = str(parts.first_word("time_band").value)
    points = parts.points("fuse_time_bands", band, "multiple", "earliest_s", "latest_s")
    within = margins.of("fuse_open_s", "time")
    return Span.of(value, "", "x rating", lambda: step("sure_multiple(t, points)", t=within, points=points))


def ampacity(parts: Parts, duty: Duty, margins: Margins) -> Origin | Step:
    """Show what the ampacity of a cable was worked out from."""
    if not parts.first_word("insulation").value:
        return parts.decided_by("insulation")()
    return step(
        "ampacity(A, d, D, r_20, T_most, T_end, T_air, insulation, n)",
        A=parts.first("area_mm2"),
        d=parts.first("conductor_mm"),
        D=parts.first("outside_mm"),
        r_20=parts.first("resistance_mohm_per_m"),
        T_most=parts.first("conductor_max_c"),
        T_end=margins.of("terminal_c", "temperature"),
        T_air=duty.ambient_c.at_high(),
        insulation=parts.first_word("insulation"),
        n=duty.together.at_high(),
    )


def drop(parts: Parts, duty: Duty, margins: Margins) -> Step:
    """Show running amps times the hot resistance of the wire."""
    limit, end = parts.first("conductor_max_c"), margins.of("terminal_c", "temperature")
    known = not np.isnan(limit.low)
    hot = Span.of(
        min(limit.low, end.low) if known else end.low,
        "temperature",
        "of the metal",
        lambda: step("min(T_most, T_end)", T_most=limit, T_end=end) if known else step("T_end", T_end=end),
    )
    return step(
        "r_20 / 1000 * L * (1 + a * (T - 20)) * I",
        r_20=parts.first("resistance_mohm_per_m"),
        L=duty.length_m.at_high(),
        a=Span.fixed(COPPER_ALPHA_PER_K, "", "of copper, for each degree", "IEC 60028, from memory"),
        T=hot,
        I=duty.carry_a.at_high(),
    )
