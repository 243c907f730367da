"""Relays, contactor and flasher must live through the worst dip of the 12 V side.

Asks:     solved with everything on, the largest filament cold and the horns' contacts closed: each coil keeps its
          drop-out volts, or the dip is shorter than the coil's own fall; the flasher keeps its lowest supply. With
          every coil drawing its pull-in amps, each still has its pull-in volts.
Why:      a converter at its limit lets the rail sag as a cold lamp lights: the contactor opens under load, or chatters.
Harm:     dark.
Says:     fail, tight.
Cure:     a converter of more amps, an LED headlamp, or a buffer battery.
Ignores:  output capacitors and the horn's beat, which both shorten the dip; a converter that switches off has a rule
          of its own.
Source:   nodal analysis; cold filaments 8 to 15 times, interrupter horns about twice their mean, from memory; times
          are estimates.
"""

from collections.abc import Iterator
from math import isinf, isnan, log
from typing import TYPE_CHECKING

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span

if TYPE_CHECKING:
    from bom.circuit.dips import Dip


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare every coil and the flasher in the worst moment."""
    dip = view.walks.dip
    if dip is None or dip.lets_go:
        return []
    return [*_holding(view, dip), *_pulling(view, dip), *_flashing(view, dip)]


def _holding(view: LoomView, dip: "Dip") -> Iterator[LoomAnswer]:
    for coil, volts in dip.coils_v.items():
        least, verdict, more = dip.drops_v[coil], Verdict.PASS, ""
        if volts < least:
            lasts, falls = view.walks.below_s(least), _falls_s(view, volts, least)
            verdict = Verdict.TIGHT if lasts <= falls else Verdict.FAIL
            more = f"; the dip lasts {_time(lasts)}, the coil holds about {_time(falls)}"
        because, needs = f"{_moment(dip)}{more}", _needs(view, coil, "coil_drop_out_v", least)
        yield _answer(coil, verdict, "volts in the worst dip", volts, needs, because, dip)


def _pulling(view: LoomView, dip: "Dip") -> Iterator[LoomAnswer]:
    for coil, volts in dip.pulls_v.items():
        least = dip.needs_v[coil]
        verdict = Verdict.PASS if volts >= least else Verdict.FAIL
        told = f"{dip.state}, every coil at its pull-in amps"
        needs = _needs(view, coil, "coil_min_v", least)
        yield _answer(coil, verdict, "volts as it pulls in", volts, needs, told, dip)


def _flashing(view: LoomView, dip: "Dip") -> Iterator[LoomAnswer]:
    """A flasher that misses a beat is worse, not dangerous."""
    part = view.parts.get("flasher")
    least = float(part.number("supply_min_v")[0]) if part else float("nan")
    if least > 0 and not isnan(dip.flasher_v):
        verdict = Verdict.PASS if dip.flasher_v >= least else Verdict.TIGHT
        lasts = view.walks.below_s(least)
        more = "" if verdict == Verdict.PASS else f"; for {_time(lasts) if isinf(lasts) else f'about {_time(lasts)}'}"
        because, needs = f"{_moment(dip)}{more}", _needs(view, "flasher", "supply_min_v", least)
        yield _answer("flasher", verdict, "volts in the worst dip", dip.flasher_v, needs, because, dip)


def _needs(view: LoomView, place: str, column: str, least: float) -> Span:
    """Give the volts a part lives on: of its own cell, else a share of its coil's volts."""
    part = view.parts.get(place)
    if part is not None and not isnan(float(part.number(column)[0])):
        return Span.of(least, "voltage", f"of the {place}", part.cell(column))
    return Span.fixed(
        least, "voltage", f"of a {place} that does not say", "a share of its volts, IEC 61810-1, from memory"
    )


def _falls_s(view: LoomView, volts: float, least: float) -> float:
    """Give the time in which a coil's amps fall from the rail's to those of its drop-out volts, the dip standing."""
    margins = view.facts.margins
    return margins.coil_rise_ms / 1000 * log((margins.rail_volts - volts) / (least - volts))


def _moment(dip: "Dip") -> str:
    lit = f", {dip.filament} cold" if dip.filament else ""
    return f"{dip.state}{lit}: the converter gives {units.show(dip.gives_a, 'current')}{' and limits' * dip.limits}"


def _time(seconds: float) -> str:
    return "without end" if isinf(seconds) else units.show(seconds, "time")


def _answer(
    subject: str, verdict: Verdict, what: str, volts: float, needs: Span, because: str, dip: "Dip"
) -> LoomAnswer:
    offers = solved(volts, "voltage", f"{what}, {subject}", dip.state)
    told = (what, str(offers), f"at least {needs}", because, "", offers, needs)
    return LoomAnswer(subject, verdict, *told, at_fault=("converter",))


RULE = LoomRule(judge)
