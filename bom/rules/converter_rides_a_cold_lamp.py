"""A converter must ride through a cold lamp lighting.

Asks:     it limits at constant current, or its peak amps cover the cold filament for as long as it
          takes to warm, three time constants, or a buffer battery does.
Why:      a hiccup or latching type switches off on the surge and everything goes dark.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a constant-current type, LED lamps, or a buffer battery.
Ignores:  how far the rail dips meanwhile.
Source:   cold filaments take 8 to 15 times their running amps, lamp engineering practice, from memory.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts, Rating
from bom.read.margins import Margins
from bom.trace import step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Pass by mode or by buffer, else compare the peak amps."""
    if duty.word("buffer") == "yes":
        return []
    peak = parts.rating("output_peak_a")
    rides = np.array([word == "constant current" for word in parts.word("overload")])
    evidence = np.where(rides, parts.evidence_of("overload"), peak.evidence)
    offered = Rating(
        np.where(rides, np.inf, peak.values), evidence, parts.decided_by("overload") if rides.all() else peak.trace
    )
    return [
        at_least("peak amps (constant current: no limit)", offered, duty.output_peak_a),
        _long_enough(parts, margins),
    ]


def _long_enough(parts: Parts, margins: Margins) -> Judgement:
    """Compare the seconds of its peak with those a filament takes to warm."""
    seconds = parts.rating("output_peak_s")
    rides = np.array([word == "constant current" for word in parts.word("overload")])
    evidence = np.where(rides, parts.evidence_of("overload"), seconds.evidence)
    trace = parts.decided_by("overload") if rides.all() else seconds.trace
    offered = Rating(np.where(rides, np.inf, seconds.values), evidence, trace)
    warm_s = WARM * margins.filament_warm_ms / 1000
    because = f"{WARM:g} time constants of a cold filament"
    needed = Demand.of(warm_s, "time", because, lambda: step("3 * t / 1000", t=margins.of("filament_warm_ms")))
    return at_least("seconds of its peak (constant current: no limit)", offered, needed)


WARM = 3.0  # after three time constants 5 % of the rush is left


RULE = PartRule(("converter",), judge)
