"""A fuse must carry its running load without ageing.

Asks:     rating x loading factor x re-rating at its ambient is at least the running amps.
Why:      a fuse run at its mark in warm air opens one day without a fault.
Cure:     the next rating, if the wire allows it.
Ignores:  bursts; another rule looks at those.
Source:   maker fuse guides, loading 0.75 to 0.95 and re-rating curves, read second-hand on a public page.
"""

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.ratings import rerating
from bom.judge.rule import PartRule
from bom.parts import Parts
from bom.read.margins import Margins


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare what the fuse may carry for ever at its ambient."""
    loading = parts.number("loading_factor")
    loading = np.where(np.isnan(loading), margins.fuse_loading, loading)
    ambient_c = duty.ambient_c.high
    rated = parts.rating("rated_a")
    allowed = rated.with_values(rated.values * loading * rerating(parts, ambient_c=ambient_c))
    return [at_least(f"amps without end at {ambient_c:g} °C", allowed, duty.carry_a)]


RULE = PartRule(("main_fuse", "tap_fuse", "blade_fuse"), judge, only_with=("carry_a",))
