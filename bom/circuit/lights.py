"""What each lamp gets, in the state that gives it least and in the one that gives it most: light and life."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import isnan, nan

from bom.circuit.bike import Bike
from bom.circuit.standing import Standing, lamp_volts
from bom.duties.budget import greatest
from bom.errors import RangeError
from bom.physics.lamp import SIGNAL_TEST_V, flux_ratio, life_ratio
from bom.physics.ranges import Answer
from bom.read.job import Load

COPPER = ("area_mm2", "resistance_mohm_per_m")


@dataclass(frozen=True)
class Light:
    """One lamp of the load list.

    test_v      volts at which its light and life are stated; NaN where it is no filament
    low_v       fewest volts at it, in low_state
    high_v      most volts at it, in high_state
    light       at the fewest volts, over that at test volts; NaN outside the formula, or no filament
    life        at the most volts, over that at test volts; NaN likewise
    assumed     what is taken for copper that nobody counted on its way, "" where all is known
    """

    load: str
    kind: str
    test_v: float
    low_v: float
    low_state: str
    high_v: float
    high_state: str
    light: float
    life: float
    assumed: str


def lights(bike: Bike, states: Sequence[Standing]) -> tuple[Light, ...]:
    """List every lamp that is lit in a state that stands, in the order of the load list.

    Telltales are left out: they light nobody's way, and one across the sides shares its volts with the far lamps.
    """
    met = [(standing.state.name, lamp_volts(standing, bike)) for standing in states if not standing.collapsed]
    guesses = list(_guesses(bike))
    lamps = [load for load in bike.view.facts.job.loads if load.kind in ("filament", "LED") and not load.is_telltale]
    return tuple(light for load in lamps for light in _light(bike, load, met, guesses))


def _light(
    bike: Bike,
    load: Load,
    met: Sequence[tuple[str, dict[str, float]]],
    guesses: Sequence[tuple[str, tuple[str, ...]]],
) -> Iterator[Light]:
    names = [bridge.name for bridge in bike.bridges if bridge.kind == "load" and load.name in bridge.loads]
    # Rounded, so that of states alike the first is named whatever the last digits of a machine say.
    found = [(round(volts[name], 6), state) for state, volts in met for name in names if name in volts]
    found = [(volts, state) for volts, state in found if not isnan(volts)]
    if not found:
        return
    (low_v, low_state), (high_v, high_state) = min(found, key=_volts), max(found, key=_volts)
    test_v = _test_v(load) if load.kind == "filament" else nan
    yield Light(
        load.name,
        load.kind,
        test_v,
        low_v,
        low_state,
        high_v,
        high_state,
        _within(flux_ratio, low_v, test_v),
        _within(life_ratio, high_v, test_v),
        _assumed(guesses, load),
    )


def _volts(found: tuple[float, str]) -> float:
    return found[0]


def _test_v(load: Load) -> float:
    """Give the test volts of the category its watts are taken from; of amps alone, those of signalling lamps."""
    return SIGNAL_TEST_V if load.power is None else greatest(load).test_v


def _within(ratio: Callable[..., Answer], voltage_v: float, test_v: float) -> float:
    """Give a ratio, or NaN where the volts lie outside what its formula takes."""
    try:
        return float(ratio(voltage_v=voltage_v, test_v=test_v))
    except RangeError:
        return nan


def _guesses(bike: Bike) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Name each wire to a load whose copper is not known, with what it is taken as, and the loads behind it."""
    for name in bike.strands:
        loads, part = bike.view.loom.place(name).loads, bike.view.parts.get(name)
        if not loads:
            continue
        known = part is not None and not all(isnan(float(part.number(column)[0])) for column in COPPER)
        if not known:
            thin = f"taken as {bike.view.facts.margins.unknown_wire_mm2:g} mm²" if part else "has no cable"
            yield f"copper of {name} {thin}", loads


def _assumed(guesses: Sequence[tuple[str, tuple[str, ...]]], load: Load) -> str:
    """Name the first wire of the lamp's circuit whose copper is not known."""
    return next((guess for guess, loads in guesses if load.name in loads), "")
