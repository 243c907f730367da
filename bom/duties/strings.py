"""What parallel strings ask of their fuses, and how far apart their volts may be when they are joined."""

from bom.duties.circuits import Facts, Needs
from bom.span import Span
from bom.trace import step


def string_needs(facts: Facts, traction: Needs) -> Needs:
    """Give the duties of a string's fuse: its even share of the amps, and the others' of a fault.

    Once one string's fuse is open the others carry all the amps, and theirs follow: none is made for the whole. Into
    a fault inside one string the others push back: their share of the pack's fault amps.
    """
    count = strings_of(facts)
    share = (count.low - 1) / count.low
    carried: Needs = {
        name: traction[name].scaled(1 / count.low, f"an even share of {count.low:g} strings", "X / N", N=count)
        for name in ("carry_a", "peak_a", "break_a", "reverse_a")
        if name in traction
    }
    pack = facts.pack
    high, low = (
        fault.scaled(share, f"what the other strings push back, of {fault}", "X * (N - 1) / N", N=count)
        for fault in (pack.fault_high_a, pack.fault_low_a)
    )
    return {**traction, **carried, "fault_high_a": high, "fault_low_a": low}


def strings_of(facts: Facts) -> Span:
    """Give the number of strings."""
    return Span.given(float(facts.job.pack.strings), "", "strings in parallel", "pack.strings")


def most_apart_v(facts: Facts) -> Span | None:
    """Give the most volts two strings may differ by when they are joined; None where a figure lacks.

    Formula: dU = I * (R1 + R2), so that at most the charge limit of one string flows between them. The pack's limit
    and resistance are taken to be shared evenly. Leaves out how fast the amps fall as the strings come together.
    """
    pack, limit = facts.pack, facts.job.pack.bms.charge
    if limit is None or not pack.resistance_ohm.known:
        return None
    count, ohm = strings_of(facts), pack.resistance_ohm
    amps = Span.given(limit, "current", "charge limit of the pack", "pack.bms.charge")
    volts = (amps.low / count.low) * 2 * count.low * ohm.low
    because = f"{amps} over {count.low:g} strings, through two strings of {count.low:g} x {ohm}"
    return Span.of(volts, "voltage", because, lambda: step("I / N * 2 * N * R", I=amps, N=count, R=ohm))
