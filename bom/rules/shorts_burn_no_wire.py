"""A short anywhere must open its fuse before a wire burns.

Asks:     with a short at each point, to its return and to the frame, a fuse has surely opened before the hottest
          wire passes what its insulation stands; or what the converter feeds is carried for ever.
Why:      a wire that burns takes the loom, and what it lies on, with it.
Harm:     fire.
Says:     fail, can't tell, tight.
Cure:     a thicker wire, a faster or smaller fuse; a stub as short as can be, in a sleeve of its own.
Ignores:  arcs that limit the current and never open a fuse; the battery management, which may open sooner.
Source:   IEC 60364-4-43 434.5.2 and IEC 60949 (heat), fuse time bounds of ISO 8820-3 and makers; from memory and read
          second-hand on public pages; as for each fuse.
"""

from collections.abc import Sequence
from math import isfinite

from bom.circuit.fault import TO_FRAME, End, Fault
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict

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
    from bom.circuit.short_figures import amps_figure, heat_figure, stands_figure, told

    worst = max(faults, key=_badness)
    subject = worst.point if len(faults) == 1 else f"{worst.point} and {len(faults) - 1} more"
    datum = f"opening times of the {worst.fuse}, or the converter's limit" if end == End.NOT_KNOWN else ""
    burnt = [hot for hot in (worst.wire, worst.stub) if hot and hot.burns]
    hot = next((hot for hot in burnt if isfinite(hot.time_s) and hot.wire in view.parts), None)
    if hot:
        heat, stands = heat_figure(view, worst, hot), stands_figure(view, hot)
        offered, needed = f"{end.word}: {heat.high:g} kA²s", f"at most {stands.high:g} kA²s"
        found = (offered, needed, told(worst), datum, heat, stands)
        return LoomAnswer(subject, verdict, f"short to {worst.to}", *found, _at_fault(worst, verdict))
    offers = amps_figure(view, worst)
    offered = f"{end.word} ({offers})"
    met = (f"short to {worst.to}", offered, NEEDED, told(worst), datum, offers)
    return LoomAnswer(subject, verdict, *met, at_fault=_at_fault(worst, verdict))


def _at_fault(fault: Fault, verdict: Verdict) -> tuple[str, ...]:
    """Name the fuse, what burns, and the converter that feeds it, or that joins the frame to the pack.

    Where it is tight the fuse did what it can.
    """
    feeds = ("converter",) if fault.source == "converter" else ()
    burnt = tuple(hot.wire for hot in (fault.wire, fault.stub) if hot and hot.burns)
    if verdict <= Verdict.TIGHT:
        return (*burnt, *feeds)
    joins = "converter" if fault.to == TO_FRAME and not feeds else ""
    return tuple(filter(None, (*feeds, fault.fuse, *burnt, joins)))


def _badness(fault: Fault) -> float:
    return max((hot.end_c - hot.limit_c for hot in (fault.wire, fault.stub) if hot), default=fault.high_a)


RULE = LoomRule(judge)
