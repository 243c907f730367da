"""A telltale of the indicators must not light the other side.

Asks:     a telltale across left and right leaves the far lamps dark: LED lamps under 2 % of their amps, filaments
          under 30 % of the rail's volts.
Why:      the telltale's amps come home through the far lamps; LED lamps glow from milliamps, so both sides flash.
Harm:     dark.
Says:     fail, can't tell.
Cure:     two diodes from left and right to the telltale and its minus to the rail; or two telltales, one a side.
Ignores:  a cold telltale, which passes more at first; the polarity of an LED telltale, which lights on one side only.
Source:   Kirchhoff's laws on the solved loom; the limits are common practice, an estimate.
"""

from typing import TYPE_CHECKING

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, said, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.loom.diodes import diodes_place
from bom.read.job import Load
from bom.span import Span
from bom.trace import step

if TYPE_CHECKING:
    from bom.circuit.telltale import FarSide

WHAT = "how it is wired"
NEEDED = "the far side dark"
DATUM = "how the {} is wired: one lamp across left and right, or with a minus of its own"


def judge(view: LoomView) -> list[LoomAnswer]:
    """Ask every telltale of the load list."""
    loads = [load for load in view.facts.job.loads if "indicate" in load.on]
    led = any(load.kind == "LED" for load in loads if not load.is_telltale)
    return [_asked(view, load, led=led) for load in loads if load.is_telltale]


def _asked(view: LoomView, load: Load, *, led: bool) -> LoomAnswer:
    if load.is_between:
        return _across(view, load)
    if load.has_diodes:
        return _through_diodes(view, load)
    if load.telltale:
        offers = said(load.telltale, "loads.telltale")
        return LoomAnswer(load.name, Verdict.PASS, WHAT, load.telltale, NEEDED, "it has a minus of its own", "", offers)
    if led and load.pieces == 1:
        return LoomAnswer(load.name, Verdict.CANT_TELL, WHAT, "not said", NEEDED, "LED sides", DATUM.format(load.name))
    because = "each side feeds its own" if load.pieces != 1 else "filament sides: a telltale across them lights neither"
    return LoomAnswer(load.name, Verdict.PASS, WHAT, "not said", NEEDED, because)


def _through_diodes(view: LoomView, load: Load) -> LoomAnswer:
    """Pass it where diodes stand; whether they carry and block is asked of them."""
    place, offers = diodes_place(load), said("through two diodes", "loads.telltale")
    if place not in view.parts:
        told, datum = "nothing stands for its diodes", f"the part for {place}"
        return LoomAnswer(load.name, Verdict.CANT_TELL, WHAT, "through two diodes", NEEDED, told, datum, offers)
    name = view.parts[place].word("name")[0]
    told = f"{name}: a diode of the far side blocks, and its minus is its own"
    return LoomAnswer(load.name, Verdict.PASS, WHAT, "through two diodes", NEEDED, told, "", offers)


def _across(view: LoomView, load: Load) -> LoomAnswer:
    """Read the far side off the solved states."""
    far = view.walks.far_side
    if far is None:
        told = "no state that indicates could be solved"
        return LoomAnswer(load.name, Verdict.CANT_TELL, WHAT, load.telltale or "", NEEDED, told, "a state that stands")
    glows, limit = _glow(view, far)
    verdict = Verdict.FAIL if glows.low > limit.low else Verdict.PASS
    what = "amps" if far.kind == "LED" else "volts"
    because = f"{far.state}: {units.show(far.amps, 'current')} at {units.show(far.volts, 'voltage')}"
    return LoomAnswer(
        load.name,
        verdict,
        f"share of their {what} that the far {far.load} get",
        f"{glows.low:.0%}",
        f"at most {limit.low:.0%}",
        because,
        "",
        glows,
        limit,
    )


def _glow(view: LoomView, far: "FarSide") -> tuple[Span, Span]:
    """Give the share that decides whether the far lamp is seen, and its limit."""
    margins, budget = view.facts.margins, view.facts.budget
    if far.kind == "LED":
        own = Span.fixed(budget.loads[far.load].amps, "current", f"its own amps, {far.load} of one side")
        here = solved(far.amps, "current", f"amps of the far {far.load}", far.state)
        share = Span.of(far.amps_share, "", "share of its amps", lambda: step("I / I_own", I=here, I_own=own))
        return share, margins.of("far_light_fraction")
    volts = solved(far.volts, "voltage", f"volts at the far {far.load}", far.state)
    rail = margins.of("rail_volts", "voltage")
    share = Span.of(far.volts_share, "", "share of the rail", lambda: step("U / U_rail", U=volts, U_rail=rail))
    return share, margins.of("far_volts_fraction")


RULE = LoomRule(judge)
