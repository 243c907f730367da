"""The motor's own tails must carry the phase amps.

Asks:     the ampacity of the tails' copper at their temperature is at least the continuous phase amps. Where these
          are not given, tails below the share of the peak that is taken for them can't be told.
Why:      thin tails are the hottest copper on the bike, and their joint is where plugs melt.
Harm:     fire.
Says:     fail, can't tell.
Cure:     less phase current in the controller's settings, or a motor with thicker tails.
Ignores:  cooling by the motor's case.
Source:   heat balance of one wire among three, published correlations; tail temperature by common practice.
"""

from math import sqrt

from bom import units
from bom.duties.circuits import circuit_needs
from bom.judge.loom_view import LoomAnswer, LoomView
from bom.judge.rule import LoomRule
from bom.judge.verdict import Verdict
from bom.physics.ampacity import ampacity_a
from bom.physics.conductor import COPPER_CONDUCTIVITY_M_PER_OHM_MM2, copper_resistance_mohm_per_m
from bom.span import Span
from bom.trace import Fact, Origin, Step, step

STRANDED_OVER_SOLID = 1.3
WALL_MM = 0.8


def judge(view: LoomView) -> list[LoomAnswer]:
    """Compare the tails' ampacity with the phase amps."""
    area = view.facts.job.motor.lead_area
    if area is None:
        return []
    needed = circuit_needs(view.facts)["phase"]["carry_a"]
    limit_c = view.facts.margins.motor_tail_c
    conductor_mm = STRANDED_OVER_SOLID * sqrt(area)
    amps = float(
        ampacity_a(
            area_mm2=area,
            conductor_mm=conductor_mm,
            outside_mm=conductor_mm + 2 * WALL_MM,
            resistance_20_mohm_per_m=copper_resistance_mohm_per_m(area_mm2=area),
            cable_max_c=limit_c,
            terminal_max_c=limit_c,
            ambient_c=view.facts.job.ambient.frame,
            insulation="silicone",
            loaded_wires=3,
        )
    )
    known = view.facts.job.controller.phase_continuous is not None
    short, datum = (Verdict.FAIL, "") if known else (Verdict.CANT_TELL, "the controller's continuous phase amps")
    verdict = Verdict.PASS if amps >= needed.high else short
    return [
        LoomAnswer(
            "motor tails",
            verdict,
            f"ampacity at {limit_c:g} °C",
            units.show(amps, "current"),
            f"at least {needed}",
            needed.because,
            datum if verdict == Verdict.CANT_TELL else "",
            offers=Span.of(amps, "current", "ampacity of the tails", lambda: _ampacity(view, area, conductor_mm)),
            needs=needed,
        )
    ]


def _ampacity(view: LoomView, area_mm2: float, conductor_mm: float) -> Step:
    """Show what the ampacity of the tails was worked out from."""
    facts, guess = view.facts, "silicone tails, common practice"
    area = Span.given(area_mm2, "area", "copper of the tails", "motor.lead_area")
    over = Span.fixed(STRANDED_OVER_SOLID, "", "strands over a solid wire", guess)
    metal = Span.of(conductor_mm, "", "mm over the metal", lambda: step("k * sqrt(A)", k=over, A=area))
    wall = Span.fixed(WALL_MM, "", "mm of wall", guess)
    per_m = float(copper_resistance_mohm_per_m(area_mm2=area_mm2))
    conductivity = Span.fixed(COPPER_CONDUCTIVITY_M_PER_OHM_MM2, "", "of copper, m/(ohm mm²)", "IEC 60028")
    limit = facts.margins.of("motor_tail_c", "temperature")
    return step(
        "ampacity(A, d, d + 2 * w, r_20, T_most, T_most, T_air, insulation, n)",
        A=area,
        d=metal,
        w=wall,
        r_20=Span.of(per_m, "", "mohm/m", lambda: step("1000 / (c * A)", c=conductivity, A=area)),
        T_most=limit,
        T_air=Span.given(facts.job.ambient.frame, "temperature", "hottest air, frame", "ambient.frame"),
        insulation=Fact("silicone", "silicone", Origin("program", "insulation of the tails", note=guess)),
        n=Span.fixed(3.0, "", "loaded wires lying together", "three motor leads"),
    )


RULE = LoomRule(judge)
