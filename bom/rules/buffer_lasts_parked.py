"""A buffer battery that feeds a parked bike must last as long as the pack would.

Asks:     where the converter is off with the key, what stays on at 12 V and what leaks back into the converter's
          output take longer than 30 days for half of the buffer battery; a leak on the seller's word is tight.
Why:      the key wakes the converter from this battery: once it is flat, nothing wakes the bike. An output without
          a diode took 400 mA back: a battery of 22 Ah was flat in two days.
Harm:     stranded.
Says:     can't tell, tight.
Cure:     a converter with a small output leak, or a relay or ideal diode at its output; a load that stays on behind the
          key, a larger battery, or a converter that is always on.
Ignores:  self-discharge of the battery and its age.
Source:   common practice, no source; a lead battery is kept above half.
"""

from math import inf, isnan

from bom import units
from bom.judge.buffer_drain import BufferDrain, buffer_drain, rests_parked
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step

HOURS_A_DAY = 24.0
SHORT_DAYS = 3.0  # below this the hours are printed
BATTERY = "buffer battery"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Count the days that half of the battery lasts."""
    if not rests_parked(view) or BATTERY not in view.parts:
        return []
    margins, drain = view.facts.margins, buffer_drain(view)
    wanted, share = margins.drain_days, margins.buffer_fraction
    capacity = view.parts[BATTERY].first("capacity_ah")
    needed, what = f"at least {wanted:g} days", f"days to lose {share:.0%}"
    because = f"{units.show(drain.amps, 'current')} from the buffer battery with the key off: {drain.figure.because}"
    needs = margins.of("drain_days")
    unknown = "the part's capacity" if isnan(capacity.low) else drain.unknown
    if unknown:
        return [LoomAnswer(BATTERY, Verdict.CANT_TELL, what, "not known", needed, because, unknown, needs=needs)]
    days = share * capacity.low / drain.amps / HOURS_A_DAY if drain.amps else inf
    clean = days >= wanted and not drain.hearsay
    offers = _days(view, days, drain, capacity)
    verdict = Verdict.PASS if clean else Verdict.TIGHT
    return [LoomAnswer(BATTERY, verdict, what, _shown(days), needed, because, offers=offers, needs=needs)]


def _shown(days: float) -> str:
    """Print days, or full hours where it is flat before the week-end is over."""
    return f"{int(days * HOURS_A_DAY)} h" if days < SHORT_DAYS else f"{min(days, 9999):.0f} days"


def _days(view: LoomView, days: float, drain: BufferDrain, capacity: Span) -> Span:
    """Give the days with how they were worked out."""
    if not drain.amps:
        return Span.fixed(days, "", "days: nothing at 12 V stays on")
    share = view.facts.margins.of("buffer_fraction")
    return Span.of(days, "", "days", lambda: step("k * C / I / 24", k=share, C=capacity, I=drain.figure))


RULE = LoomRule(judge)
