"""How a rating was reduced to one number, for those who ask; `bom.judge.ratings` makes the numbers.

Each looks at the first part alone: who asks asks about one part.
"""

from collections.abc import Mapping

import numpy as np
import numpy.typing as npt

from bom.duties.model import Duty
from bom.parts import Parts
from bom.physics.conductor import COPPER_ALPHA_PER_K
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Origin, Step, step


def breaking(parts: Parts, limits: Mapping[str, float], amps: float) -> Origin | Step:
    """Name the printed point: the greatest amps at no fewer volts and no shorter time constant."""
    of, asked = parts.ids[0], ", ".join(f"{name} at least {value:g}" for name, value in limits.items())
    if np.isnan(amps):
        return Origin("curve", "breaking_points", of, f"no printed point with {asked}")
    row = next(
        row
        for row in parts.rows("breaking_points", of)
        if row["breaks_a"] == amps and all(float(str(row[name])) >= value for name, value in limits.items())
    )
    point = f"{row['volts_v']:g} V, {row['time_constant_ms']:g} ms, {row['direction']}; {row['evidence']}"
    return Origin("curve", "breaking_points", of, point)


def connector_curve(parts: Parts, area_mm2: float, ambient_c: float, values: npt.NDArray[np.float64]) -> Origin | Step:
    """Name the point of the curve: the largest listed wire not thicker, the next hotter listed air."""
    asked = f"wire no thicker than {area_mm2:g} mm², air at least {ambient_c:g} °C"
    found = "no printed point for " if np.isnan(values[0]) else ""
    return Origin("curve", "connector_amps", parts.ids[0], f"{found}{asked}")


def opening(parts: Parts, name: str, current_a: float, most: float) -> Origin | Step:
    """Show the current as a multiple of the rating, read in the fuse's published time band."""
    rated, band = parts.first("rated_a"), parts.first_word("time_band")
    points = parts.points("fuse_time_bands", str(band.value), "multiple", "earliest_s", "latest_s")
    if not points.value or not rated.low > 0:
        return Origin("curve", "fuse_time_bands", str(band.value) or parts.ids[0], "no time limits of this fuse")
    current = Span.fixed(current_a, "current", "current it is asked about", "as named in the finding")
    multiple = Span.of(
        min(current_a / rated.low, most),
        "",
        "current over rating",
        lambda: step("min(I / I_rated, k_most)", I=current, I_rated=rated, k_most=Span.fixed(most, "", "limits end")),
    )
    return step(f"{name}(multiple, points)", multiple=multiple, points=points)


def converter(parts: Parts, ambient_c: float, label_fraction: float) -> Origin | Step:
    """Show label amps times the curve's share, or times the margin where there is no curve."""
    label, of = parts.first("output_a"), parts.ids[0]
    rows = parts.rows("converter_derating", of)
    if not rows:
        because = "part of the label counted on"
        share = Span.of(label_fraction, "", because, Origin("margin", "converter_label_fraction"))
        return step("k * I_label", k=share, I_label=label)
    shares = [float(str(row["fraction"])) for row in rows if float(str(row["ambient_c"])) >= ambient_c]
    note = (
        f"at the next listed air of at least {ambient_c:g} °C" if shares else f"the curve ends below {ambient_c:g} °C"
    )
    share = Span.of(max(shares, default=np.nan), "", "share kept", Origin("curve", "converter_derating", of, note))
    return step("k * I_label", k=share, I_label=label)


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
        return parts.cell("insulation")()
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
