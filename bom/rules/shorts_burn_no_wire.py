"""A short anywhere must open its fuse before a wire burns.

Asks:     with a short at each point, to its return and to the frame, a fuse has surely opened before the hottest
          wire passes what its insulation stands, and breaks what it opened on; or what the converter feeds is carried
          for ever. A fuse short of DC volts or breaking amps opens nothing.
Why:      a wire that burns takes the loom, and what it lies on, with it.
Harm:     fire.
Says:     fail, can't tell, tight.
Cure:     a thicker wire, a smaller or faster fuse; where the converter lets go a larger one of constant current.
Ignores:  arcs that limit the current and never open a fuse; the battery management, which may open sooner; shorts
          whose way lies through an open place.
Source:   IEC 60364-4-43 434.5.2 and IEC 60949 (heat), fuse time bounds of ISO 8820-3 and makers; from memory and read
          second-hand on public pages; as for each fuse.
"""

from collections.abc import Sequence
from math import isfinite, isnan

from bom import units
from bom.circuit.fault import COMMON_MINUS, TO_FRAME, End, Fault, Hot
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.model import SLEEVING

VERDICTS = {
    End.BURSTS: Verdict.FAIL,
    End.BURNS: Verdict.FAIL,
    End.NOT_KNOWN: Verdict.CANT_TELL,
    End.NEVER: Verdict.TIGHT,
    End.LETS_GO: Verdict.TIGHT,
    End.STUB: Verdict.TIGHT,
}
NEEDED = "a fuse that opens first"
CURES = {
    End.BURSTS: "a fuse that breaks these DC volts and amps by its print.",
    End.BURNS: "a thicker wire, a smaller or faster fuse.",
    End.NOT_KNOWN: "find the fuse's opening times, or the converter's limit; or put in one whose sheet prints them.",
    End.NEVER: "a smaller fuse.",
    End.LETS_GO: "a larger converter of constant current, so that the short's own fuse opens and the rest stays lit.",
}


def judge(view: LoomView) -> list[LoomAnswer]:
    """Tell the worst short of each way to end badly, and how many end so."""
    faults = view.walks.faults
    groups = {(end, fuse): list[Fault]() for end in VERDICTS for fuse in dict.fromkeys(map(_blamed, faults))}
    for fault in faults:
        if fault.end in VERDICTS:
            groups[fault.end, _blamed(fault)].append(fault)
    answers = [_answer(view, end, VERDICTS[end], alike) for (end, _), alike in groups.items() if alike]
    if answers or not faults:
        return answers
    because = f"{len(faults)} shorts walked"
    return [LoomAnswer("whole loom", Verdict.PASS, "every short", "cleared or carried", NEEDED, because)]


def _blamed(fault: Fault) -> str:
    """Name the fuse that blows and does not break, or is not known to: each is a trouble of its own."""
    return fault.fuse if fault.bursts or fault.unsaid else ""


def _answer(view: LoomView, end: End, verdict: Verdict, faults: Sequence[Fault]) -> LoomAnswer:
    from bom.circuit.short_figures import amps_figure, burn_time, fuse_time, told

    worst = max(faults, key=_badness)
    subject = worst.point if len(faults) == 1 else f"{worst.point} and {len(faults) - 1} more"
    datum = _datum(worst)
    burnt = [hot for hot in (worst.wire, worst.stub) if hot and hot.burns and not _blamed(worst)]
    hot = next((hot for hot in burnt if isfinite(hot.time_s + hot.burns_s) and hot.wire in view.parts), None)
    if hot:
        burns, lasts = burn_time(view, worst, hot), fuse_time(view, worst, hot)
        offered = f"a short to {worst.to} burns it in {units.show(burns.high, 'time')}"
        needed = f"the {worst.fuse} open by then: it lets in the heat of {units.show(lasts.high, 'time')}"
        found = (offered, needed, told(worst), datum, burns, lasts)
        fault, cure = _at_fault(worst, verdict), _cure(view, worst)
        return LoomAnswer(subject, verdict, _copper(view, worst, hot), *found, fault, cure)
    offers = amps_figure(view, worst)
    offered = f"{end.word}: {worst.bursts}" if worst.bursts else f"{end.word} ({offers})"
    met = (f"short to {worst.to}", offered, NEEDED, told(worst), datum, offers)
    return LoomAnswer(subject, verdict, *met, at_fault=_at_fault(worst, verdict), cure=_cure(view, worst))


def _copper(view: LoomView, fault: Fault, hot: Hot) -> str:
    """Name a wire that burns with its copper, and whether no fuse guards it."""
    area = float(view.parts[hot.wire].number("area_mm2")[0])
    copper = "" if isnan(area) else f", {units.show(area, 'area')}"
    return f"{hot.wire}{copper}{', ahead of its fuse' if hot == fault.stub else ''}"


def _stub_cure(view: LoomView, stub: Hot) -> str:
    """Tell what is left to do for a stub: nothing is bought twice, and one laid short needs no shortening."""
    length_m, limit_m = view.loom.wire(stub.wire).length_m, view.facts.margins.unfused_m
    keep = "keep it at most" if length_m <= limit_m else "shorten it to at most"
    most = units.show(min(length_m, limit_m), "length")
    return f"{keep} {most}, in a sleeve of its own{', which is on the bill' if SLEEVING in view.parts else ''}."


def _cure(view: LoomView, fault: Fault) -> str:
    """Say what helps against the way a short ends."""
    if fault.unsaid and fault.end == End.NOT_KNOWN:
        return f"find the {fault.unsaid} of the {fault.fuse}, or put in one whose sheet prints them."
    if fault.end == End.NEVER and fault.would_do_a > 0:
        return f"a {fault.fuse} of {fault.would_do_a:.3g} A or less, if it still holds the load."
    if fault.end == End.STUB and fault.stub:
        return _stub_cure(view, fault.stub)
    if fault.end == End.BURNS and COMMON_MINUS in fault.path:
        return "a converter whose input is isolated from its output: pack plus on the frame then closes no circuit."
    return CURES[fault.end]


def _datum(fault: Fault) -> str:
    """Name the figure that would tell how a short ends, "" where that is known."""
    if fault.end != End.NOT_KNOWN:
        return ""
    if fault.unsaid:
        return f"{fault.unsaid} of the {fault.fuse}"
    return f"opening times of the {fault.fuse}, or the converter's limit"


def _at_fault(fault: Fault, verdict: Verdict) -> tuple[str, ...]:
    """Name the fuse, what burns, and the converter that feeds it, or that joins the frame to the pack.

    Where it is tight the fuse did what it can.
    """
    if _blamed(fault):
        return (fault.fuse,)
    feeds = ("converter",) if fault.source == "converter" else ()
    burnt = tuple(hot.wire for hot in (fault.wire, fault.stub) if hot and hot.burns)
    if verdict <= Verdict.TIGHT:
        return (*burnt, *feeds)
    joins = "converter" if fault.to == TO_FRAME and not feeds else ""
    return tuple(filter(None, (*feeds, fault.fuse, *burnt, joins)))


def _badness(fault: Fault) -> float:
    return max((hot.end_c - hot.limit_c for hot in (fault.wire, fault.stub) if hot), default=fault.high_a)


RULE = LoomRule(judge)
