"""Relays, contactor and flasher must live through the worst dip of the 12 V side.

Asks:     solved with everything on, the largest filament cold, the horns' contacts closed: each coil keeps its
          drop-out volts, or the dip is shorter than the coil's own fall; the flasher keeps its least volts, or the dip
          is shorter than half of the shortest flash (margin flash_rate_high: 120 a minute, 0.25 s), one blink at most.
          With every coil drawing its pull-in amps, each still has its pull-in volts.
Why:      a converter at its limit lets the rail sag as a cold lamp lights: the contactor opens under load, or chatters.
Harm:     dark.
Says:     fail, tight.
Cure:     a converter of more amps; for coils a buffer battery too; where the dip ends, an LED for its filament.
Ignores:  output capacitors and the horn's beat, which both shorten the dip; a converter that switches off has a rule
          of its own.
Source:   nodal analysis; cold filaments 8 to 15 times, interrupter horns about twice their mean, from memory; times
          are estimates.
"""

from collections.abc import Iterator
from math import inf, isinf, isnan, log
from typing import TYPE_CHECKING

from bom import units
from bom.judge.loom_view import LoomAnswer, LoomView, solved
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.span import Span
from bom.trace import step

if TYPE_CHECKING:
    from bom.circuit.dips import Dip

BUFFER = "a buffer battery"


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
        cure = _cure(dip, view.walks.below_s(least), f"or {BUFFER}")
        yield _answer(coil, verdict, "volts in the worst dip", volts, needs, because, dip, cure)


def _pulling(view: LoomView, dip: "Dip") -> Iterator[LoomAnswer]:
    for coil, volts in dip.pulls_v.items():
        least = dip.needs_v[coil]
        verdict = Verdict.PASS if volts >= least else Verdict.FAIL
        told = f"{dip.state}, every coil at its pull-in amps"
        needs = _needs(view, coil, "coil_min_v", least)
        cure = _cure(dip, inf, f"or {BUFFER}")
        yield _answer(coil, verdict, "volts as it pulls in", volts, needs, told, dip, cure)


def _flashing(view: LoomView, dip: "Dip") -> Iterator[LoomAnswer]:
    """A flasher that misses more than one beat is worse, not dangerous."""
    part = view.parts.get("flasher")
    least = float(part.number("supply_min_v")[0]) if part else float("nan")
    if least > 0 and not isnan(dip.flasher_v):
        lasts, beat = view.walks.below_s(least), _half_flash(view)
        needs = _needs(view, "flasher", "supply_min_v", least)
        if dip.flasher_v < least and lasts < beat.high:
            yield _one_blink(dip, lasts, needs, beat)
            return
        verdict = Verdict.PASS if dip.flasher_v >= least else Verdict.TIGHT
        more = "" if verdict == Verdict.PASS else f"; for {_time(lasts) if isinf(lasts) else f'about {_time(lasts)}'}"
        cure = _cure(dip, lasts, f"or {BUFFER} and a flasher for fewer volts")
        yield _answer(
            "flasher", verdict, "volts in the worst dip", dip.flasher_v, needs, f"{_moment(dip)}{more}", dip, cure
        )


def _half_flash(view: LoomView) -> Span:
    """Give half of the shortest flash: a dip shorter than that costs one blink at most."""
    rate = view.facts.margins.of("flash_rate_high")
    return Span.of(30 / rate.high, "time", "half of the shortest flash", lambda: step("60 / n / 2", n=rate))


def _one_blink(dip: "Dip", lasts: float, needs: Span, beat: Span) -> LoomAnswer:
    """Let a dip pass that ends before the next blink would begin."""
    offers = solved(lasts, "time", f"below {needs}", dip.state)
    what, because = f"time below {needs}", f"one blink at most; {_moment(dip)}"
    return LoomAnswer("flasher", Verdict.PASS, what, _time(lasts), f"less than {beat}", because, "", offers, beat)


def _cure(dip: "Dip", lasts: float, buffered: str) -> str:
    """Say what helps: no other lamp where all that burns already asks more than the converter gives."""
    lamp = f"an LED {dip.filament}, " if dip.filament and not isinf(lasts) else ""
    return f"a converter of more amps, {lamp}{buffered}."


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
    subject: str, verdict: Verdict, what: str, volts: float, needs: Span, because: str, dip: "Dip", cure: str
) -> LoomAnswer:
    offers = solved(volts, "voltage", f"{what}, {subject}", dip.state)
    told = (what, str(offers), f"at least {needs}", because, "", offers, needs)
    return LoomAnswer(subject, verdict, *told, at_fault=("converter",), cure=cure)


RULE = LoomRule(judge)
