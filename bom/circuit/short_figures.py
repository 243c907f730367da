"""The figures of a short that ends badly, with where they come from, for a finding and for those who ask."""

from math import log

from bom import units
from bom.circuit.fault import Fault, Hot
from bom.circuit.fault_network import PACK
from bom.judge.loom_view import SOLVED_BY, LoomView, solved
from bom.physics.adiabatic import COPPER_FACTOR_A_S05_MM2, COPPER_INFERRED_ZERO_C
from bom.physics.conductor import COPPER_CONDUCTIVITY_M_PER_OHM_MM2
from bom.span import Span
from bom.trace import Origin, step

ALIKE = 0.99  # of the printed time: a difference that nobody reads


def fuse_time(view: LoomView, fault: Fault, hot: Hot) -> Span:
    """Give the seconds for which the fuse lets the short's amps heat the wire.

    At amps between two printed points an element melts on no more heat than at the lower one, so that this may be less
    than the opening time printed for the lower one.
    """
    where = f"short at {fault.point} to {fault.to}, {hot.amps:.3g} A in the {hot.wire}"
    printed = f"the {fault.fuse} opens within {units.show(fault.latest_s, 'time')} by its printed times"
    return solved(hot.time_s, "time", f"heat that the {fault.fuse} lets in, as time at these amps; {printed}", where)


def burn_time(view: LoomView, fault: Fault, hot: Hot) -> Span:
    """Give the seconds that the wire stands with no heat leaving it: (k S / I)^2, S the copper its ohms stand for."""
    part = view.parts[hot.wire]
    source = "IEC 60364-4-43 Table 43A, from memory"
    end = Span.fixed(hot.limit_c, "temperature", f"end of a short, {part.word('insulation')[0] or 'not known'}", source)
    start = Span.fixed(hot.rest_c, "temperature", "before it: the lowest of cable and terminals", "as the margins say")
    most = abs(hot.amps - fault.high_a) < abs(hot.amps - fault.low_a)
    amps = amps_figure(view, fault)
    whole = amps.at_high() if most else amps.at_low()
    share = solved(hot.amps / whole.high, "", f"part of it in the {hot.wire}", f"short at {fault.point} to {fault.to}")
    per_m = part.first("resistance_mohm_per_m")
    copper_mm2 = 1000 / (COPPER_CONDUCTIVITY_M_PER_OHM_MM2 * per_m.high)
    value = (COPPER_FACTOR_A_S05_MM2 * copper_mm2 / hot.amps) ** 2
    value *= log((COPPER_INFERRED_ZERO_C + hot.limit_c) / (COPPER_INFERRED_ZERO_C + hot.rest_c))
    return Span.of(
        value,
        "time",
        f"the {hot.wire} burns",
        lambda: step(
            "(226 * 1000 / (58 * r_20) / (I * p)) ** 2 * ln((234.5 + T_end) / (234.5 + T_start))",
            r_20=per_m,
            I=whole,
            p=share,
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


def _opens(fault: Fault) -> str:
    """Say by when a fuse opens: by its printed times, and by the heat that it lets in where that is less."""
    if fault.bursts or fault.unsaid:
        return "blows and may not break it"
    if not fault.opens:
        return "may never open"
    hot = next((hot for hot in (fault.wire, fault.stub) if hot and hot.burns), None)
    if hot is None or not hot.time_s < ALIKE * fault.latest_s:
        return f"opens within {units.show(fault.latest_s, 'time')}"
    heat = f"{units.show(hot.amps, 'current')} for {units.show(hot.time_s, 'time')}"
    return f"opens within {units.show(fault.latest_s, 'time')} by its print, letting in no more heat than {heat}"


def told(fault: Fault) -> str:
    """Put the numbers of a short that ends badly into words."""
    words = [f"fed by the {fault.source}"]
    if fault.fuse:
        words.append(f"{fault.fuse} {_opens(fault)}")
    if fault.fuse and not fault.opens and fault.would_do_a > 0:
        words.append(f"one of {fault.would_do_a:.3g} A or less would")
    words += [
        f"{hot.wire} {'melts' if hot.end_c > 1000 else f'reaches {hot.end_c:.0f} °C'}, stands {hot.limit_c:.0f} °C"
        for hot in (fault.wire, fault.stub)
        if hot and hot.burns and not (fault.bursts or fault.unsaid)
    ]
    return "; ".join(words)
