"""Which plugs of a bike lie within reach of one another at other volts."""

from collections.abc import Mapping
from itertools import combinations

from bom.leads.model import Fitting, Pairing
from bom.loom.builder import Builder
from bom.read.lead_kinds import TWELVE

BAR_PLUG, PACK_PLUG, PHASE_JOINT = "bar plug", "pack plug", "phase joint"
Levels = frozenset[int | None]


def lay_out_beside(build: Builder) -> None:
    """Link plugs of one family between which volts differ: hands in a hurry join what fits."""
    if PACK_PLUG in build.places and PHASE_JOINT in build.places:
        build.link("beside", PACK_PLUG, PHASE_JOINT)
    for (one, low), (other, high) in combinations(_signal_plugs(build).items(), 2):
        if low != high or None in low:
            build.link("beside", one, other)


def _signal_plugs(build: Builder) -> Mapping[str, Levels]:
    """Give each plug of thin leads with the volts that live in it."""
    paired = build.paired
    plugs = [fitting for fitting in paired.fittings if fitting.family == "signal_connector"]
    return {BAR_PLUG: frozenset({TWELVE}), **{plug.name: _levels(plug, paired) for plug in plugs}}


def _levels(plug: Fitting, paired: Pairing) -> Levels:
    """Name the volts in a plug; a lead whose signal is not known may carry any, a ground carries none."""
    ends = [end for join in paired.joins if join.plug == plug.name for end in join.ends]
    return frozenset(end.level for end in ends if end.level != 0)
