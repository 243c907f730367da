"""What lamps, horn, tails, flasher and the switches of the bar are asked."""

from functools import partial

from bom.duties.budget import side_watts
from bom.duties.circuits import Facts, Needs, amps
from bom.duties.load_traces import each_watts, load_figure, one_shell
from bom.loom.low_volt import circuit_of
from bom.loom.model import Loom, Place
from bom.read.job import Load
from bom.span import Span
from bom.trace import Origin, step


def _lamp(place: Place, loom: Loom, facts: Facts) -> Needs:
    load = next(load for load in facts.job.loads if load.name == place.load)
    entry, margins = facts.budget.loads[load.name], facts.margins
    number = Span.given(float(load.count), "", "lamps of one load that burn together", "loads.count", load.name)
    each = partial(step, "I / n", I=load_figure(entry, margins), n=number)
    return {
        **_lights(load, facts),
        "carry_a": amps(entry.amps / load.count, "amps of the load list", each),
        "burning": number,
    }


def _lights(load: Load, facts: Facts) -> Needs:
    """Give the watts of a lamp, and of the lesser of two lights that share it: a sheet names the greater first."""
    lights = [load, *(light for light in facts.job.loads if light.same_lamp_as == load.name)]
    watts = sorted((_light_w(light, facts) for light in lights), key=lambda light: -light.high)
    return dict(zip(("lamp_w", "second_w"), watts, strict=False))


def _light_w(light: Load, facts: Facts) -> Span:
    if light.power is not None:
        return Span.given(light.power, "power", "watts of the load list", "loads.power", light.name)
    entry = facts.budget.loads[light.name]
    return Span.of(entry.each_w, "power", "watts of the load list", each_watts(entry, facts.margins).trace)


def _tail(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask the amps of one shell, with every light that shares its lamp."""
    names = [load.name for load in facts.job.loads if place.load in (load.name, load.same_lamp_as)]
    each = sum(facts.budget.loads[name].amps / facts.budget.loads[name].load.count for name in names)
    because = f"one shell of the {place.load} at {facts.budget.rail_v:g} V"
    return {
        "carry_a": amps(each, because, partial(one_shell, facts, names)),
        "reach_m": facts.margins.of("tail_m", "length", "from the shell to its splice"),
    }


def _flasher(place: Place, loom: Loom, facts: Facts) -> Needs:
    return {"flasher_w": side_watts(facts.job)}


def _bar_switch(place: Place, loom: Loom, facts: Facts) -> Needs:
    """Ask a contact for each circuit, where it feeds loads of several."""
    item = next(item for item in facts.job.donor.items if place.name == f"switch {item.name}")  # kept or not
    behind = list(dict.fromkeys(circuit_of(load) for load in facts.job.loads if load.name in item.feeds))
    if len(behind) < 2:
        return {}
    because = f"it feeds the {', the '.join(behind)}"
    return {"ways": Span.of(float(len(behind)), "", because, Origin("job", "donor.items.feeds", item.name))}


LIGHTS = {
    "lamp": _lamp,
    "horn": _lamp,
    "tail": _tail,
    "flasher": _flasher,
    "bar_switch": _bar_switch,
}
