"""A short anywhere must open its fuse before a wire burns.

Asks:     with a short at each point, to its return and to the frame, a fuse has surely opened before the hottest
          wire passes what its insulation stands; or what the converter feeds is carried for ever.
Why:      a wire that burns takes the loom, and what it lies on, with it.
Cure:     a thicker wire, a faster or smaller fuse; a stub as short as can be, in a sleeve of its own.
Ignores:  arcs that limit the current and never open a fuse; the battery management, which may open sooner.
Source:   IEC 60364-4-43 434.5.2 and IEC 60949 (heat), fuse time bounds of ISO 8820-3 and makers; from memory and read
          second-hand on public pages; as for each fuse.
"""

from collections.abc import Sequence

from bom.circuit.fault import End, Fault
from bom.circuit.fault_network import PACK
from bom.judge.loom_view import SOLVED_BY, LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import Origin, step

VERDICTS = {
    End.BURNS: Verdict.FAIL,
    End.NOT_KNOWN: Verdict.CANT_TELL,
    End.NEVER: Verdict.TIGHT,
    End.LETS_GO: Verdict.TIGHT,
    End.STUB: Verdict.TIGHT,
}
NEEDED = "a fuse that opens first"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Tell the worst short of each way to end badly, and how many end so."""
    faults = [fault for fault in view.walks.faults if not fault.fuse or fault.fuse in view.parts]  # else told already
    answers = [
        _answer(view, end, verdict, [fault for fault in faults if fault.end == end])
        for end, verdict in VERDICTS.items()
        if any(fault.end == end for fault in faults)
    ]
    if answers or not faults:
        return answers
    because = f"{len(faults)} shorts walked"
    return [LoomAnswer("whole loom", Verdict.PASS, "every short", "cleared or carried", NEEDED, because)]


def _answer(view: LoomView, end: End, verdict: Verdict, faults: Sequence[Fault]) -> LoomAnswer:
    worst = max(faults, key=_badness)
    subject = worst.point if len(faults) == 1 else f"{worst.point} and {len(faults) - 1} more"
    datum = f"opening times of the {worst.fuse}, or the converter's limit" if end == End.NOT_KNOWN else ""
    offers = _amps(view, worst)
    offered = f"{end.word} ({offers})"
    return LoomAnswer(subject, verdict, f"short to {worst.to}", offered, NEEDED, told(worst), datum, offers)


def _amps(view: LoomView, fault: Fault) -> Span:
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


def _badness(fault: Fault) -> float:
    return max((hot.end_c - hot.limit_c for hot in (fault.wire, fault.stub) if hot), default=fault.high_a)


def told(fault: Fault) -> str:
    """Put the numbers of a short that ends badly into words."""
    words = [f"fed by the {fault.source}"]
    if fault.fuse:
        opens = f"opens within {fault.latest_s:g} s" if fault.opens else "may never open"
        words.append(f"{fault.fuse} {opens}")
    if fault.fuse and not fault.opens and fault.would_do_a > 0:
        words.append(f"one of {fault.would_do_a:.3g} A or less would")
    words += [
        f"{hot.wire} {'melts' if hot.end_c > 1000 else f'reaches {hot.end_c:.0f} °C'}, stands {hot.limit_c:.0f} °C"
        for hot in (fault.wire, fault.stub)
        if hot and hot.burns
    ]
    return "; ".join(words)


RULE = LoomRule(judge)
