"""The amps that surely open a fuse within the time set, for every fuse of a table."""

import numpy as np

from bom.judge.rating_traces import sure_multiple
from bom.judge.ratings import time_band
from bom.parts import Parts, Rating
from bom.physics.fuse import surely_opens_multiple
from bom.read.margins import Margins
from bom.trace import Step, step


def sure_opening(parts: Parts, margins: Margins) -> Rating:
    """Give the amps by each fuse's own printed limits; where it has none, by the multiple that the margins say."""
    multiples, printed = [], []
    for index in range(len(parts)):
        points = time_band(parts, index)
        multiple = surely_opens_multiple(within_s=margins.fuse_open_s, points=points) if points else np.nan
        printed.append(not np.isnan(multiple))
        multiples.append(margins.fuse_source_multiple if np.isnan(multiple) else multiple)

    def traced() -> Step:
        multiple = sure_multiple(parts, margins, multiples[0], printed=printed[0])
        return step("I_rated * k", I_rated=parts.first("rated_a"), k=multiple)

    rated = parts.rating("rated_a")
    return rated.with_values(rated.values * np.array(multiples), traced)
