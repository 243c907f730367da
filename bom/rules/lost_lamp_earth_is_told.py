"""A lamp that loses its earth must not light the lamps beside it.

Asks:     with each return open that lights of different feeds share, a wire or a housing's body, no lamp gets more
          than a tenth of the rail's volts, forwards while it is off, or backwards whether it is on or off.
Why:      the current looks for another way home: dim glow, wrong blink, and hours spent on switch and flasher.
Cure:     a return of its own for each housing; ohms from the frame to each lamp body under the bar of the build
          sheet.
Harm:     dark.
Says:     tight.
Ignores:  a tenth or less, either way, which hardly glows; filaments are taken as hot: a cold one passes more and gets
          fewer volts; an LED that is off passes nothing.
Source:   Kirchhoff's laws on the solved loom; a tenth by common practice, an estimate.
"""

from typing import TYPE_CHECKING

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step

if TYPE_CHECKING:
    from bom.circuit.lamp_earths import Backfed


def judge(view: LoomView) -> list[LoomAnswer]:
    """Name each return whose loss lights another lamp; else say that none does."""
    found = view.walks.lamp_earths
    margins = view.facts.margins
    share, rail = margins.of("backfed_share"), margins.of("rail_volts", "voltage")
    most = Span.of(
        share.low * rail.low, "voltage", "volts a lamp may get that way", lambda: step("p * U", p=share, U=rail)
    )
    told = [_told(fed, most) for fed in found if abs(fed.volts) > most.high]
    if told or not found:
        return told
    because = f"{len(found)} shared {'return' if len(found) == 1 else 'returns'} opened in turn"
    return [LoomAnswer("lamp returns", Verdict.PASS, "lamps lit by a lost return", "none", "none", because)]


def _told(fed: "Backfed", most: Span) -> LoomAnswer:
    offers = solved(abs(fed.volts), "voltage", f"volts at the {fed.lamp}", f"{fed.earth} open, {fed.state}")
    way = "backwards" if fed.volts < 0 else "though off"
    because = f"lost, it feeds the {fed.lamp} through the lamps beside it: dim glow, wrong blink; {fed.state}"
    shown = units.show(abs(fed.volts), "voltage")
    what = f"volts at the {fed.lamp}, {way}"
    return LoomAnswer(fed.earth, Verdict.TIGHT, what, shown, f"at most {most}", because, "", offers, most)


RULE = LoomRule(judge)
