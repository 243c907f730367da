"""Solving a network: volts at each point and amps in each element.

Nodal analysis with Newton's method. What draws watts is replaced by its tangent at the volts of the last round;
the rounds start from the open circuit, so that they find the upper of the two answers a draw of watts has.
Source: nodal analysis and Newton's method, textbook circuit theory.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from bom.circuit.compiled import Compiled
from bom.circuit.modes import first_modes, let_go, limiting, next_modes
from bom.circuit.network import Network
from bom.circuit.pattern import Floats, Ints
from bom.memory import Memory

MOST_ROUNDS = 200
WHOLE_STEPS = 20  # rounds before the steps are halved, for what swings to and fro
CLOSE_V = 1e-7


@dataclass(frozen=True)
class Solution:
    """What the network does.

    volts      of every point, from the reference of its island
    settled    False where the rounds found no answer
    let_go     names of draws and converters that stand below their least volts: the state cannot be sustained
    limiting   names of converters that no longer hold their volts
    modes      what each converter, then each draw, does
    """

    compiled: Compiled
    volts: Floats
    settled: bool
    let_go: tuple[str, ...]
    limiting: tuple[str, ...]
    modes: Ints

    def at(self, point: str, back: str) -> float:
        """Give the volts from one point to another; NaN between islands, which nothing holds apart or together."""
        here, there = self.compiled.index[point], self.compiled.index[back]
        island = self.compiled.islands
        return float(self.volts[here] - self.volts[there]) if island[here] == island[there] else float("nan")

    @cached_property
    def amps(self) -> dict[str, float]:
        """Give the amps of every element, from its start or plus to its end or minus."""
        return self.compiled.amps(self.volts, self.modes)


def solve(network: Network, memory: Memory | None = None) -> Solution:
    """Solve a network. Never raises for want of an answer: `settled` and `let_go` say what cannot be sustained.

    One that was met before with this memory is not solved again.
    """
    known = memory or Memory()
    return known.once("network", network, lambda: solve_compiled(Compiled(network, known)))


def solve_compiled(compiled: Compiled, start: Floats | None = None) -> Solution:
    """Solve a network whose points are counted already; from the volts of a like one, where there is one.

    From there the rounds may end at a lower answer. What they find counts only where nothing has let go or changed.
    """
    modes = first_modes(compiled)
    if start is not None:
        volts, bend_w = _rounds(compiled, modes, start)
        sags = bend_w is not None or bool(let_go(compiled, volts, modes))
        if not sags and np.array_equal(next_modes(compiled, volts, modes, None), modes):
            return Solution(compiled, volts, True, (), limiting(compiled, volts, modes), modes)
    seen = {modes.tobytes()}
    while True:
        volts, bend_w = _rounds(compiled, modes)
        changed = next_modes(compiled, volts, modes, bend_w)
        if changed.tobytes() in seen:
            settled = bend_w is None and np.array_equal(changed, modes)
            gone, limits = let_go(compiled, volts, modes), limiting(compiled, volts, modes)
            return Solution(compiled, volts, settled, gone, limits, modes)
        seen.add(changed.tobytes())
        modes = changed


def _rounds(compiled: Compiled, modes: Ints, start: Floats | None = None) -> tuple[Floats, Floats | None]:
    """Go round from the open circuit, or a start, until the volts stand still; give the last bend where they do not.

    Downwards from the open circuit the tangents never overshoot the upper answer: what converters give and what
    draws of watts leave over both bend the same way. So a change that would gain watts tells that there is none.
    """
    volts = compiled.open_circuit(modes) if start is None else start
    for number in range(MOST_ROUNDS):
        try:
            change, bend_w = compiled.step(volts, modes)
        except RuntimeError:  # singular: the very point of collapse; look from a little below
            volts = volts * (1 - 1e-6)
            continue
        if float(np.max(np.abs(change), initial=0.0)) < CLOSE_V:
            return volts + change, None
        if bend_w is not None:
            return volts, bend_w
        volts = volts + change * (1.0 if number < WHOLE_STEPS else 0.5)
    return volts, np.zeros(len(modes))
