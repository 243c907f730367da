"""One joint choice: one part a place, at least cost, with every pair rule as a constraint.

A place that cannot be filled stays open at a price no part reaches, so there is always an
answer and it says what is missing. Equal costs are settled by the order of the part ids.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import partial

import numpy as np
import numpy.typing as npt

from bom.memory import Memory

Flags = npt.NDArray[np.bool_]
# Costs are scaled to about one; sums nearer than this are equal.
SAME_COST = 1e-7


@dataclass(frozen=True)
class Slot:
    """A place to fill: what each candidate costs, and its rank among equals (lower wins)."""

    name: str
    costs: tuple[float, ...]
    ranks: tuple[int, ...]


@dataclass(frozen=True)
class Pair:
    """Two places that bear on each other: which candidates of the first go with which of the second.

    loose  one of them is forced, so the pair may be broken, at a price
    """

    first: str
    second: str
    fits: Flags
    loose: bool


@dataclass
class _Rows:
    """Constraint rows in the making, as sparse triplets with bounds."""

    starts: list[int] = field(default_factory=lambda: [0])
    columns: list[int] = field(default_factory=list)
    values: list[float] = field(default_factory=list)
    lower: list[float] = field(default_factory=list)
    upper: list[float] = field(default_factory=list)

    def add(self, entries: Mapping[int, float], lower: float, upper: float) -> None:
        self.columns += entries.keys()
        self.values += entries.values()
        self.starts.append(len(self.columns))
        self.lower.append(lower)
        self.upper.append(upper)


@dataclass(frozen=True)
class _Layout:
    """Where each candidate's variable stands; each slot's last variable leaves it open."""

    offsets: Mapping[str, int]
    costs: npt.NDArray[np.float64]
    ranks: npt.NDArray[np.float64]

    def candidate(self, slot: str, index: int) -> int:
        return self.offsets[slot] + index


def choose(slots: Sequence[Slot], pairs: Sequence[Pair], memory: Memory) -> Mapping[str, int | None]:
    """Choose one candidate a slot; None where the slot must stay open.

    Slots that nothing ties together are chosen apart, and what was chosen before in this run is not chosen again.
    Raises RuntimeError when the solver does not prove its answer best.
    """
    slots = sorted(slots, key=lambda slot: slot.name)
    turned = sorted(map(_turned, pairs), key=lambda pair: (pair.first, pair.second, pair.fits.tobytes()))
    picked: dict[str, int | None] = {}
    for some, between in _apart(slots, [pair for pair in turned if not pair.fits.all()]):
        numbers = {slot.name: number for number, slot in enumerate(some)}
        bears = (
            tuple((slot.costs, slot.ranks) for slot in some),
            tuple((numbers[pair.first], numbers[pair.second], pair.fits.tobytes(), pair.loose) for pair in between),
        )
        best = memory.once("choice", bears, partial(_best, some, between))
        picked |= zip(numbers, best, strict=True)
    return {slot.name: picked[slot.name] for slot in slots}


def _apart(slots: Sequence[Slot], pairs: Sequence[Pair]) -> list[tuple[list[Slot], list[Pair]]]:
    """Part the slots into groups that no pair joins, each with its pairs."""
    group_of = {slot.name: {slot.name} for slot in slots}
    for pair in pairs:
        one, other = sorted((group_of[pair.first], group_of[pair.second]), key=len)
        if one is not other:
            other |= one
            group_of |= dict.fromkeys(one, other)
    parted: dict[int, tuple[list[Slot], list[Pair]]] = {}
    for slot in slots:
        parted.setdefault(id(group_of[slot.name]), ([], []))[0].append(slot)
    for pair in pairs:
        parted[id(group_of[pair.first])][1].append(pair)
    return list(parted.values())


def _best(slots: Sequence[Slot], pairs: Sequence[Pair]) -> list[int | None]:
    """Choose for slots that are tied together; one alone takes its cheapest candidate, of equals the first by rank."""
    kept = _undominated(slots, pairs)
    if len(slots) == 1:
        return [next(iter(kept[slots[0].name]), None)]
    slots = [_slimmer(slot, kept[slot.name]) for slot in slots]
    pairs = [replace(pair, fits=pair.fits[np.ix_(kept[pair.first], kept[pair.second])]) for pair in pairs]
    layout = _lay_out(slots, pairs)
    rows = _rows(slots, pairs, layout)
    best = _solve(layout.costs, rows)
    cost = float(layout.costs @ best)
    rows.add({i: float(value) for i, value in enumerate(layout.costs) if value}, -np.inf, cost + SAME_COST)
    answer = _solve(layout.ranks, rows)
    picked = [(slot.name, _picked(slot, layout, answer)) for slot in slots]
    return [None if index is None else kept[name][index] for name, index in picked]


def _undominated(slots: Sequence[Slot], pairs: Sequence[Pair]) -> dict[str, list[int]]:
    """List, by rank, the candidates of each slot that no other one of the slot can replace.

    One replaces another when it costs less (or as much, with a lower rank) and goes with every partner the
    other goes with. No best answer is lost, and dropping one may make its partners replaceable: repeat.
    """
    kept = {slot.name: sorted(range(len(slot.costs)), key=lambda i: slot.ranks[i]) for slot in slots}
    sides = _sides(pairs)
    waiting = [slot for slot in slots if slot.costs]
    while waiting:
        shrunk: set[str] = set()
        for slot in waiting:
            best = _leaders(slot, kept, sides[slot.name])
            if len(best) < len(kept[slot.name]):
                kept[slot.name] = best
                shrunk.update(other for other, _ in sides[slot.name])
        waiting = [slot for slot in slots if slot.name in shrunk]
    return kept


def _sides(pairs: Sequence[Pair]) -> Mapping[str, list[tuple[str, Flags]]]:
    """List, for each slot, its partner slots with the grid seen from its own side."""
    sides: dict[str, list[tuple[str, Flags]]] = defaultdict(list)
    for pair in pairs:
        sides[pair.first].append((pair.second, pair.fits))
        sides[pair.second].append((pair.first, pair.fits.T))
    return sides


def _leaders(slot: Slot, kept: Mapping[str, list[int]], sides: Sequence[tuple[str, Flags]]) -> list[int]:
    """Of a slot's candidates keep those that no cheaper one goes with all the same partners as."""
    own = sorted(kept[slot.name], key=lambda index: (slot.costs[index], slot.ranks[index]))
    grids = [grid[np.ix_(own, kept[other])] for other, grid in sides]
    partners = np.packbits(np.concatenate([np.ones((len(own), 1), dtype=bool), *grids], axis=1), axis=1)
    lost = (partners[:, None] & ~partners[None]).any(axis=2)  # partners the row has and the column lacks
    replaceable = np.tril(~lost, k=-1).any(axis=1)
    return sorted((own[i] for i in np.flatnonzero(~replaceable)), key=lambda index: slot.ranks[index])


