"""The figures of a short that ends badly, with where they come from, for a finding and for those who ask."""

from math import log

from bom.circuit.fault import Fault, Hot
from bom.circuit.fault_network import PACK
from bom.judge.loom_view import SOLVED_BY, LoomView, solved
from bom.physics.adiabatic import COPPER_FACTOR_A_S05_MM2, COPPER_INFERRED_ZERO_C
from bom.physics.conductor import COPPER_CONDUCTIVITY_M_PER_OHM_MM2
from bom.span import Span
from bom.trace import Origin, step


def heat_figure(view: LoomView, fault: Fault, hot: Hot) -> Span:
    """Give the heat that the fuse lets into the wire, in thousands of A2s: the amps squared times their time."""
    where = f"short at {fault.point} to {fault.to}"
    most = abs(hot.amps - fault.high_a) < abs(hot.amps - fault.low_a)
    amps = amps_figure(view, fault)
    whole = amps.at_high() if most else amps.at_low()
    share = solved(hot.amps / whole.high, "", f"part of it in the {hot.wire}", where)
    times = f"in which the {fault.fuse} lets through what its published times allow"
    return Span.of(
        round(hot.amps**2 * hot.time_s / 1000, 1),
        "",
        f"heat in the {hot.wire}",
        lambda: step(
            "rounded((I * p) ** 2 * t / 1000, 1)", I=whole, p=share, t=solved(hot.time_s, "time", times, where)
        ),
    )


def stands_figure(view: LoomView, hot: Hot) -> Span:
    """Give the heat that the wire stands with none leaving it: (k S)^2, S the copper its ohms stand for."""
    part = view.parts[hot.wire]
    per_m = part.first("resistance_mohm_per_m")
    source = "IEC 60364-4-43 Table 43A, from memory"
    end = Span.fixed(hot.limit_c, "temperature", f"end of a short, {part.word('insulation')[0] or 'not known'}", source)
    start = Span.fixed(hot.rest_c, "temperature", "before it: the lowest of cable and terminals", "as the margins say")
    copper_mm2 = 1000 / (COPPER_CONDUCTIVITY_M_PER_OHM_MM2 * per_m.high)
    value = (COPPER_FACTOR_A_S05_MM2 * copper_mm2) ** 2
    value *= log((COPPER_INFERRED_ZERO_C + hot.limit_c) / (COPPER_INFERRED_ZERO_C + hot.rest_c))
    return Span.of(
        round(value / 1000, 1),
        "",
        f"heat the {hot.wire} stands",
        lambda: step(
            "rounded((226 * 1000 / (58 * r_20)) ** 2 * ln((234.5 + T_end) / (234.5 + T_start)) / 1000, 1)",
            r_20=per_m,
            T_end=end,
            T_start=start,
        ),
    )


def amps_figure(view: LoomView, fault: Fault) -> Span:
    """Give the amps of a short: the pack's volts over all the ohms around it; as solved where another source feeds."""
    because, where = "amps of the short", f"short at {fault.point} to {fault.to}"
    if fault.limited or fault.source != PACK:
        return Span(fault.low_a, fault.high_a, "current", because, "", Origin("solved state", where, "", SOLVED_BY))
    pack = view.facts.pack
    low, high = pack.lowest_rest_v, pack.full_charge_v.at_high()
    return Span(
        fault.low_a,
        fault.high_a,
        "current",
        because,
        "",
        lambda: step(
            "U_empty / R_most to U_full / R_least",
            U_empty=low,
            U_full=high,
            R_most=solved(low.low / fault.low_a, "resistance", "pack cold and aged, wires hot, joints worn", where),
            R_least=solved(high.high / fault.high_a, "resistance", "pack new and warm, wires cold, joints good", where),
        ),
    )


def told(fault: Fault) -> str:
    """Put the numbers of a short that ends badly into words."""
    words = [f"fed by the {fault.source}"]
    if fault.fuse:
        opens = f"opens within {fault.latest_s:g} s" if fault.opens else "may never open"
        opens = "blows and may not break it" if fault.bursts or fault.unsaid else opens
        words.append(f"{fault.fuse} {opens}")
    if fault.fuse and not fault.opens and fault.would_do_a > 0:
        words.append(f"one of {fault.would_do_a:.3g} A or less would")
    words += [
        f"{hot.wire} {'melts' if hot.end_c > 1000 else f'reaches {hot.end_c:.0f} °C'}, stands {hot.limit_c:.0f} °C"
        for hot in (fault.wire, fault.stub)
        if hot and hot.burns and not (fault.bursts or fault.unsaid)
    ]
    return "; ".join(words)
