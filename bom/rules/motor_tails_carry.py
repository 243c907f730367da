"""The motor's own tails must carry the phase amps.

Asks:     the ampacity of the tails' copper at their temperature is at least the continuous phase amps.
Why:      thin tails are the hottest copper on the bike, and their joint is where plugs melt.
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
from bom.physics.conductor import copper_resistance_mohm_per_m

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
    verdict = Verdict.PASS if amps >= needed.high else Verdict.FAIL
    return [
        LoomAnswer(
            "motor tails",
            verdict,
            f"ampacity at {limit_c:g} °C",
            units.show(amps, "current"),
            f"at least {needed}",
            needed.because,
        )
    ]


RULE = LoomRule(judge)
