"""The precharge resistor must fill the bus in the time allowed, against what draws from it.

Asks:     ohms are at most t / (C ln(1 / (1 - q))), and at most q (1 - q) V^2 / P with P watts on the bus.
Why:      too many ohms and the contactor closes on a large step; with a load on the bus it never fills.
Harm:     runaway.
Says:     fail, can't tell.
Cure:     fewer ohms, more time, or move the load ahead of the contactor.
Ignores:  loads that start only above some bus volts.
Source:   algebra of an RC circuit; 95 % by Formula Student EV 5.7.1, read second-hand on a public page.
"""

from functools import partial
from math import log

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_most
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.physics.precharge import greatest_load_w
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the ohms with both limits."""
    q = margins.precharge_fraction
    time, farads, watts = duty.precharge_s, duty.capacitance_f, duty.bus_load_w
    by_time = Span(
        time.low / (farads.high * log(1 / (1 - q))),
        time.low / (farads.low * log(1 / (1 - q))),
        "resistance",
        f"{q:.0%} of the bus volts in {time} with {farads}, {farads.because}",
        farads.datum,
        lambda: step("t / (C * ln(1 / (1 - q)))", t=time.at_low(), C=farads, q=margins.of("precharge_fraction")),
    )
    volts = duty.lowest_v
    low, high = (
        float(greatest_load_w(resistance_ohm=1.0, voltage_v=max(end, 1.0), fraction=q)) / watts.high
        for end in (volts.low, volts.high)
    )
    traced = partial(_by_load, volts, watts, margins)
    by_load = Span(low, high, "resistance", f"{q:.0%} against {watts} on the bus at {volts}", volts.datum, traced)
    return [
        at_most("ohms", parts.rating("resistance_ohm"), by_time),
        at_most("ohms against the load", parts.rating("resistance_ohm"), by_load),
    ]


def _by_load(volts: Span, watts: Span, margins: Margins) -> Step:
    """Show the ohms through which the bus still rises against what draws from it."""
    one = Span.fixed(1.0, "voltage", "no volts below one are counted")
    q = margins.of("precharge_fraction")
    return step("q * (1 - q) * max(U, U_one) ** 2 / P", q=q, U=volts, U_one=one, P=watts.at_high())


RULE = PartRule(("precharge_resistor",), judge)
