"""Even the least fault must open the fuse in good time.

Asks:     the least fault current is at least the multiple at which the fuse surely opens within the time set.
Why:      an empty, cold or aged pack through long wire may feed less than the fuse needs.
Harm:     fire.
Says:     fail, can't tell.
Cure:     a smaller rating or a thicker wire.
Ignores:  faults through an arc or a poor contact, which nobody can bound.
Source:   published time limits of the fuse; else three times the rating, ECSS-Q-ST-30-11C Rev. 2, 6.17.3c,
          read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.rating_traces import sure_multiple
from bom.judge.ratings import time_band
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.physics.fuse import surely_opens_multiple
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps that surely open the fuse with the least fault."""
    within_s = margins.fuse_open_s
    multiples, printed = [], []
    for index in range(len(parts)):
        points = time_band(parts, index)
        multiple = surely_opens_multiple(within_s=within_s, points=points) if points else np.nan
        printed.append(not np.isnan(multiple))
        multiples.append(margins.fuse_source_multiple if np.isnan(multiple) else multiple)

    def traced() -> Step:
        multiple = sure_multiple(parts, margins, multiples[0], printed=printed[0])
        return step("I_rated * k", I_rated=parts.first("rated_a"), k=multiple)

    rated = parts.rating("rated_a")
    sure = rated.with_values(rated.values * np.array(multiples), traced)
    what = f"amps that surely open it within {within_s:g} s"
    return [at_most(what, sure, Demand.from_span(duty.fault_low_a))]


RULE = PartRule(("main_fuse", "tap_fuse"), judge, only_with=("fault_low_a",))
