"""The precharge resistor must survive its starts, and a start that never ends until the timer stops it.

Asks:     pulse joules are at least three fillings, C V^2 / 2 each, and full volts for the time the timer allows;
          or its watts stand full volts for ever.
Why:      the contactor fails to close, or the key is cycled, and the resistor sees the whole pack.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a clad resistor on metal with more joules, or a shorter timer.
Ignores:  cooling between starts.
Source:   the resistor takes C V^2 / 2 whatever its ohms: algebra; wire-wound parts are rated by joules in
          short pulses, read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts, Rating
from bom.physics.precharge import stored_energy_j, worst_power_w
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the joules a part stands with those asked."""
    volts, farads, time_s = duty.voltage_v, duty.capacitance_f, duty.precharge_s.high
    ohm, pulse = parts.number("resistance_ohm"), parts.rating("pulse_j")
    for_ever = parts.number("power_w") >= worst_power_w(resistance_ohm=ohm, voltage_v=volts.high)
    starts = margins.precharge_pulse_starts
    low, high = (
        np.maximum(
            starts * stored_energy_j(capacitance_f=farad, voltage_v=volt),
            worst_power_w(resistance_ohm=ohm, voltage_v=volt) * time_s,
        )
        for volt, farad in ((volts.low, farads.low), (volts.high, farads.high))
    )

    def traced() -> Step:
        return step(
            "max(n * C * U ** 2 / 2, U ** 2 / R * t)",
            n=margins.of("precharge_pulse_starts"),
            C=farads,
            U=volts,
            R=parts.first("resistance_ohm"),
            t=duty.precharge_s.at_high(),
        )

    because = f"{starts:g} fillings of {farads}, or {volts} for {time_s:g} s"
    demand = Demand(low, high, "energy", because, farads.datum or volts.datum, traced)
    evidence = np.where(for_ever, parts.evidence_of("power_w"), pulse.evidence)
    offered = Rating(
        np.where(for_ever, np.inf, pulse.values), evidence, parts.cell("power_w") if for_ever.all() else pulse.trace
    )
    return [at_least("pulse joules (no limit: its watts stand it)", offered, demand)]


RULE = PartRule(("precharge_resistor",), judge)
