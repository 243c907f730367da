"""On the least fault the fuse must open before the wire is burnt.

Asks:     the latest opening time at the least fault is at most the adiabatic limit of the wire.
Why:      a slow fuse on a thin wire lets the insulation burn first.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a thicker wire or a faster fuse.
Ignores:  heat lost during the fault, which helps; faults beyond 5 s, where the formula ends.
Source:   IEC 60364-4-43:2008 434.5.2, t = (k S / I)^2 from the insulation's operating limit, from memory.
"""

from functools import partial

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.ratings import SHORT_C, latest_opening_s
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.physics.adiabatic import longest_s
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Step, step


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the fuse's latest opening time with the wire's longest time."""
    # The greater fault is the one the fuse sees through no wire; the least decides how long it may take.
    current = second_duty.fault_low_a.low
    times = latest_opening_s(first, current=second_duty.fault_low_a.at_low())
    ends = np.array([SHORT_C[name] for name in second.word("insulation")])
    starts = np.minimum(second.number("conductor_max_c"), ends - 10)
    area = second.number("area_mm2")
    limit = longest_s(area_mm2=area, current_a=current, start_c=starts, end_c=ends)
    traced = partial(_limit, second, second_duty, float(starts[0]), float(ends[0]))
    return [
        at_most(
            f"latest opening at {current:.0f} A",
            times.down(),
            Demand.of(np.atleast_1d(limit)[None, :], "time", "adiabatic limit of the wire", traced),
        )
    ]


def _limit(wire: Parts, duty: Duty, start_c: float, end_c: float) -> Step:
    """Show the longest time the wire stands the least fault."""
    most, insulation = wire.first("conductor_max_c"), str(wire.first_word("insulation").value) or "not known"
    end = Span.fixed(end_c, "temperature", f"end of a short, {insulation}", "IEC 60364-4-43 Table 43A, from memory")
    start = Span.of(
        start_c, "temperature", "before it", lambda: step("min(T_most, T_end - 10)", T_most=most, T_end=end)
    )
    return step(
        "adiabatic_limit(A, I, T_start, T_end)",
        A=wire.first("area_mm2"),
        I=duty.fault_low_a.at_low(),
        T_start=start,
        T_end=end,
    )


RULE = PairRule("guards", judge, only_with=("fault_low_a",))
