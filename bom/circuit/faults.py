"""The fault walk: a short at every point of the loom, to its return and to the frame, one at a time."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

from bom.circuit.bike import FRAME, PACK_MINUS, RAIL_MINUS, Bike
from bom.circuit.breaking import Breaking, breaking
from bom.circuit.clearing import LEAST_A, SHARE, Fuse, Metals, Openings, fuse_of, openings
from bom.circuit.compiled import Compiled
from bom.circuit.fault import TO_FRAME, Fault, Hot
from bom.circuit.fault_network import CONVERTER, Limit, converter_limit, fault_network
from bom.circuit.hottest import hottest
from bom.circuit.metals import metals_of
from bom.circuit.network import Network
from bom.circuit.shorts import Shorted, shorted
from bom.circuit.way import in_order
from bom.loom.builder import TAP_CIRCUITS
from bom.loom.model import Bridge

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.intp]

_Name = tuple[str, str, str]
"""A short: its point, what it touches in words, and the point it touches."""

SHORT_OHM = 1e-4  # metal on metal
PATH_SHARE = 0.5
LEAST_V = 1.0  # points nearer than this stand at like volts: two minus ends between which a battery is charged
RETURN_KINDS = ("load", "controller", "meter", "pilot", "charger", "key input", "coil", "closer", "buffer")


@dataclass(frozen=True)
class _Ground:
    """Both ends of the network, numbered alike, and what a walk asks of it.

    empty  resistors that stand for an open place: nobody knows what a short through them would do
    """

    low: Compiled
    high: Compiled
    fuses: tuple[Fuse, ...]
    metals: Metals
    wires: Ints
    empty: Ints
    guarded: npt.NDArray[np.bool_]
    limit: Limit
    capped: bool
    within_s: float


def walk_faults(bike: Bike) -> tuple[Fault, ...]:
    """Short every point of the loom that stands at volts, onto its return and onto the frame.

    None is told whose way lies through an open place: what stands there later decides.

    Where all that bears on the shorts was met before in this run they are not walked again.
    """
    networks = tuple(fault_network(bike, strongest=strongest) for strongest in (False, True))
    return bike.view.memory.once("faults", (networks, _bears(bike)), lambda: _walked(bike, *networks))


def _bears(bike: Bike) -> tuple[object, ...]:
    """Gather what bears on the shorts beside the networks: wires in their air, the parts they and fuses are."""
    view = bike.view
    wires = tuple((strand, view.loom.place(name), view.parts.get(name)) for name, strand in bike.strands.items())
    fuses = tuple(
        (view.parts.get(bridge.place), _breaks(bike, bridge)) for bridge in bike.bridges if bridge.kind == "fuse"
    )
    return wires, fuses, bike.bridges, converter_limit(bike), repr(view.facts.job.ambient), view.facts.margins


def _breaks(bike: Bike, bridge: Bridge) -> Breaking:
    return breaking(bike.view.parts.get(bridge.place), bike.view.duties[bridge.place])


def _walked(bike: Bike, low: Network, high: Network) -> tuple[Fault, ...]:
    ground = _ground(bike, *(Compiled(network, bike.view.memory) for network in (low, high)))
    pairs, names = _pairs(bike, ground.high)
    walks = [shorted(network, pairs, short_ohm=SHORT_OHM) for network in (ground.low, ground.high)]
    return tuple(
        fault for low, high in zip(*walks, strict=True) for fault in _faults(ground, names[low.rows], low, high)
    )


def _ground(bike: Bike, low: Compiled, high: Compiled) -> _Ground:
    columns = {resistor.name: number for number, resistor in enumerate(high.network.resistors)}
    fuses = tuple(
        fuse_of(bridge.name, columns[bridge.name], bike.view.parts.get(bridge.place), _breaks(bike, bridge))
        for bridge in bike.bridges
        if bridge.kind == "fuse"
    )
    strands = tuple(strand for name, strand in bike.strands.items() if name in columns)
    wires = np.array([columns[strand.wire.name] for strand in strands], dtype=np.intp)
    guarded = np.array([bool(strand.wire.guard) for strand in strands], dtype=bool)
    buffered = any(bridge.kind == "buffer" for bridge in bike.bridges)
    within_s = bike.view.facts.margins.fuse_open_s
    limit = converter_limit(bike)
    empty = np.array([columns[name] for name in _open_places(bike) if name in columns], dtype=np.intp)
    return _Ground(low, high, fuses, metals_of(bike, strands), wires, empty, guarded, limit, not buffered, within_s)


def _open_places(bike: Bike) -> Iterator[str]:
    """Name the wires without a cable and the bridges whose place has no part."""
    yield from (name for name in bike.strands if name not in bike.view.parts)
    yield from (bridge.name for bridge in bike.bridges if bridge.place and bridge.place not in bike.view.parts)


def _pairs(bike: Bike, compiled: Compiled) -> tuple[Ints, list[_Name]]:
    """List the shorts: each point onto its return, as near as the loom has one, and onto the frame."""
    index = compiled.index
    back = {bridge.start: bridge.end for bridge in bike.bridges if bridge.kind in RETURN_KINDS}
    back |= {"converter in": "converter minus", "12 V plus": "12 V minus", "pack plus": PACK_MINUS}
    taps = "minus post" if "minus post" in index else PACK_MINUS
    pack_side = _pack_points(bike)
    pairs, names = [], []
    for point, number in index.items():
        onto = back.get(point, taps if point in pack_side else RAIL_MINUS)
        for to, name in ((onto, "its return"), (FRAME, TO_FRAME)):
            if to in index and to != point:
                pairs.append((number, index[to]))
                names.append((point, name, to))
    return np.array(pairs, dtype=np.intp).reshape(-1, 2), names


def _pack_points(bike: Bike) -> frozenset[str]:
    """Give the points that the wires at pack volts join."""
    at_pack = ("traction", *TAP_CIRCUITS)
    wires = [wire for wire in bike.view.loom.wires if bike.view.loom.place(wire.name).circuit in at_pack]
    return frozenset(point for wire in wires for point in (wire.start, wire.end))


@dataclass(frozen=True)
class _Walked:
    """Some shorts with all that was worked out of them, a row each."""

    low_a: Floats
    high_a: Floats
    limited: npt.NDArray[np.bool_]
    opened: Openings
    hot: tuple[list[Hot | None], list[Hot | None]]
    through: Floats
    given: Floats


def _faults(ground: _Ground, names: Sequence[_Name], low: Shorted, high: Shorted) -> Iterator[Fault]:
    """Judge some shorts: amps first, then the fuses, then the wires. One that carries nothing to its return is none."""
    stands = np.abs(high.open_v) >= LEAST_V
    low_cut, limited = _cut(ground, ground.low, low, ground.limit.low_a)
    high_cut, _ = _cut(ground, ground.high, high, ground.limit.high_a)
    low_cut, high_cut = low_cut * stands, high_cut * stands
    low_a, high_a = np.abs(low.amps) * low_cut, np.abs(high.amps) * high_cut
    low_through, high_through = np.abs(low.through) * low_cut[:, None], np.abs(high.through) * high_cut[:, None]
    columns = [fuse.column for fuse in ground.fuses]
    opened = openings(ground.fuses, low_through[:, columns], high_through[:, columns], high_a)
    hot = hottest(ground.metals, ground.guarded, (low_through[:, ground.wires], high_through[:, ground.wires]), opened)
    walked = _Walked(low_a, high_a, limited, opened, hot, high_through, np.abs(high.given))
    most = np.maximum(PATH_SHARE * high_a, LEAST_A)[:, None]
    guessed = np.logical_or.reduce(high_through[:, ground.empty] > most, axis=1)
    for row, name in enumerate(names):
        if (name[1] == TO_FRAME or high_a[row] > LEAST_A) and not guessed[row]:
            yield _fault(ground, walked, row, name)


def _cut(ground: _Ground, compiled: Compiled, some: Shorted, limit_a: float) -> tuple[Floats, npt.NDArray[np.bool_]]:
    """Give the part of each short's amps that the converter's limit leaves, and whether it holds them down."""
    names = [source.name for source in compiled.network.sources]
    if CONVERTER not in names or not ground.capped:
        return np.ones(len(some.amps)), np.zeros(len(some.amps), dtype=bool)
    given = np.abs(some.given[:, names.index(CONVERTER)])
    limited = (given > SHARE * np.abs(some.amps)) & (given > limit_a)
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.where(limited, limit_a / given, 1.0), limited


def _fault(ground: _Ground, walked: _Walked, row: int, name: _Name) -> Fault:
    point, to, back = name
    opened = walked.opened
    first, smallest, also = (int(column[row]) for column in (opened.first, opened.smallest, opened.also))
    opens = first >= 0
    # Where none surely opens, the smallest of those in the path is the one to change.
    which = first if opens else smallest
    fuse = ground.fuses[which] if which >= 0 else None
    breaks = fuse.breaks if fuse and opened.stays[row] >= 0 else Breaking()
    low_a, high_a, limited = float(walked.low_a[row]), float(walked.high_a[row]), bool(walked.limited[row])
    flows = high_a > LEAST_A
    sources, resistors = ground.high.network.sources, ground.high.network.resistors
    source = sources[int(np.argmax(walked.given[row]))]
    carriers = [resistors[column] for column in np.flatnonzero(walked.through[row] > PATH_SHARE * high_a)]
    return Fault(
        point=point,
        to=to,
        low_a=low_a,
        high_a=high_a,
        source=source.name if flows else "",
        limited=limited,
        fuse=fuse.name if fuse else "",
        opens=opens,
        bursts=breaks.short,
        unsaid=breaks.unsaid,
        known=bool(opened.known[row]) and not breaks.unsaid and (ground.limit.known or not limited),
        earliest_s=float(opened.earliest_s[row]),
        latest_s=float(opened.latest_s[row]),
        would_do_a=fuse.would_do_a(low_a, ground.within_s) if fuse and not opens and breaks.sound else float("nan"),
        also_opens=ground.fuses[also].name if also >= 0 else "",
        wire=walked.hot[0][row],
        stub=walked.hot[1][row],
        path=in_order(carriers, source, point, back) if flows else (),
    )
