"""Everything that is walked and solved of one finished build."""

from dataclasses import dataclass
from functools import cached_property

from bom.circuit.bike import Bike, bike_of
from bom.circuit.dips import Dip, below_s, worst_dip
from bom.circuit.fault import Fault
from bom.circuit.faults import walk_faults
from bom.circuit.key_faults import KeyFault, walk_key_faults
from bom.circuit.lamp_earths import Backfed, backfed
from bom.circuit.lights import Light, lights
from bom.circuit.motor_side import Figure, motor_side
from bom.circuit.opens import Opened, StrayReturn, walk_opens, walk_stray_returns
from bom.circuit.rushes import Rush, rushes
from bom.circuit.standing import Standing, stand_states
from bom.circuit.telltale import FarSide, far_side
from bom.circuit.waking import Waking, wake
from bom.judge.loom_view import LoomView


@dataclass(frozen=True)
class Walks:
    """The solved states and the walks of a build, each worked out when it is first asked for."""

    bike: Bike

    @classmethod
    def of(cls, view: LoomView) -> "Walks":
        """Take a finished build."""
        return cls(bike_of(view))

    @cached_property
    def states(self) -> tuple[Standing, ...]:
        """Every operating state."""
        return stand_states(self.bike)

    @cached_property
    def lights(self) -> tuple[Light, ...]:
        """What each lamp gets."""
        return lights(self.bike, self.states)

    @cached_property
    def lamp_earths(self) -> tuple[Backfed, ...]:
        """Each shared lamp return lost, and what it feeds backwards."""
        return backfed(self.bike)

    @cached_property
    def far_side(self) -> FarSide | None:
        """What the dark side gets through a telltale across the sides."""
        return far_side(self.bike, self.states)

    @cached_property
    def dip(self) -> Dip | None:
        """The worst dip of the 12 V side."""
        return worst_dip(self.bike)

    def below_s(self, volts: float) -> float:
        """Estimate how long the worst dip stays below some volts."""
        return below_s(self.bike, self.dip, volts) if self.dip else 0.0

    def weakest_pack(self, state: Standing) -> tuple[float, float]:
        """Give the pack's own volts and its ohms in a state, as it was solved: at its weakest."""
        pack = next(source for source in state.solution.compiled.network.sources if source.name == "pack")
        return pack.volts, pack.ohm

    @cached_property
    def faults(self) -> tuple[Fault, ...]:
        """A short at every point."""
        return walk_faults(self.bike)

    @cached_property
    def opens(self) -> tuple[Opened, ...]:
        """Every wire opened."""
        return walk_opens(self.bike)

    @cached_property
    def strays(self) -> tuple[StrayReturn, ...]:
        """The traction return lost, with the bond that isolation denies."""
        return walk_stray_returns(self.bike)

    @cached_property
    def rushes(self) -> tuple[Rush, ...]:
        """What rushes in at every closing."""
        return rushes(self.bike, self.faults)

    @cached_property
    def motor(self) -> tuple[Figure, ...]:
        """The figures of the motor's side."""
        return motor_side(self.bike)

    @cached_property
    def waking(self) -> Waking | None:
        """The energising sequence."""
        return wake(self.bike)

    @cached_property
    def key_faults(self) -> tuple[KeyFault, ...]:
        """Each contact of the key welded shut, and stuck open."""
        return walk_key_faults(self.bike)