def _turned(pair: Pair) -> Pair:
    """Turn a pair so that its names are in order: the model must not depend on the order it is given in."""
    return pair if pair.first <= pair.second else Pair(pair.second, pair.first, pair.fits.T, pair.loose)


def _slimmer(slot: Slot, kept: Sequence[int]) -> Slot:
    return Slot(slot.name, tuple(slot.costs[i] for i in kept), tuple(slot.ranks[i] for i in kept))


def _lay_out(slots: Sequence[Slot], pairs: Sequence[Pair]) -> _Layout:
    """Place every variable, and scale all costs so that the dearest part of every slot together cost a half.

    Breaking a pair costs more than any set of parts, leaving a slot open more than breaking every pair.
    """
    ceiling = 1.0 + 2.0 * sum(max(slot.costs, default=0.0) for slot in slots)
    opened = 1.0 + sum(1 for pair in pairs if pair.loose)
    offsets: dict[str, int] = {}
    costs: list[float] = []
    ranks: list[int] = []
    for slot in slots:
        offsets[slot.name] = len(costs)
        costs += [*(cost / ceiling for cost in slot.costs), opened]
        ranks += [*slot.ranks, 0]
    for number, pair in enumerate(pairs):
        if pair.loose:
            offsets[f"pair {number}"] = len(costs)
            costs.append(1.0)
            ranks.append(0)
    return _Layout(offsets, np.array(costs, dtype=float), np.array(ranks, dtype=float))


