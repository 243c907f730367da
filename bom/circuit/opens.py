"""The open walk: every wire opened once; and the bond that isolation denies, added once."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from bom.circuit.bike import FRAME, PACK_MINUS, RAIL_MINUS, WEAK, Bike, network
from bom.circuit.live import Live, Settled, has_gone_to_sleep, lit, live, settle
from bom.circuit.network import Resistor
from bom.circuit.waking import riding
from bom.loom.relay_names import STOP_LEADS, STOP_RELAY
from bom.read.states import State

FLOATS_V = 1.0  # a point that moves by less has not come adrift
ALIKE = 0.95  # points that rise within this of the most come adrift together
IDLE_A = 1e-5  # less than any part draws: a wire that carries less leaves everything as it was when it opens
ASLEEP_OHM = 1e6  # enough to take nothing, little enough to pull up a point that nothing else holds
MORE = 1.2  # a wire that carries less over its part than this is not worth a line
DEAD_STOP = "the kill switch, and nobody notices"
GROUND_LEAD = "throttle or display ground"


@dataclass(frozen=True)
class Opened:
    """A wire that came off, or broke.

    dark    loads that go out
    drops   coils that drop out
    floats  point that moves most against its minus, and the volts it stands at then; "" for none
    carries wire that now carries more than it may for ever, with its amps and its ampacity; "" for none
    """

    wire: str
    dark: tuple[str, ...]
    drops: tuple[str, ...]
    floats: str
    floats_v: float
    carries: str
    carries_a: float
    ampacity_a: float

    @property
    def harmless(self) -> bool:
        """Tell whether nobody would notice."""
        return not (self.dark or self.drops or self.floats or self.carries)


@dataclass(frozen=True)
class StrayReturn:
    """A pack minus that is lost, and comes home by a bond that is taken to be absent.

    bond     the bond, as it would come about
    wire     the wire of the traction return that is open
    through  the thin lead or wire that carries most over what it may
    amps     through it
    may_a    what it may carry
    drop_v   volts by which the controller's minus rises over the pack's; NaN where nothing flows
    """

    bond: str
    wire: str
    through: str
    amps: float
    may_a: float
    drop_v: float

    @property
    def over(self) -> float:
        """Give the amps over what it may carry."""
        return self.amps / self.may_a

    @property
    def by_signal_lead(self) -> bool:
        """Tell whether it is the signal lead itself that carries too much."""
        return self.through == GROUND_LEAD


def walk_opens(bike: Bike) -> tuple[Opened, ...]:
    """Open each wire in turn, in the state that asks most of the 12 V side."""
    state = riding(bike)
    if state is None:
        return ()
    whole = live(bike, state, added=_asleep(bike))
    before = settle(whole, bike.positions(state))
    shining = lit(bike, before)
    return tuple(_opened(bike, whole, before, shining, name) for name in bike.strands if name in whole.columns)


def _asleep(bike: Bike) -> tuple[Resistor, ...]:
    """Give what stays across a converter's input when it has let go: a minus that is lost is pulled up by it."""
    if "converter" not in bike.view.parts:
        return ()
    return (Resistor("converter's input capacitors", "converter in", "converter minus", ASLEEP_OHM),)


def _opened(bike: Bike, whole: Live, before: Settled, shining: set[str], wire: str) -> Opened:
    if abs(before.solution.amps[wire]) < IDLE_A:
        dead = (DEAD_STOP,) if wire in STOP_LEADS and STOP_RELAY in bike.coils else ()
        return Opened(wire, dead, (), "", 0.0, "", 0.0, 0.0)
    after = settle(whole, before.positions, (wire,), before.solution.volts)
    if has_gone_to_sleep(bike, after.solution):
        slept = live(bike, whole.state, without_source="converter", added=_asleep(bike))
        after = settle(slept, before.positions, (wire,))
    floats, floats_v = _floats(whole, before, after)
    carries, amps, ampacity = _carries(bike, before, after, wire)
    return Opened(
        wire,
        tuple(sorted(shining - lit(bike, after))),
        tuple(sorted(before.positions.coils - after.positions.coils)),
        floats,
        floats_v,
        carries,
        amps,
        ampacity,
    )


