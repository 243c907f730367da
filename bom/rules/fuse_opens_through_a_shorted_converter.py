"""A converter's tap fuse and the clamp behind the converter must end a shorted converter together.

Asks:     the least short at the converter's output, through its shorted switch, opens the tap fuse in good time; the
          fuse breaks the pack's fault amps; the clamp stands the fuse's opening amps in its short pulse.
Why:      a clamp takes joules for a millisecond and then fails short, which is safe: from there on the tap fuse sees
          the pack's fault amps and decides. A clamp too small for them bursts and leaves pack volts on the lamps.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a smaller tap fuse, or a clamp of more watts.
Ignores:  the millisecond in which the clamp holds its own volts against the pack.
Source:   peak watts over clamp volts is the clamp's pulse of 10/1000 us (its makers' sheets, from memory); that it
          fails short is common practice, no source.
"""

from functools import partial

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_least, at_most
from bom.judge.rule import PairRule
from bom.judge.sure_opening import sure_opening
from bom.parts import Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the fuse with the fault, and the clamp's pulse with the fuse."""
    sure, watts = sure_opening(first, margins), second.rating("peak_w")
    opens = Demand.of(sure.values[:, None], "current", "amps that surely open the tap fuse", sure.trace)
    pulse = watts.with_values(watts.values / second.number("clamp_v"), partial(_pulse, second))
    least = Demand.from_span(second_duty.fault_low_a)
    within = f"amps that surely open it within {margins.fuse_open_s:g} s"
    return [
        at_most(within, sure.down(), least),
        at_least("DC breaking amps", first.rating("dc_breaking_a").down(), second_duty.fault_high_a),
        at_least("clamp's amps in its pulse", pulse.across(), opens),
    ]


def _pulse(clamp: Parts) -> Step:
    """Show the amps of the clamp's pulse."""
    return step("P_peak / U_clamp", P_peak=clamp.first("peak_w"), U_clamp=clamp.first("clamp_v"))


RULE = PairRule("outlasts", judge, only_with=("parts_v",))
