"""A network as columns: points numbered, elements as arrays, ready for the sparse solver."""

from collections.abc import Sequence
from copy import copy
from typing import Protocol

import numpy as np
import numpy.typing as npt
from scipy.sparse import coo_array, csc_array
from scipy.sparse.csgraph import connected_components
from scipy.sparse.linalg import splu

from bom.circuit.network import Network

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]
Pattern = tuple[
    Ints, npt.NDArray[np.intc], npt.NDArray[np.intc]
]  # slot of each value, rows of the slots, columns' starts


class Factors(Protocol):
    """A factorised matrix of the sparse solver."""

    def solve(self, right: Floats) -> Floats:
        """Solve for one right side, or for a column each."""


HOLDS, LIMITS, OFF = 0, 1, 2  # what a converter does
DRAW_S, ASLEEP_S = 1e-9, 1e-6  # siemens beside every draw, and of a converter's input that has too little to run


class Compiled:
    """Arrays of one network."""

    def __init__(self, network: Network) -> None:
        """Number the points, references first."""
        self.network = network
        self.index: dict[str, int] = {}
        self._number(network)
        self.points = tuple(self.index)
        self.resistor_ends = self._ends([(r.start, r.end) for r in network.resistors])
        self.siemens = 1.0 / np.array([r.ohm for r in network.resistors], dtype=float)
        self.source_ends = self._ends([(s.plus, s.minus) for s in network.sources])
        self.source_v = np.array([s.volts for s in network.sources], dtype=float)
        self.source_s = 1.0 / np.array([s.ohm for s in network.sources], dtype=float)
        self.draw_ends = self._ends([(d.plus, d.minus) for d in network.draws])
        self.amount = np.array([d.amount for d in network.draws], dtype=float)
        self.least_v = np.array([d.least_v for d in network.draws], dtype=float)
        self.is_watts = np.array([d.kind == "watts" for d in network.draws], dtype=bool)
        self.input_ends = self._ends([(c.input_plus, c.input_minus) for c in network.converters])
        self.output_ends = self._ends([(c.output_plus, c.output_minus) for c in network.converters])
        self.islands = self._islands()
        _, self.grounded = np.unique(self.islands, return_index=True)
        self._patterns: dict[bytes, Pattern] = {}

    def with_siemens(self, siemens: Floats) -> "Compiled":
        """Give the same network with other resistors; none may be left out, so that the islands stay."""
        other = copy(self)
        other.siemens = siemens
        return other

    def _number(self, network: Network) -> None:
        ends = [(r.start, r.end) for r in network.resistors]
        ends += [(s.plus, s.minus) for s in network.sources]
        ends += [(d.plus, d.minus) for d in network.draws]
        for c in network.converters:
            ends += [(c.input_plus, c.input_minus), (c.output_plus, c.output_minus)]
        known = dict.fromkeys(point for pair in ends for point in pair)
        first = [point for point in network.references if point in known]
        self.index = {point: number for number, point in enumerate(dict.fromkeys((*first, *known)))}

    def _ends(self, pairs: Sequence[tuple[str, str]]) -> Ints:
        flat = [self.index[point] for pair in pairs for point in pair]
        return np.array(flat, dtype=np.intp).reshape(-1, 2)

    def _islands(self) -> Ints:
        """Number the islands: a converter's two sides are joined by nothing but what else joins them."""
        joined = np.concatenate(
            [self.resistor_ends, self.source_ends, self.draw_ends, self.input_ends, self.output_ends]
        )
        count = len(self.points)
        table = coo_array((np.ones(len(joined)), (joined[:, 0], joined[:, 1])), shape=(count, count))
        return np.asarray(connected_components(table, directed=False)[1], dtype=np.intp)

    def matrix(self, ends: Ints, siemens: Floats) -> Factors:
        """Factorise the nodal matrix of these conductances, each island grounded at its reference."""
        slots, indices, starts = self._pattern(ends)
        # The ground carries nothing: an island has no other way to it. Its size only has to suit the solver.
        weight = np.full(len(self.grounded), float(np.max(siemens, initial=1.0)))
        values = np.concatenate([siemens, siemens, -siemens, -siemens, weight])
        count = len(self.points)
        table = csc_array((np.bincount(slots, values, len(indices)), indices, starts), shape=(count, count))
        factors: Factors = splu(table, permc_spec="MMD_AT_PLUS_A", options={"SymmetricMode": True})
        return factors

    def _pattern(self, ends: Ints) -> Pattern:
        """Give where each value of the matrix goes; the same for every round and for all copies of a network."""
        key = ends.tobytes()
        if key not in self._patterns:
            a, b, ground, count = ends[:, 0], ends[:, 1], self.grounded, len(self.points)
            rows, columns = np.concatenate([a, b, a, b, ground]), np.concatenate([a, b, b, a, ground])
            places, slots = np.unique(columns * count + rows, return_inverse=True)
            starts = np.searchsorted(places, np.arange(count + 1) * count)
            self._patterns[key] = slots, (places % count).astype(np.intc), starts.astype(np.intc)
        return self._patterns[key]

    def across(self, volts: Floats, ends: Ints) -> Floats:
        """Give the volts across each pair of points."""
        return np.asarray(volts[ends[:, 0]] - volts[ends[:, 1]], dtype=float)

    def linear(self, volts: Floats, modes: Ints, *, with_draws: bool) -> Floats:
        """Solve the network with every draw replaced by its tangent at these volts."""
        ends = [self.resistor_ends, self.source_ends]
        siemens = [self.siemens, self.source_s]
        pushed = np.zeros(len(self.points))
        _push(pushed, self.source_ends, self.source_v * self.source_s)
        for number, converter in enumerate(self.network.converters):
            pair = self.output_ends[[number]]
            holds = 1.0 / converter.output_ohm if modes[number] == HOLDS else 1e-9
            ends.append(pair)
            siemens.append(np.array([holds]))
            if modes[number] == HOLDS:
                _push(pushed, pair, np.array([converter.output_v * holds]))
            elif modes[number] == LIMITS:
                _push(pushed, pair, np.array([converter.limit_a]))
        for pair, slope, push in self._tangents(volts, modes, with_draws=with_draws):
            ends.append(pair)
            siemens.append(slope)
            _push(pushed, pair, push)
        factors = self.matrix(np.concatenate(ends), np.concatenate(siemens))
        return factors.solve(pushed)

    def _tangents(self, volts: Floats, modes: Ints, *, with_draws: bool) -> list[tuple[Ints, Floats, Floats]]:
        """Give each draw as a conductance and a current pushed in, at these volts; at rest only the conductance."""
        taken_w, lowest_v = self._input_w(volts, modes)
        draws = (
            (self.draw_ends, self.amount, self.least_v, self.is_watts, DRAW_S),
            (self.input_ends, taken_w, lowest_v, np.ones(len(taken_w), dtype=bool), ASLEEP_S),
        )
        out = []
        for pair, amount, least_v, is_watts, asleep_s in draws:
            if not with_draws:
                out.append((pair, np.full(len(amount), DRAW_S), np.zeros(len(amount))))
                continue
            across = self.across(volts, pair)
            amps, slope = draw_amps(across, amount, least_v, is_watts)
            rest_s = np.where(across < least_v, asleep_s, DRAW_S)
            out.append((pair, slope + rest_s, slope * across - amps))
        return out

    def _input_w(self, volts: Floats, modes: Ints) -> tuple[Floats, Floats]:
        """Give the watts each converter takes, for what it gives at these volts."""
        given_a = self.output_a(volts, modes)
        out_v = self.across(volts, self.output_ends)
        taken = [
            (max(float(amps * v), 0.0) / c.efficiency + c.idle_w) * float(mode != OFF)
            for amps, v, c, mode in zip(given_a, out_v, self.network.converters, modes, strict=True)
        ]
        return np.array(taken, dtype=float), np.array([c.lowest_input_v for c in self.network.converters], dtype=float)

    def output_a(self, volts: Floats, modes: Ints) -> Floats:
        """Give the amps each converter gives."""
        across = self.across(volts, self.output_ends)
        out = []
        for v, mode, c in zip(across, modes, self.network.converters, strict=True):
            held = (c.output_v - float(v)) / c.output_ohm
            out.append(held if mode == HOLDS else c.limit_a if mode == LIMITS else 0.0)
        return np.array(out, dtype=float)

    def first_modes(self) -> Ints:
        """Let every converter hold its volts to begin with."""
        return np.zeros(len(self.network.converters), dtype=np.intp)

    def next_modes(self, volts: Floats, output_a: Floats, modes: Ints) -> Ints:
        """Let a converter go that has too little to live on, and limit one that gives too much."""
        out = modes.copy()
        input_v = self.across(volts, self.input_ends)
        for number, c in enumerate(self.network.converters):
            if input_v[number] < c.lowest_input_v:
                out[number] = OFF
            elif modes[number] == HOLDS and output_a[number] > c.limit_a:
                out[number] = LIMITS if c.keeps_current else OFF
        return out

    def let_go(self, volts: Floats, modes: Ints) -> tuple[str, ...]:
        """Name the draws of watts below their least volts, and the converters that are off."""
        low = self.is_watts & (self.across(volts, self.draw_ends) < self.least_v) & (self.amount > 0)
        names = [d.name for d, below in zip(self.network.draws, low, strict=True) if below]
        return (*names, *(c.name for c, mode in zip(self.network.converters, modes, strict=True) if mode == OFF))

    def limiting(self, modes: Ints) -> tuple[str, ...]:
        """Name the converters that limit."""
        return tuple(c.name for c, mode in zip(self.network.converters, modes, strict=True) if mode == LIMITS)

    def amps(self, volts: Floats, output_a: Floats) -> dict[str, float]:
        """Give the amps of every element at these volts; a source's from its plus outwards, as a converter's."""
        net = self.network
        through = self.across(volts, self.resistor_ends) * self.siemens
        given = (self.source_v - self.across(volts, self.source_ends)) * self.source_s
        drawn, _ = draw_amps(self.across(volts, self.draw_ends), self.amount, self.least_v, self.is_watts)
        names = [e.name for e in net.resistors] + [e.name for e in net.sources]
        names += [e.name for e in net.draws] + [e.name for e in net.converters]
        return dict(zip(names, np.concatenate([through, given, drawn, output_a]).tolist(), strict=True))


def draw_amps(
    across: Floats, amount: Floats, least_v: Floats, is_watts: npt.NDArray[np.bool_]
) -> tuple[Floats, Floats]:
    """Give the amps of draws at these volts, and how fast they change with them.

    Above least_v: P / V or a set current. Below it P V / least_v^2 or I V / least_v, as a resistor.
    """
    above = across >= least_v
    safe = np.where(above, across, least_v)
    amps = np.where(is_watts, amount / safe, amount)
    slope = np.where(is_watts, -amount / safe**2, 0.0)
    low = amount / np.where(is_watts, least_v**2, least_v)
    return np.where(above, amps, low * across), np.where(above, slope, low)


def _push(pushed: Floats, ends: Ints, amps: Floats) -> None:
    """Add currents into the first points and out of the second ones."""
    np.add.at(pushed, ends[:, 0], amps)
    np.subtract.at(pushed, ends[:, 1], amps)
