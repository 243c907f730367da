"""What a parked bike draws from its buffer battery: loads that stay on, and what leaks into a resting converter."""

from dataclasses import dataclass
from functools import partial
from math import isnan

from bom.arrangement import TWELVE
from bom.duties.load_traces import state_figure
from bom.judge.compare import HEARSAY
from bom.judge.loom_view import LoomView
from bom.parts import Parts
from bom.span import Span
from bom.trace import Step, step

LEAK, PARKED = "output_leak_ma", "parked, key off"


@dataclass(frozen=True)
class BufferDrain:
    """Amps at 12 V with the key off.

    figure   what is known of them, with how it was worked out
    unknown  names the figure that is not known, "" where all are
    hearsay  the leak is known by word of mouth alone
    """

    figure: Span
    unknown: str = ""
    hearsay: bool = False

    @property
    def amps(self) -> float:
        """Give the amps that are known."""
        return self.figure.low


def rests_parked(view: LoomView) -> bool:
    """Tell whether the key takes the converter's feed or its enable, so that a battery at its output feeds back."""
    return view.facts.key_at != TWELVE


def buffer_drain(view: LoomView) -> BufferDrain:
    """Add what stays on at 12 V with the key off, and the leak into the converter's output."""
    loads, part = state_figure(view.facts, PARKED), view.parts.get("converter")
    if part is None:
        return BufferDrain(loads)
    leak_a = float(part.number(LEAK)[0]) / 1000
    if isnan(leak_a):
        return BufferDrain(loads, "the converter's output leak")
    traced = partial(_added, loads, part)
    figure = Span.of(loads.low + leak_a, "current", "12 V loads that stay on, and the converter's output leak", traced)
    return BufferDrain(figure, "", str(part.evidence_of(LEAK)[0]) in HEARSAY)


def _added(loads: Span, part: Parts) -> Step:
    """Show the loads and the leak."""
    return step("I_parked + i_leak / 1000", I_parked=loads, i_leak=part.first(LEAK))
