"""The 12 V loads by operating state."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import partial

from bom.duties.load_traces import printed_watts
from bom.physics.lamp import UpperWatts, power_at_v, upper_watts
from bom.physics.lamp_categories import category_watts
from bom.read.job import JobFile, Load
from bom.read.margins import Margins
from bom.read.states import State
from bom.span import Span


@dataclass(frozen=True)
class LoadAmps:
    """One load at the volts of the 12 V side, all its pieces together.

    each_w  upper watts of one piece at the rail
    amps    of all pieces
    source  where the watts come from
    """

    load: Load
    each_w: float
    amps: float
    source: str


@dataclass(frozen=True)
class Budget:
    """What the 12 V side asks for.

    loads   every load by name
    states  amps by state name
    kinds   the states themselves
    """

    loads: Mapping[str, LoadAmps]
    states: Mapping[str, float]
    rail_v: float
    kinds: tuple[State, ...]

    @property
    def worst(self) -> tuple[str, float]:
        """Name the state that asks most, and its amps."""
        return max(self.states.items(), key=lambda item: item[1])

    @property
    def parked(self) -> float:
        """Give the amps of the state in which least is on: key off, nothing charges, no parking lamp burns."""
        rest = [self.states[state.name] for state in self.kinds if not state.key and state.traction == "none"]
        return min(rest, default=0.0)

    def amps(self, names: Iterable[str]) -> float:
        """Add the amps of some loads."""
        return sum(self.loads[name].amps for name in names if name in self.loads)


def budget(job: JobFile, margins: Margins, coil_a: float, kinds: tuple[State, ...]) -> Budget:
    """Work out the 12 V budget; `coil_a` is what the relay and contactor coils hold with the key on."""
    rail = margins.rail_volts
    loads = {load.name: load_amps(load, rail) for load in job.loads}
    states = {}
    for state in kinds:
        amps = sum(entry.amps for entry in burning(state, loads.values()))
        states[state.name] = amps + (coil_a if state.key else 0.0)
    return Budget(loads, states, rail, kinds)


def burning(state: State, loads: Iterable[LoadAmps]) -> list[LoadAmps]:
    """List the loads that are on in a state."""
    return [entry for entry in loads if state.conditions & set(entry.load.on)]


def load_amps(load: Load, rail_v: float) -> LoadAmps:
    """Work out one load at the volts of the 12 V side, filaments by the watts their category may take."""
    if load.current is not None:
        return LoadAmps(load, load.current * rail_v, load.current * load.count, "amps as given in the job")
    assert load.power is not None  # the job file gives power or current
    if load.category and load.kind == "LED":
        upper = category_watts(category=load.category, printed_w=load.power)
        each, source = upper.watts, upper.source
    elif load.kind == "filament":
        upper = greatest(load)
        each = float(power_at_v(test_w=upper.watts, test_v=upper.test_v, voltage_v=rail_v))
        source = upper.source
    else:
        each, source = load.power, "watts as given in the job"
    return LoadAmps(load, each, each * load.count / rail_v, source)


def greatest(load: Load) -> UpperWatts:
    """Give the greatest watts of a filament: of its own category where it is said, else of any with its watts."""
    printed_w = load.power or float("nan")
    if load.category:
        return category_watts(category=load.category, printed_w=printed_w)
    return upper_watts(printed_w=printed_w, nominal_v=12)


def largest_filament_a(entries: Budget) -> float:
    """Amps of the largest filament load, which lights cold at a multiple of it."""
    filaments = [entry.amps for entry in entries.loads.values() if entry.load.kind == "filament"]
    return max(filaments, default=0.0)


def horns_on(entries: Budget, state: str) -> list[LoadAmps]:
    """List the horns and other interrupters that are on in a state, by its name."""
    kind = next(kind for kind in entries.kinds if kind.name == state)
    return [entry for entry in burning(kind, entries.loads.values()) if entry.load.kind == "motor"]


def side_watts(job: JobFile) -> Span:
    """Lamp watts a flasher sees on one side, as printed on the bulbs; a load counts those that burn together."""
    lamps = [load for load in job.loads if "indicate" in load.on and load.kind in ("filament", "LED")]
    watts = sum((load.power or 0.0) * load.count for load in lamps)
    return Span.of(watts, "power", "lamps of one side, watts as printed", partial(printed_watts, lamps))
