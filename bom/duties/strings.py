"""What parallel strings ask of their fuses, and how far apart their volts may be when they are joined."""

from bom.duties.circuits import Facts, Needs
from bom.span import Span
from bom.trace import step


def string_needs(facts: Facts, traction: Needs) -> Needs:
    """Give the duties of a string's fuse: its even share of the amps, and the faults it sees.

    Once one string's fuse is open the others carry all the amps, and theirs follow: none is made for the whole. Into
    a fault inside one string the others push back: their share of the pack's greatest fault. A short past the fuses,
    on a string's link or ahead of the main fuse, draws one string's share of the least fault through each.
    """
    count, pack = strings_of(facts), facts.pack
    carried: Needs = {
        name: traction[name].scaled(1 / count.low, f"an even share of {count.low:g} strings", "X / N", N=count)
        for name in ("carry_a", "peak_a", "break_a", "reverse_a")
        if name in traction
    }
    most, least = pack.fault_high_a, pack.fault_low_a
    back = (count.low - 1) / count.low
    high = most.scaled(back, f"what the other strings push back, of {most}", "X * (N - 1) / N", N=count)
    low = least.scaled(1 / count.low, f"what one string gives, of {least}", "X / N", N=count)
    return {**traction, **carried, "fault_high_a": high, "fault_low_a": low}


def strings_of(facts: Facts) -> Span:
    """Give the number of strings."""
    return Span.given(float(facts.job.pack.strings), "", "strings in parallel", "pack.strings")


def most_apart_v(facts: Facts) -> Span | None:
    """Give the most volts two strings may differ by when they are joined; None where a figure lacks.

    Formula: dU = I1 * (R1 + R2), so that at most the charge limit of one string flows between them. Shared evenly,
    a string takes I / N of the pack's limit and has N x its resistance: (I / N) * 2 * (N * R) = 2 * I * R, however
    many strings there are. Leaves out how fast the amps fall as the strings come together.
    """
    pack, limit = facts.pack, facts.job.pack.bms.charge
    if limit is None or not pack.resistance_ohm.known:
        return None
    count, ohm = facts.job.pack.strings, pack.resistance_ohm
    amps = Span.given(limit, "current", "charge limit of the pack", "pack.bms.charge")
    because = f"{amps} over {count} strings, through two strings of {count} x {ohm}"
    return Span.of(2 * amps.low * ohm.low, "voltage", because, lambda: step("2 * I * R", I=amps, R=ohm))
