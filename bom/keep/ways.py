"""Changes of the job in which a donor item that goes might stay."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np

from bom.arrangement import with_item
from bom.check.donor import light_kind
from bom.choose.donor import FIRM
from bom.choose.donor_loom import as_it_was
from bom.loom.low_volt import circuit_of
from bom.loom.returns import gains_returns
from bom.read.catalogue import Catalogue
from bom.read.job import Item, JobFile, Load

PURPOSES = {
    "head lamp": "head",
    "tail lamp": "tail and stop",
    "indicators": "indicator",
    "dash lamps": "instrument",
}


@dataclass(frozen=True)
class Way:
    """A change in which an item might stay.

    title    what is done, as a builder would say it
    job      the job with it
    minutes  of work beside what the item itself asks, a rough estimate
    """

    title: str
    job: JobFile
    minutes: float


def ways_to_keep(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """List the changes that might keep an item; whether they do is for the build to say.

    The item is put there whatever the rules say, so that they judge it and no other.
    """
    for change in WAYS.get(item.kind, ()):
        yield from change(item, _kept(job, item), catalogue)


def _kept(job: JobFile, item: Item) -> JobFile:
    return with_item(job, item.name, keep="yes")


def _through_a_relay(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """Let a kill switch that closes to stop pull in a relay."""
    if item.contact == "closes to stop" and not item.relay:
        title = "invert it: it pulls in a relay that opens the coil chain"
        yield Way(title, with_item(job, item.name, relay=True), 25)


def _switch_relay(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """Let a switch pull in a relay, so that it carries a coil's amps in place of its loads'."""
    circuits = {circuit_of(load) for load in job.loads if load.name in item.feeds}
    if len(circuits) == 1 and not item.relay:
        holds = item.contact == "opens when braking"
        title = "let it hold in a relay whose rest contact lights" if holds else "let it pull in a relay that carries"
        yield Way(f"{title} its loads", with_item(job, item.name, relay=True), 20)


def _one_circuit(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """Let a switch of too few contacts feed one circuit: its loads share a fuse."""
    fed = [load for load in job.loads if load.name in item.feeds]
    if len({circuit_of(load) for load in fed}) > 1:
        shared = fed[0].circuit or fed[0].name
        changed = {load.name: load.model_copy(update={"circuit": shared}) for load in fed}
        yield Way("put what it feeds on one circuit", _with_loads(job, changed), 10)


def _filaments_back(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """Give a flasher that feels its lamps the filaments it was made for."""
    changed = {load.name: _as_it_was(load) for load in job.loads if _was_filament(load)}
    if changed:
        yield Way("put its filament lamps back", _with_loads(job, changed), 5.0 * len(changed))


def _led_lamps(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """Let LED lamps take less from a switch than the filaments do, where their base is known."""
    fed = [load for load in job.loads if load.name in item.feeds and load.kind == "filament"]
    changed = {load.name: led for load in fed if (led := _as_led(load, job, catalogue)) is not None}
    if fed and len(changed) == len(fed):
        flashes = any("indicate" in load.on for load in fed)
        title = f"LED lamps behind it{', and a flasher that does not mind' if flashes else ''}"
        yield Way(title, _with_loads(job, changed), 5.0 * len(fed))


def _by_the_frame(item: Item, job: JobFile, catalogue: Catalogue) -> Iterator[Way]:
    """Let lamps come home through the frame as they did, where only a wish says otherwise."""
    if gains_returns(job) and job.donor.earth == "negative":
        wishes = job.wishes.model_copy(update={"two_wire": None})
        yield Way("let lamps return by the frame", job.model_copy(update={"wishes": wishes}), 0)


def _was_filament(load: Load) -> bool:
    return load.kind == "LED" and "indicate" in load.on and load.was is not None


def _as_it_was(load: Load) -> Load:
    return as_it_was(load).model_copy(update={"was": None, "fit": "donor"})


def _as_led(load: Load, job: JobFile, catalogue: Catalogue) -> Load | None:
    """Give the load as the LED of fewest watts that its holder takes; None where none on sale is known to fit."""
    lamps = catalogue.families["lamp"]
    shared = load.same_lamp_as or any(other.same_lamp_as == load.name for other in job.loads)
    purpose = load.purpose or PURPOSES.get(light_kind(load), "")
    suits = [
        index
        for index in range(len(lamps))
        if lamps.word("technology")[index] == "LED"
        and lamps.word("purpose")[index] == purpose
        and lamps.word("base")[index] == load.base
        and lamps.number("supply_max_v")[index] >= catalogue.margins.rail_high_v
        and lamps.word("evidence")[index] in FIRM
        and lamps.ids[index] in catalogue.offers
    ]
    watts = lamps.number("power_w")[suits] if suits else np.array([np.nan])
    if shared or not load.base or load.power is None or np.isnan(watts).all():
        return None
    changes = {"kind": "LED", "power": float(np.nanmin(watts)), "was": load.power, "fit": "new", "purpose": purpose}
    return load.model_copy(update={**changes, "category": ""})


def _with_loads(job: JobFile, changed: dict[str, Load]) -> JobFile:
    return job.model_copy(update={"loads": [changed.get(load.name, load) for load in job.loads]})


Change = Callable[[Item, JobFile, Catalogue], Iterator[Way]]
_LAMP_SWITCH: tuple[Change, ...] = (_led_lamps,)
_ONE_WAY: tuple[Change, ...] = (_switch_relay, _led_lamps)
WAYS: dict[str, tuple[Change, ...]] = {
    "kill switch": (_through_a_relay,),
    "flasher": (_filaments_back,),
    "horn button": (_switch_relay,),
    "start button": (_switch_relay,),
    "light switch": (_one_circuit, *_ONE_WAY),
    "dip switch": (_one_circuit, *_LAMP_SWITCH),
    "indicator switch": (_one_circuit, *_LAMP_SWITCH),
    "brake switch": _ONE_WAY,
    "loom": (_by_the_frame,),
    "earth strap": (_by_the_frame,),
}
