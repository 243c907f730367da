"""A fuse must not open in the longest burst of its load.

Asks:     the earliest time at which the fuse may open on the peak amps is at least the burst.
Why:      a fuse that may open in a burst leaves the rider without drive in traffic.
Harm:     dark.
Says:     fail, can't tell.
Cure:     a higher rating or a slower type.
Ignores:  bursts that come back before the fuse has cooled.
Source:   published time limits of the fuse; between two multiples the earliest time of the higher one counts.
"""

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ratings import earliest_opening_s
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare the earliest opening time at the peak amps."""
    times = earliest_opening_s(parts, current=duty.peak_a.at_high())
    return [at_least(f"earliest opening at {duty.peak_a}", times, duty.peak_s)]


RULE = PartRule(("main_fuse",), judge)
