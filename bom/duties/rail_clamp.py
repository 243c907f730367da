"""What a clamp behind a converter and the converter's tap fuse must end together: a switch that fails short."""

from functools import partial

from bom.duties.circuits import Facts, Needs, converter_amps, rail_ends
from bom.span import Span
from bom.trace import step


def rail_clamp(facts: Facts) -> Needs:
    """Ask quiet on the rail, what 12 V parts bear, and the pack's fault amps at the converter's output."""
    _, high = rail_ends(facts.margins)
    return {
        "rail_high_v": high,
        "parts_v": facts.margins.of("rail_parts_v", "voltage"),
        "fault_low_a": _least_short(facts),
        "fault_high_a": facts.pack.fault_high_a,
    }


def _least_short(facts: Facts) -> Span:
    """Give the least short at the converter's output, through its shorted switch.

    Formula: U_rest over all that lies in its way: the least fault at the tap is U_rest over pack and traction wire;
    the tap's wire at its allowed drop, choke and switch come on top.
    """
    rest, least, margins = facts.pack.lowest_rest_v, facts.pack.fault_low_a, facts.margins
    running, choke = converter_amps(facts).at_high(), margins.of("converter_through_ohm", "resistance")
    drop = margins.of("drop_tap_fraction")
    tap_ohm = drop.low * rest.low / running.high
    tap = Span.of(
        tap_ohm,
        "resistance",
        "tap wire that loses the allowed drop",
        partial(step, "p * U_rest / I", p=drop, U_rest=rest, I=running),
    )
    low, high = (rest.low / (rest.low / amps + tap_ohm + choke.low) for amps in (least.low, least.high))
    return Span(
        low,
        high,
        "current",
        f"short through the converter's shorted switch and the clamp; {least} at the tap",
        least.datum,
        lambda: step("U_rest / (U_rest / I_tap + R_tap + R_choke)", U_rest=rest, I_tap=least, R_tap=tap, R_choke=choke),
    )
