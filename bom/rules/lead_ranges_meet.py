"""What one lead gives, the other must be able to read.

Asks:     one lead gives and the other takes the same kind of signal; a throttle's range overlaps the
          controller's, rests at or below its start and reaches its full throttle; a supply stays inside the window
          of what it feeds.
Why:      a grip that rests above the controller's start drives off by itself; one that ends below never gives full
          power; two inputs joined do nothing, and a ground-active input joined to ground is always on.
Harm:     runaway.
Says:     fail, can't tell, tight.
Cure:     the controller's own setting of throttle start and end, or another grip; the other brake input.
Ignores:  pulses and data, whose makers say what they read; throttles that a controller learns by itself.
Source:   hall throttles give 0.8 to 4.2 V on a 5 V supply, common practice, no source.
"""

from collections.abc import Iterator

from bom.judge.lead_figures import signal_of, unknown_volts, volts_of
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.leads.model import End, Join
from bom.span import Span

ANALOGUE = "5 V analogue"
FED = ("feed", "enable", "high-active")
KIND = "kind of signal"
RANGE, REST, FULL, WINDOW, DRIVEN = (
    "range",
    "volts at rest",
    "volts wide open",
    "supply inside its window",
    "what drives it",
)


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare every joint of which both signals are known."""
    return [answer for join in view.loom.leads.joins for answer in _joint(join, view)]


def _joint(join: Join, view: LoomView) -> Iterator[LoomAnswer]:
    giver, taker = join.with_role("gives"), join.with_role("takes")
    if giver and taker:
        yield from _given(join, giver, taker, view)
    elif taker and not giver:
        yield from _driven(join, taker, view)
    elif join.first.role == join.second.role == "takes":
        needs = signal_of(join.second)
        yield LoomAnswer(
            join.name, Verdict.FAIL, DRIVEN, "nothing", "a lead that gives", "both are inputs", "", None, needs
        )


def _given(join: Join, giver: End, taker: End, view: LoomView) -> Iterator[LoomAnswer]:
    """Compare what one lead gives with what the other takes."""
    if giver.signal == taker.signal == ANALOGUE:
        yield from _analogue(join, giver, taker, view)
    elif giver.signal.endswith("supply") and taker.signal.endswith(FED):
        yield from _supply(join, giver, taker, view)
    else:
        offers, needs = signal_of(giver), signal_of(taker)
        verdict = Verdict.PASS if giver.signal == taker.signal else Verdict.FAIL
        yield LoomAnswer(join.name, verdict, KIND, offers.text, needs.text, "as the job says", "", offers, needs)


def _unknown(join: Join, what: str, ends: tuple[End, End], view: LoomView) -> Iterator[LoomAnswer]:
    """Name each figure that is not known."""
    for end in ends:
        for span, word in zip(volts_of(end, view.facts), ("least", "most"), strict=True):
            if span is None:
                datum = unknown_volts(end, word)
                yield LoomAnswer(join.name, Verdict.CANT_TELL, what, "not known", "both ranges", f"{end.name}", datum)


def _analogue(join: Join, giver: End, taker: End, view: LoomView) -> Iterator[LoomAnswer]:
    (low, high), (start, full) = volts_of(giver, view.facts), volts_of(taker, view.facts)
    if low is None or high is None or start is None or full is None:
        yield from _unknown(join, RANGE, (giver, taker), view)
        return
    if high.high < start.low:
        yield _answer(join, RANGE, Verdict.FAIL, high, start, "at least", "it never starts to drive")
        return
    if low.low > full.high:
        yield _answer(join, RANGE, Verdict.FAIL, low, full, "at most", "it stands above full throttle at rest")
        return
    rests, opens = low.high <= start.low, high.low >= full.high
    because = "stands below the start" if rests else "drives off with the throttle shut"
    yield _answer(join, REST, Verdict.PASS if rests else Verdict.FAIL, low, start, "at most", because)
    because = "reaches full throttle" if opens else "never reaches full throttle"
    yield _answer(join, FULL, Verdict.PASS if opens else Verdict.TIGHT, high, full, "at least", because)


def _supply(join: Join, giver: End, taker: End, view: LoomView) -> Iterator[LoomAnswer]:
    (low, high), (least, most) = volts_of(giver, view.facts), volts_of(taker, view.facts)
    if low is None or high is None or least is None or most is None:
        yield from _unknown(join, WINDOW, (giver, taker), view)
        return
    for offered, needed, sense, good, bad in (
        (low, least, "at least", low.low >= least.high, low.high < least.low),
        (high, most, "at most", high.high <= most.low, high.low > most.high),
    ):
        verdict = Verdict.PASS if good else Verdict.FAIL if bad else Verdict.CANT_TELL
        datum = "" if verdict is not Verdict.CANT_TELL else offered.datum or needed.datum
        answer = _answer(join, WINDOW, verdict, offered, needed, sense, offered.because)
        yield LoomAnswer(**{**vars(answer), "datum": datum})


def _answer(
    join: Join, what: str, verdict: Verdict, offered: Span, needed: Span, sense: str, because: str
) -> LoomAnswer:
    return LoomAnswer(
        join.name, verdict, what, str(offered), f"{sense} {needed}", because, "", offers=offered, needs=needed
    )


def _driven(join: Join, taker: End, view: LoomView) -> Iterator[LoomAnswer]:
    """An input wants something that moves it: a contact to ground, or a contact that brings its volts."""
    other = join.second if taker == join.first else join.first
    needs = signal_of(taker)
    if other.role == "ground":
        because = "an input on a ground is always on, or never"
        yield LoomAnswer(join.name, Verdict.FAIL, DRIVEN, "a ground", needs.text, because, "", None, needs)
    elif other.role == "contact" and taker.signal != "ground-active":
        yield _fed(join, taker, other, view)


def _fed(join: Join, taker: End, contact: End, view: LoomView) -> LoomAnswer:
    """Look for what brings volts to the far side of a contact."""
    needs = signal_of(taker)
    if contact.outside:
        datum = f"what the other side of the {contact.device} is joined to"
        return LoomAnswer(
            join.name, Verdict.CANT_TELL, DRIVEN, "not known", needs.text, "a bare contact", datum, None, needs
        )
    beyond = [end for join in view.loom.leads.other_contacts(contact) for end in join.ends]
    fed = any(end.role == "gives" for end in beyond)
    offered = "fed through its contact" if fed else "a contact that nothing feeds"
    verdict = Verdict.PASS if fed else Verdict.FAIL
    return LoomAnswer(join.name, verdict, DRIVEN, offered, needs.text, f"the {contact.name}", "", None, needs)


RULE = LoomRule(judge)
