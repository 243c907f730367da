"""On the least fault the fuse must open before the wire is burnt.

Asks:     the latest opening time at the least fault is at most the adiabatic limit of the wire.
Why:      a slow fuse on a thin wire lets the insulation burn first.
Cure:     a thicker wire or a faster fuse.
Ignores:  heat lost during the fault, which helps; faults beyond 5 s, where the formula ends.
Source:   IEC 60364-4-43:2008 434.5.2, t = (k S / I)^2 from the insulation's operating limit, from memory.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.ratings import latest_opening_s
from bom.judge.rule import PairRule
from bom.parts import Parts
from bom.physics.adiabatic import longest_s
from bom.read.margins import Margins

# Final temperatures of the insulation in a short: IEC 60364-4-43 Table 43A; silicone as XLPE (from memory).
SHORT_C = {"PVC": 160.0, "XLPE": 250.0, "silicone": 250.0, "": 160.0}


def judge(first: Parts, second: Parts, first_duty: Duty, second_duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the fuse's latest opening time with the wire's longest time."""
    # The greater fault is the one the fuse sees through no wire; the least decides how long it may take.
    current = second_duty.fault_low_a.low
    times = latest_opening_s(first, current_a=current)
    ends = np.array([SHORT_C[name] for name in second.word("insulation")])
    starts = np.minimum(second.number("conductor_max_c"), ends - 10)
    area = second.number("area_mm2")
    limit = longest_s(area_mm2=area, current_a=current, start_c=starts, end_c=ends)
    return [
        at_most(
            f"latest opening at {current:.0f} A",
            times.down(),
            Demand.of(np.atleast_1d(limit)[None, :], "time", "adiabatic limit of the wire"),
        )
    ]


RULE = PairRule("guards", judge, only_with=("fault_low_a",))
