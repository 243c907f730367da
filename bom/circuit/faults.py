"""The fault walk: a short at every point of the loom, to its return and to the frame, one at a time."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from bom.circuit.bike import FRAME, PACK_MINUS, RAIL_MINUS, Bike
from bom.circuit.clearing import LEAST_A, SHARE, Fuse, Metals, Times, fuse_of, times_of
from bom.circuit.compiled import Compiled
from bom.circuit.fault import Fault, Hot
from bom.circuit.fault_network import CONVERTER, Limit, converter_limit, fault_network
from bom.circuit.metals import metals_of
from bom.circuit.shorts import Shorted, shorted
from bom.loom.builder import TAP_CIRCUITS

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

SHORT_OHM = 1e-4  # metal on metal
PATH_SHARE = 0.5
RETURN_KINDS = ("load", "controller", "meter", "charger", "key input", "coil", "closer", "buffer")


@dataclass(frozen=True)
class _Ground:
    """Both ends of the network, numbered alike, and what a walk asks of it."""

    low: Compiled
    high: Compiled
    fuses: tuple[Fuse, ...]
    metals: Metals
    wires: Ints
    guarded: npt.NDArray[np.bool_]
    limit: Limit
    capped: bool
    within_s: float


def walk_faults(bike: Bike) -> tuple[Fault, ...]:
    """Short every point of the loom that stands at volts, onto its return and onto the frame."""
    ground = _ground(bike)
    pairs, names = _pairs(bike, ground.high)
    walks = [shorted(network, pairs, short_ohm=SHORT_OHM) for network in (ground.low, ground.high)]
    return tuple(
        fault for low, high in zip(*walks, strict=True) for fault in _faults(ground, names[low.rows], low, high)
    )


def _ground(bike: Bike) -> _Ground:
    low, high = (Compiled(fault_network(bike, strongest=strongest)) for strongest in (False, True))
    columns = {resistor.name: number for number, resistor in enumerate(high.network.resistors)}
    fuses = tuple(
        fuse_of(bridge.name, columns[bridge.name], bike.view.parts.get(bridge.place))
        for bridge in bike.bridges
        if bridge.kind == "fuse"
    )
    strands = tuple(strand for name, strand in bike.strands.items() if name in columns)
    wires = np.array([columns[strand.wire.name] for strand in strands], dtype=np.intp)
    guarded = np.array([bool(strand.wire.guard) for strand in strands], dtype=bool)
    buffered = any(bridge.kind == "buffer" for bridge in bike.bridges)
    within_s = bike.view.facts.margins.fuse_open_s
    limit = converter_limit(bike)
    return _Ground(low, high, fuses, metals_of(bike, strands), wires, guarded, limit, not buffered, within_s)


def _pairs(bike: Bike, compiled: Compiled) -> tuple[Ints, list[tuple[str, str]]]:
    """List the shorts: each point onto its return, as near as the loom has one, and onto the frame."""
    index = compiled.index
    back = {bridge.start: bridge.end for bridge in bike.bridges if bridge.kind in RETURN_KINDS}
    back |= {"converter in": "converter minus", "12 V plus": "12 V minus", "pack plus": PACK_MINUS}
    taps = "minus post" if "minus post" in index else PACK_MINUS
    pack_side = _pack_points(bike)
    pairs, names = [], []
    for point, number in index.items():
        onto = back.get(point, taps if point in pack_side else RAIL_MINUS)
        for to, name in ((onto, "its return"), (FRAME, "the frame")):
            if to in index and to != point:
                pairs.append((number, index[to]))
                names.append((point, name))
    return np.array(pairs, dtype=np.intp).reshape(-1, 2), names


def _pack_points(bike: Bike) -> frozenset[str]:
    """Give the points that the wires at pack volts join."""
    at_pack = ("traction", *TAP_CIRCUITS)
    wires = [wire for wire in bike.view.loom.wires if bike.view.loom.place(wire.name).circuit in at_pack]
    return frozenset(point for wire in wires for point in (wire.start, wire.end))


@dataclass(frozen=True)
class _Walked:
    """Some shorts with all that was worked out of them, a row each.

    first  the fuse that has surely opened first, by column of the times
    """

    low_a: Floats
    high_a: Floats
    limited: npt.NDArray[np.bool_]
    times: Times
    first: Ints
    hot: tuple[list[Hot | None], list[Hot | None]]
    through: Floats
    given: Floats


def _faults(ground: _Ground, names: Sequence[tuple[str, str]], low: Shorted, high: Shorted) -> Iterator[Fault]:
    """Judge some shorts: amps first, then the fuses, then the wires. One that carries nothing to its return is none."""
    low_cut, limited = _cut(ground, ground.low, low, ground.limit.low_a)
    high_cut, _ = _cut(ground, ground.high, high, ground.limit.high_a)
    low_a, high_a = np.abs(low.amps) * low_cut, np.abs(high.amps) * high_cut
    low_through, high_through = np.abs(low.through) * low_cut[:, None], np.abs(high.through) * high_cut[:, None]
    columns = [fuse.column for fuse in ground.fuses]
    times = times_of(ground.fuses, low_through[:, columns], high_through[:, columns], high_a)
    first = np.argmin(np.nan_to_num(times.latest, nan=np.inf), axis=1) if columns else np.zeros(len(names), np.intp)
    hot = tuple(_hottest(ground, low_through, high_through, times, first, guarded=guarded) for guarded in (True, False))
    walked = _Walked(low_a, high_a, limited, times, first, (hot[0], hot[1]), high_through, np.abs(high.given))
    for row, (point, to) in enumerate(names):
        if to == "the frame" or high_a[row] > LEAST_A:
            yield _fault(ground, walked, row, point, to)


def _cut(ground: _Ground, compiled: Compiled, some: Shorted, limit_a: float) -> tuple[Floats, npt.NDArray[np.bool_]]:
    """Give the part of each short's amps that the converter's limit leaves, and whether it holds them down."""
    names = [source.name for source in compiled.network.sources]
    if CONVERTER not in names or not ground.capped:
        return np.ones(len(some.amps)), np.zeros(len(some.amps), dtype=bool)
    given = np.abs(some.given[:, names.index(CONVERTER)])
    limited = (given > SHARE * np.abs(some.amps)) & (given > limit_a)
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(limited, limit_a / given, 1.0), limited


def _hottest(
    ground: _Ground, low: Floats, high: Floats, times: Times, first: Ints, *, guarded: bool
) -> list[Hot | None]:
    """Give the hottest wire of each short, of those with a guard or of those without.

    Both ends count: few amps for long, and many for short.
    """
    which = np.flatnonzero(ground.guarded == guarded)
    if not len(which):
        return [None] * len(low)
    metals, rows = ground.metals, np.arange(len(low))
    best = which[np.argmax(high[:, ground.wires[which]] / metals.area_mm2[which], axis=1)]
    ends = []
    for amps, heat in ((low, times.heat_low), (high, times.heat_high)):
        time_s = heat[rows, first] if heat.size else np.full(len(low), np.inf)
        some = amps[rows, ground.wires[best]]
        ends.append(metals.after_c(best, some, np.nan_to_num(time_s, nan=np.inf)))
    carried = high[rows, ground.wires[best]] > LEAST_A
    hottest = np.maximum(*ends)
    return [
        Hot(metals.strands[wire].wire.name, float(end), float(metals.limit_c[wire]), float(metals.start_c[wire]))
        if flows
        else None
        for wire, end, flows in zip(best, hottest, carried, strict=True)
    ]


def _fault(ground: _Ground, walked: _Walked, row: int, point: str, to: str) -> Fault:
    times, column = walked.times, int(walked.first[row])
    part_in = np.flatnonzero(times.part_in[row])
    opens = len(part_in) > 0 and bool(np.isfinite(times.latest[row, column]))
    unknown = not opens and bool(np.isnan(times.latest[row, part_in]).any())
    # Where none surely opens, the smallest of those in the path is the one to change.
    least = min(part_in, key=lambda number: ground.fuses[number].rated_a, default=None)
    fuse = ground.fuses[column if opens else int(least)] if least is not None else None
    sources = ground.high.network.sources
    share = walked.through[row] > PATH_SHARE * walked.high_a[row]
    flows = walked.high_a[row] > LEAST_A
    return Fault(
        point=point,
        to=to,
        low_a=float(walked.low_a[row]),
        high_a=float(walked.high_a[row]),
        source=sources[int(np.argmax(walked.given[row]))].name if flows else "",
        limited=bool(walked.limited[row]),
        fuse=fuse.name if fuse else "",
        opens=opens,
        known=not unknown and (ground.limit.known or not walked.limited[row]),
        earliest_s=float(times.earliest[row, column]) if opens else float("inf"),
        latest_s=float(times.latest[row, column]) if opens else float("inf"),
        would_do_a=fuse.would_do_a(float(walked.low_a[row]), ground.within_s) if fuse and not opens else float("nan"),
        also_opens=_also(ground.fuses, times, row, column) if opens else "",
        wire=walked.hot[0][row],
        stub=walked.hot[1][row],
        path=tuple(ground.high.network.resistors[i].name for i in np.flatnonzero(share)) if flows else (),
    )


def _also(fuses: Sequence[Fuse], times: Times, row: int, first: int) -> str:
    """Name another fuse of the path that may open before the first one surely has."""
    early = np.where(times.part_in[row], np.nan_to_num(times.earliest[row], nan=0.0), np.inf)
    early[first] = np.inf
    other = int(np.argmin(early))
    return fuses[other].name if early[other] < times.latest[row, first] else ""