def _rows(slots: Sequence[Slot], pairs: Sequence[Pair], layout: _Layout) -> _Rows:
    rows = _Rows()
    sizes = {slot.name: len(slot.costs) for slot in slots}
    for slot in slots:
        start = layout.offsets[slot.name]
        rows.add({start + i: 1.0 for i in range(sizes[slot.name] + 1)}, 1.0, 1.0)
    for number, pair in enumerate(pairs):
        slack = layout.offsets.get(f"pair {number}")
        _pair_rows(rows, layout, pair.first, pair.second, pair.fits, sizes, slack)
        _pair_rows(rows, layout, pair.second, pair.first, pair.fits.T, sizes, slack)
    return rows


def _pair_rows(
    rows: _Rows, layout: _Layout, one: str, other: str, fits: Flags, sizes: Mapping[str, int], slack: int | None
) -> None:
    """Whoever stands at one place needs a partner that fits at the other, unless that stays open.

    Candidates with the same partners share a row.
    """
    groups: dict[bytes, list[int]] = defaultdict(list)
    for index in range(sizes[one]):
        if not fits[index].all():
            groups[fits[index].tobytes()].append(index)
    for members in groups.values():
        entries = {layout.candidate(one, index): 1.0 for index in members}
        for partner in np.flatnonzero(fits[members[0]]):
            entries[layout.candidate(other, int(partner))] = -1.0
        entries[layout.candidate(other, sizes[other])] = -1.0
        if slack is not None:
            entries[slack] = -1.0
        rows.add(entries, -np.inf, 0.0)


def _solve(costs: npt.NDArray[np.float64], rows: _Rows) -> npt.NDArray[np.float64]:
    import highspy

    count = len(costs)
    lp = highspy.HighsLp()
    lp.num_col_, lp.num_row_ = count, len(rows.lower)
    lp.col_cost_, lp.col_lower_, lp.col_upper_ = costs, np.zeros(count), np.ones(count)
    lp.row_lower_, lp.row_upper_ = np.array(rows.lower), np.array(rows.upper)
    lp.a_matrix_.format_ = highspy.MatrixFormat.kRowwise
    lp.a_matrix_.start_ = np.array(rows.starts)
    lp.a_matrix_.index_ = np.array(rows.columns)
    lp.a_matrix_.value_ = np.array(rows.values)
    lp.integrality_ = [highspy.HighsVarType.kInteger] * count
    solver = highspy.Highs()  # type: ignore[no-untyped-call]
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    for costly in ("mip_heuristic_run_feasibility_jump", "mip_detect_symmetry"):
        solver.setOptionValue(costly, False)
    solver.setOptionValue("presolve", "off")  # on problems of this size all three cost more than they save
    solver.setOptionValue("random_seed", 1)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.passModel(lp)
    solver.run()
    if solver.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        raise RuntimeError(f"the choice was not proved best: {solver.getModelStatus()}")
    return np.round(np.array(solver.getSolution().col_value))


def _picked(slot: Slot, layout: _Layout, answer: npt.NDArray[np.float64]) -> int | None:
    start = layout.offsets[slot.name]
    for index in range(len(slot.costs)):
        if answer[start + index] > 0.5:
            return index
    return None
