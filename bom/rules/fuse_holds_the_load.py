"""A fuse must carry its running load without ageing.

Asks:     rating x loading factor x re-rating at its ambient is at least the running amps.
Why:      a fuse run at its mark in warm air opens one day without a fault.
Harm:     dark.
Says:     fail, can't tell.
Cure:     the next rating, if the wire allows it.
Ignores:  bursts; another rule looks at those.
Source:   maker fuse guides, loading 0.75 to 0.95 and re-rating curves, read second-hand on a public page.
"""

from functools import partial

import numpy as np

from bom.duties.model import Duty
from bom.judge.compare import Judgement, at_least
from bom.judge.rating_traces import fuse_rerating
from bom.judge.ratings import rerating
from bom.judge.rule import PartRule
from bom.parts import Column, Parts
from bom.read.margins import Margins
from bom.trace import Step, step


def judge(parts: Parts, duty: Duty, margins: Margins) -> list[Judgement]:
    """Compare what the fuse may carry for ever at its ambient."""
    loading = parts.number("loading_factor")
    loading = np.where(np.isnan(loading), margins.fuse_loading, loading)
    ambient_c = duty.ambient_c.high
    rated = parts.rating("rated_a")
    kept = rerating(parts, ambient_c=ambient_c)
    traced = partial(_without_end, parts, duty, margins, kept)
    allowed = rated.with_values(rated.values * loading * kept, traced)
    return [at_least(f"amps without end at {ambient_c:g} °C", allowed, duty.carry_a)]


def _without_end(parts: Parts, duty: Duty, margins: Margins, kept: Column) -> Step:
    """Show rating x loading x re-rating; the fuse's own loading where it is printed."""
    own = parts.first("loading_factor")
    return step(
        "I_rated * k_loading * k_air",
        I_rated=parts.first("rated_a"),
        k_loading=margins.of("fuse_loading") if np.isnan(own.low) else own,
        k_air=fuse_rerating(parts, duty.ambient_c.at_high(), float(kept[0])),
    )


RULE = PartRule(("main_fuse", "tap_fuse", "blade_fuse"), judge, only_with=("carry_a",))
