"""A converter must survive the highest bus volts with headroom.

Asks:     its highest input is at least the highest bus volts plus the larger of 5 V and 5 %.
Why:      a label such as "48-72 V" is no window; the input parts fail on the first full charge or downhill.
Harm:     damage.
Says:     fail, can't tell.
Cure:     a converter with a wider input window.
Ignores:  spikes shorter than the input capacitors smooth.
Source:   common practice, no source; the headroom is a margin that a shop may set.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the highest input volts."""
    bus = duty.voltage_v
    volts, fraction = margins.converter_headroom_v, margins.converter_headroom_fraction
    wanted = Span(
        bus.low + max(volts, fraction * bus.low),
        bus.high + max(volts, fraction * bus.high),
        "voltage",
        f"{bus} + the larger of {volts:g} V and {fraction:.0%}; {bus.because}",
        bus.datum,
        lambda: step(
            "U_bus + max(U_more, k * U_bus)",
            U_bus=bus,
            U_more=margins.of("converter_headroom_v", "voltage"),
            k=margins.of("converter_headroom_fraction"),
        ),
    )
    return [at_least("highest input volts", parts.rating("input_max_v"), wanted)]


RULE = PartRule(("converter",), judge)
