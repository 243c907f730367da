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

from bom.duties.model import Duty
from bom.judge.compare import Demand, Judgement, at_most
from bom.judge.rule import PartRule
from bom.judge.sure_opening import sure_opening
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the amps that surely open the fuse with the least fault."""
    what = f"amps that surely open it within {margins.fuse_open_s:g} s"
    return [at_most(what, sure_opening(parts, margins), Demand.from_span(duty.fault_low_a))]


RULE = PartRule(("main_fuse", "tap_fuse"), judge, only_with=("fault_low_a",))
