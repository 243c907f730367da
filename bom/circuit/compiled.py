"""A network as columns: points numbered, elements as arrays, ready for the sparse solver."""

from collections.abc import Sequence
from copy import copy

import numpy as np
import numpy.typing as npt
from scipy.sparse import coo_array
from scipy.sparse.csgraph import connected_components

from bom.circuit.network import Network
from bom.circuit.pattern import Factors, Floats, Ints, Pattern
from bom.memory import Memory

HOLDS, BLOCKS, OFF = 0, 1, 2  # what a converter does; a draw of watts holds, or has let go (off)
LEAK_S = 1e-9  # beside every draw and converter, so that no point hangs in the air


class Compiled:
    """Arrays of one network. Modes, where asked for, are those of the converters and then of the draws."""

    def __init__(self, network: Network, memory: Memory | None = None) -> None:
        """Number the points, references first; islands and pattern are those of a network that hangs together alike."""
        self.network = network
        self.index = _numbers(network)
        self.points = tuple(self.index)
        self.resistor_ends = self._ends([(r.start, r.end) for r in network.resistors])
        self.siemens = 1.0 / _floats([r.ohm for r in network.resistors])
        self.source_ends = self._ends([(s.plus, s.minus) for s in network.sources])
        self.source_v = _floats([s.volts for s in network.sources])
        self.source_s = 1.0 / _floats([s.ohm for s in network.sources])
        self.draw_ends = self._ends([(d.plus, d.minus) for d in network.draws])
        self.amount = _floats([d.amount for d in network.draws])
        self.least_v = _floats([d.least_v for d in network.draws])
        self.is_watts = np.array([d.kind == "watts" for d in network.draws], dtype=bool)
        self._compile_converters(network)
        self.fixed_ends = np.concatenate([self.resistor_ends, self.source_ends])
        self.taken_ends = np.concatenate([self.input_ends, self.draw_ends])
        self.changing_ends = np.concatenate([self.output_ends, self.taken_ends])
        self.ends = np.concatenate([self.fixed_ends, self.changing_ends])
        fixed_siemens = np.concatenate([self.siemens, self.source_s])
        alike = (len(self.points), len(self.fixed_ends), self.ends.tobytes())
        known = memory or Memory()
        self.islands, self.grounded, pattern = known.once("pattern", alike, lambda: self._placed(fixed_siemens))
        self.pattern = pattern.with_fixed(fixed_siemens)

    def _placed(self, fixed_siemens: Floats) -> tuple[Ints, Ints, Pattern]:
        """Find the islands, where each is grounded, and the pattern of the matrix."""
        islands = self._islands()
        _, grounded = np.unique(islands, return_index=True)
        pattern = Pattern(
            fixed=self.fixed_ends,
            fixed_siemens=fixed_siemens,
            changing=self.changing_ends,
            ground=grounded,
            count=len(self.points),
        )
        return islands, grounded, pattern

    def with_siemens(self, siemens: Floats) -> "Compiled":
        """Give the same network with other resistors; none may be left out, so that the islands stay."""
        other = copy(self)
        other.siemens = siemens
        other.pattern = self.pattern.with_fixed(np.concatenate([siemens, self.source_s]))
        return other

    def matrix(self, ends: Ints, siemens: Floats) -> Factors:
        """Factorise the nodal matrix of these conductances alone, each island grounded at its reference."""
        count, none = len(self.points), np.empty((0, 2), dtype=np.intp)
        pattern = Pattern(fixed=ends, fixed_siemens=siemens, changing=none, ground=self.grounded, count=count)
        return pattern.factors(np.empty(0))

    def _compile_converters(self, network: Network) -> None:
        converters = network.converters
        self.input_ends = self._ends([(c.input_plus, c.input_minus) for c in converters])
        self.output_ends = self._ends([(c.output_plus, c.output_minus) for c in converters])
        self.output_v = _floats([c.output_v for c in converters])
        self.output_s = 1.0 / _floats([c.output_ohm for c in converters])
        self.limit_a = _floats([c.limit_a for c in converters])
        self.keeps_current = np.array([c.keeps_current for c in converters], dtype=bool)
        self.efficiency = _floats([c.efficiency for c in converters])
        self.idle_w = _floats([c.idle_w for c in converters])
        self.lowest_input_v = _floats([c.lowest_input_v for c in converters])

    def _ends(self, pairs: Sequence[tuple[str, str]]) -> Ints:
        flat = [self.index[point] for pair in pairs for point in pair]
        return np.array(flat, dtype=np.intp).reshape(-1, 2)

    def _islands(self) -> Ints:
        """Number the islands: a converter's two sides are joined by nothing but what else joins them."""
        count = len(self.points)
        table = coo_array((np.ones(len(self.ends)), (self.ends[:, 0], self.ends[:, 1])), shape=(count, count))
        return np.asarray(connected_components(table, directed=False)[1], dtype=np.intp)

    def across(self, volts: Floats, ends: Ints) -> Floats:
        """Give the volts across each pair of points."""
        return np.asarray(volts[ends[:, 0]] - volts[ends[:, 1]], dtype=float)

    def open_circuit(self, modes: Ints) -> Floats:
        """Give the volts with nothing drawn."""
        taken = np.zeros(len(self.amount) + len(self.output_v))
        siemens, push = self._outputs(modes, np.zeros(len(self.output_v)))
        factors = self.pattern.factors(np.concatenate([siemens, taken + LEAK_S]))
        return factors.solve(self._pushed(push, taken))

    def step(self, volts: Floats, modes: Ints) -> tuple[Floats, Floats | None]:
        """Solve with every draw replaced by its tangent at these volts: give the change of volts, and its bend.

        Past the most power that the network can give, less volts bring no more watts. Then the bend tells the watts
        that the change loses in the tangent of each converter's input and each draw; else it is None.
        """
        output_s, output_push = self._outputs(modes, self.held_a(volts))
        taken_s, taken_push = self._tangents(volts, modes)
        factors = self.pattern.factors(np.concatenate([output_s, taken_s]))
        change = factors.solve(self._pushed(output_push, taken_push)) - volts
        if factors.loses_power():
            return change, None
        return change, taken_s * np.square(self.across(change, self.taken_ends))

    def _pushed(self, output_push: Floats, taken_push: Floats) -> Floats:
        """Give the amps pushed into each point; a push goes into the first point of its element, out of the other."""
        pushes = np.concatenate([self.source_v * self.source_s, output_push, taken_push])
        ends = self.ends[len(self.siemens) :]
        count = len(self.points)
        into = np.bincount(ends[:, 0], pushes, minlength=count)
        return np.asarray(into - np.bincount(ends[:, 1], pushes, minlength=count), dtype=float)

    def held_a(self, volts: Floats) -> Floats:
        """Give the amps each converter would give to hold its volts."""
        return (self.output_v - self.across(volts, self.output_ends)) * self.output_s

    def over_limit(self, held_a: Floats, modes: Ints) -> npt.NDArray[np.bool_]:
        """Tell which converters give their limit instead, and go on."""
        return np.asarray((modes[: len(held_a)] == HOLDS) & self.keeps_current & (held_a > self.limit_a), dtype=bool)

    def _outputs(self, modes: Ints, held_a: Floats) -> tuple[Floats, Floats]:
        """Give each converter's output as a conductance and a current pushed in."""
        limits = self.over_limit(held_a, modes)
        holds = (modes[: len(held_a)] == HOLDS) & ~limits
        push = np.where(holds, self.output_v * self.output_s, np.where(limits, self.limit_a, 0.0))
        return np.where(holds, self.output_s, LEAK_S), push

    def _tangents(self, volts: Floats, modes: Ints) -> tuple[Floats, Floats]:
        """Give each converter's input, and each draw, as a conductance and a current pushed in at these volts."""
        count = len(self.output_v)
        across = self.across(volts, self.taken_ends)
        amps, slope = draw_amps(
            across,
            np.concatenate([self.input_w(volts, modes), self.amount]),
            np.concatenate([self.lowest_input_v, self.least_v]),
            np.concatenate([np.ones(count, dtype=bool), self.is_watts]),
            modes == OFF,
        )
        return slope + LEAK_S, slope * across - amps

    def output_a(self, volts: Floats, modes: Ints) -> Floats:
        """Give the amps each converter gives."""
        held_a = self.held_a(volts)
        given = np.where(self.over_limit(held_a, modes), self.limit_a, held_a)
        return np.where(modes[: len(held_a)] == HOLDS, given, 0.0)

    def input_w(self, volts: Floats, modes: Ints) -> Floats:
        """Give the watts each converter takes, for what it gives at these volts."""
        given_w = np.maximum(self.output_a(volts, modes) * self.across(volts, self.output_ends), 0.0)
        return np.where(modes[: len(self.output_v)] == OFF, 0.0, given_w / self.efficiency + self.idle_w)

    def amps(self, volts: Floats, modes: Ints) -> dict[str, float]:
        """Give the amps of every element at these volts; a source's from its plus outwards, as a converter's."""
        net = self.network
        through = self.across(volts, self.resistor_ends) * self.siemens
        given = (self.source_v - self.across(volts, self.source_ends)) * self.source_s
        gone = modes[len(self.output_v) :] == OFF
        drawn, _ = draw_amps(self.across(volts, self.draw_ends), self.amount, self.least_v, self.is_watts, gone)
        names = [e.name for kind in (net.resistors, net.sources, net.draws, net.converters) for e in kind]
        figures = np.concatenate([through, given, drawn, self.output_a(volts, modes)])
        return dict(zip(names, figures.tolist(), strict=True))


