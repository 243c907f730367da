"""What a buffer battery must hold so that the lamps burn on after the pack lets go."""

from functools import partial
from typing import TYPE_CHECKING

from bom.duties.load_traces import loads_together
from bom.span import Span
from bom.trace import step

if TYPE_CHECKING:
    from bom.duties.circuits import Facts

LIT = {"night", "brake"}
MINUTES_AN_HOUR = 60.0


def lit_by_night(facts: "Facts") -> list[str]:
    """Name the loads that go dark with the pack: all that is on by night or at the brake, and lamps on all day."""
    loads = facts.job.loads
    return [load.name for load in loads if load.burns_by_night or LIT & set(load.on)]


def lit_amps(facts: "Facts") -> Span:
    """Add the amps of those loads."""
    names = lit_by_night(facts)
    amps = facts.budget.amps(names)
    return Span.of(amps, "current", "loads lit by night", partial(loads_together, facts, names))


def after_trip_ah(facts: "Facts") -> Span:
    """Give the amp-hours that light them until the bike stands somewhere safe.

    Formula: amps x minutes / 60 x a factor for age, cold and what is never taken out of a small battery.
    """
    lit, margins = lit_amps(facts), facts.margins
    minutes, factor = margins.of("light_after_trip_min"), margins.of("light_after_trip_factor")
    return Span.of(
        lit.low * minutes.low / MINUTES_AN_HOUR * factor.low,
        "charge",
        f"{lit} for {minutes.low:g} min x {factor.low:g}",
        lambda: step("I * t / 60 * k", I=lit, t=minutes, k=factor),
    )