def _floats(whole: Live, before: Settled, after: Settled) -> tuple[str, float]:
    """Name the point of a minus side that rises most: a return that is lost lifts what hangs on it."""
    old, new = before.solution.volts, after.solution.volts
    rise = np.where(np.abs(old) < FLOATS_V, np.abs(new), 0.0)
    most = float(np.max(rise, initial=0.0))
    if most < FLOATS_V:
        return "", 0.0
    best = int(np.argmax(rise >= ALIKE * most))  # of those that rise together the one nearest to the pack
    return whole.compiled.points[best], float(new[best])


def _carries(bike: Bike, before: Settled, after: Settled, opened: str) -> tuple[str, float, float]:
    """Name the wire that now carries most over its ampacity, and did not before."""
    worst = ("", 0.0, 0.0)
    was, now = before.solution.amps, after.solution.amps
    for name, strand in bike.strands.items():
        if name == opened or not strand.ampacity_a > 0:
            continue
        old, new = abs(was.get(name, 0.0)), abs(now.get(name, 0.0))
        over = new / strand.ampacity_a
        if new > MORE * old and over > max(1.0, worst[1] / worst[2] if worst[2] else 0.0):
            worst = (name, new, strand.ampacity_a)
    return worst


def walk_stray_returns(bike: Bike) -> tuple[StrayReturn, ...]:
    """Add each bond that is taken to be absent, and open each wire of the traction return in turn.

    The controller's own ground of throttle, display or brake lead is joined to its minus inside. Where that lead
    meets the 12 V minus, and the converter joins that to the pack's, the motor's amps come home through it. Where
    the pack's minus touches the frame, they come home through the frame's thin bond to the 12 V minus.
    """
    state = riding(bike)
    if state is None:
        return ()
    return tuple(stray for bond in _bonds(bike) for stray in _strays(bike, state, *bond))


def _bonds(bike: Bike) -> list[tuple[str, Resistor, float]]:
    """List the bonds: what they are, their ohms, and what they carry; the frame where lamps return through it."""
    margins = bike.view.facts.margins
    ground = Resistor(GROUND_LEAD, "controller minus", RAIL_MINUS, margins.signal_ground_ohm)
    bonds = [("a signal ground on the 12 V minus", ground, margins.signal_ground_a)]
    if any(FRAME in (strand.wire.start, strand.wire.end) for strand in bike.strands.values()):
        touch = Resistor("pack minus on the frame", PACK_MINUS, FRAME, margins.joint_high_ohm)
        bonds.append(("pack minus touching the frame", touch, float("inf")))
    return bonds


def _strays(bike: Bike, state: State, told: str, bond: Resistor, bond_a: float) -> Iterator[StrayReturn]:
    before = bike.solve(network(bike, state, WEAK)).amps
    returns = [
        wire.name
        for wire in bike.view.loom.wires
        if bike.view.loom.place(wire.name).circuit == "traction" and wire.name.startswith("return to")
    ]
    for wire in returns:
        solution = bike.solve(network(bike, state, WEAK, without=wire, added=(bond,)))
        may = {name: strand.ampacity_a for name, strand in bike.strands.items() if name != wire}
        may[bond.name] = bond_a
        # Of what carries as it did before nothing is new; of rounding's last digits nothing is told.
        more = {
            name: round(abs(solution.amps[name]), 6)
            for name, most in may.items()
            if name in solution.amps and most > 0 and abs(solution.amps[name]) > MORE * abs(before.get(name, 0.0))
        }
        through = max(more, key=lambda name: (more[name] / may[name], name), default=bond.name)
        amps = more.get(through, 0.0)
        lift = solution.at("controller minus", PACK_MINUS) if amps > may[through] else float("nan")
        yield StrayReturn(told, wire, through, amps, may[through], lift)