def draw_amps(
    across: Floats,
    amount: Floats,
    least_v: Floats,
    is_watts: npt.NDArray[np.bool_],
    gone: npt.NDArray[np.bool_],
) -> tuple[Floats, Floats]:
    """Give the amps of draws at these volts, and how fast they change with them.

    Above least_v: P / V or a set current. Below it, or gone: P V / least_v^2 or I V / least_v, as a resistor.
    What feeds back in proportion counts as steady from round to round, for as a resistor below zero it overshoots;
    at volts the wrong way round it feeds nothing.
    """
    above = (across >= least_v) & ~gone
    safe = np.where(above, across, least_v)
    low = amount / np.where(is_watts, least_v**2, least_v)
    stands = np.where(amount < 0, np.maximum(across, 0.0), across)
    amps = np.where(above, np.where(is_watts, amount / safe, amount), low * stands)
    slope = np.where(above, np.where(is_watts, -amount / safe**2, 0.0), low)
    return amps, np.where(amount < 0, np.maximum(slope, 0.0), slope)


def _floats(values: Sequence[float]) -> Floats:
    return np.array(values, dtype=float)


def _numbers(network: Network) -> dict[str, int]:
    """Number the points: references first, then as the elements name them."""
    ends = [(r.start, r.end) for r in network.resistors]
    ends += [(s.plus, s.minus) for s in network.sources]
    ends += [(d.plus, d.minus) for d in network.draws]
    for c in network.converters:
        ends += [(c.input_plus, c.input_minus), (c.output_plus, c.output_minus)]
    known = dict.fromkeys(point for pair in ends for point in pair)
    first = [point for point in network.references if point in known]
    return {point: number for number, point in enumerate(dict.fromkeys((*first, *known)))}
