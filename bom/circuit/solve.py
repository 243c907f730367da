"""Solving a network: volts at each point and amps in each element.

Nodal analysis with Newton's method. What draws watts is replaced by its tangent at the volts of the last round;
the rounds start from the open circuit, so that they find the upper of the two answers a draw of watts has.
Source: nodal analysis and Newton's method, textbook circuit theory.
"""

from dataclasses import dataclass
from functools import cached_property

import numpy as np
import numpy.typing as npt

from bom.circuit.compiled import Compiled
from bom.circuit.network import Network

MOST_ROUNDS = 60
CLOSE_V = 1e-7

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True)
class Solution:
    """What the network does.

    volts      of every point, from the reference of its island
    settled    False where the rounds found no answer
    let_go     names of draws and converters that stand below their least volts: the state cannot be sustained
    limiting   names of converters that no longer hold their volts
    """

    compiled: Compiled
    volts: Floats
    settled: bool
    let_go: tuple[str, ...]
    limiting: tuple[str, ...]
    output_a: Floats

    def at(self, point: str, back: str) -> float:
        """Give the volts from one point to another; NaN between islands, which nothing holds apart or together."""
        here, there = self.compiled.index[point], self.compiled.index[back]
        island = self.compiled.islands
        return float(self.volts[here] - self.volts[there]) if island[here] == island[there] else float("nan")

    @cached_property
    def amps(self) -> dict[str, float]:
        """Give the amps of every element, from its start or plus to its end or minus."""
        return self.compiled.amps(self.volts, self.output_a)


def solve(network: Network) -> Solution:
    """Solve a network. Never raises for want of an answer: `settled` and `let_go` say what cannot be sustained."""
    return solve_compiled(Compiled(network))


def solve_compiled(compiled: Compiled, start: Floats | None = None) -> Solution:
    """Solve a network whose points are counted already; from the volts of a like one, where there is one."""
    modes = compiled.first_modes()
    volts = start if start is not None else compiled.linear(np.zeros(len(compiled.points)), modes, with_draws=False)
    seen: set[tuple[int, ...]] = set()
    for _ in range(MOST_ROUNDS):
        new = compiled.linear(volts, modes, with_draws=True)
        moved = float(np.max(np.abs(new - volts), initial=0.0))
        volts = new
        if moved >= CLOSE_V:
            continue
        output_a = compiled.output_a(volts, modes)
        next_modes = compiled.next_modes(volts, output_a, modes)
        if np.array_equal(next_modes, modes) or tuple(next_modes) in seen:
            return Solution(compiled, volts, True, compiled.let_go(volts, modes), compiled.limiting(modes), output_a)
        seen.add(tuple(modes))
        modes = next_modes
    output_a = compiled.output_a(volts, modes)
    return Solution(compiled, volts, False, compiled.let_go(volts, modes), compiled.limiting(modes), output_a)
