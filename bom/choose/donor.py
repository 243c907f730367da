"""A donor item described as a part of its family, so that the same rules judge it."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import partial
from math import nan

import numpy as np

from bom.choose.donor_loom import NOMINAL_OVER_COPPER, SAID, as_it_was, loom_wire
from bom.choose.donor_traces import LOWEST_SERVED_FRACTION, fed_together, service_traces, tried_traces, wire_traces
from bom.duties.budget import load_amps
from bom.memory import Memory
from bom.parts import DONOR, Parts
from bom.read.families import BY_NAME, COMMON
from bom.read.job import Item, JobFile
from bom.read.margins import Margins
from bom.span import Span
from bom.trace import Trace

SERVED = "served in the donor"
TRIED = "opened on the bench"
FIRM = ("data sheet", "marked", "measured")
# Where the battery fed the lamps a brake switch closes to light; in an ignition's return it may open to.
CLOSES = "assumed: on a battery it closes when braking, common practice"
COUNTED = "counted, as the job says"
# A contact that opened its own horn or coil for years may go on opening it: any time constant of the 12 V side.
SERVED_MS = 100.0
# A contact tried on 13.5 V with its own load is taken to break it at the highest volts of the rail (common practice).
TRIED_TO_V = 14.4
NOMINAL_V = {"6 V": 6.0, "12 V": 12.0}


@dataclass(frozen=True)
class Service:
    """What the donor asked of an item for years: a printed point as good as a test.

    nominal_v  of the donor's supply
    volts_v  on charge
    amps     running, None where it is not known
    rush     cold filaments it closed on, over its running amps
    told     where what it proves comes from, by column
    on_battery  the donor's battery fed its stop lamp, not the coils
    tried    amps that a test on the bench with its own load proves, by column, each with where it comes from
    """

    nominal_v: float
    volts_v: float
    amps: float | None
    rush: float
    told: Mapping[str, Trace] = field(default_factory=dict)
    on_battery: bool = True
    tried: Mapping[str, tuple[float, Trace]] = field(default_factory=dict)

    @property
    def at_rail(self) -> bool:
        """Tell whether it served at 12 V; what served at 6 V proves nothing of what it breaks at twice the volts."""
        return self.nominal_v >= NOMINAL_V["12 V"]


def served(item: Item, job: JobFile, margins: Margins) -> Service:
    """Work out what an item served: as said, else the loads it fed in a DC donor."""
    service = _served(item, job, margins)
    return replace(service, on_battery=job.donor.lighting != "AC", tried=_tried(item, job, margins))


def _tried(item: Item, job: JobFile, margins: Margins) -> dict[str, tuple[float, Trace]]:
    """Tell what a test with its own load proves: it carried the load, and closed on it cold as it opened it."""
    if item.tested is None:
        return {}
    fed = [as_it_was(load) for load in job.loads if load.name in item.feeds]
    cold = any(load.kind == "filament" for load in fed)
    rush = margins.cold_filament if cold else 1.0
    told = tried_traces(item.tested, item.name, margins, cold=cold)
    return {"carry_a": (item.tested, told["carry_a"]), "make_a": (item.tested * rush, told["make_a"])}


def _served(item: Item, job: JobFile, margins: Margins) -> Service:
    nominal_v = NOMINAL_V[job.donor.supply]
    volts_v = round(nominal_v * margins.served_volts_fraction, 6)
    if item.served is not None:
        running = Span.given(item.served, "current", "carried for years", "donor.items.served", item.name)
        told = service_traces(nominal_v, running, margins, cold=bool(item.feeds))
        return Service(nominal_v, volts_v, item.served, margins.cold_filament if item.feeds else 1.0, told)
    loads = {load.name: load for load in job.loads}
    fed = [loads[name] for name in item.feeds if name in loads]
    unknown = any(job.donor.fed_by_coils(load) or (load.fit == "new" and load.was is None) for load in fed)
    if not fed or unknown or job.donor.switchgear == "electronic":  # whose switches carried milliamps
        return Service(nominal_v, volts_v, None, 1.0)
    fed = [as_it_was(load) for load in fed]
    entries = [load_amps(load, margins.rail_volts) for load in fed]
    # The same watts asked twice the amps of a 6 V switch; amps that were measured are amps.
    more = NOMINAL_V["12 V"] / nominal_v if all(load.power is not None for load in fed) else 1.0
    amps = sum(entry.amps for entry in entries) * more
    running = Span.of(amps, "current", "of the loads it fed", partial(fed_together, entries, margins, more))
    told = service_traces(nominal_v, running, margins, cold=True)
    return Service(nominal_v, volts_v, amps, margins.cold_filament, told)


def donor_part(family: str, item: Item, service: Service) -> Parts:
    """Describe a donor item as a part; what is not said of it stays unknown."""
    columns = (*COMMON, *BY_NAME[family].columns)
    numbers = {column.name: np.array([nan]) for column in columns if column.kind == "number"}
    words = {column.name: ("",) for column in columns if column.kind != "number"}
    part = DONOR + item.name
    words |= {"part_id": (part,), "name": (f"{item.name} (donor's own)",), "evidence": (item.evidence,)}
    exceptions, known = [], _known(item, service)
    for name, (value, evidence) in known.items():
        if name in numbers and isinstance(value, float):
            numbers[name] = np.array([value])
            exceptions.append(f"{name}={evidence}")
        elif name in words and isinstance(value, str):
            words[name] = (value,)
            exceptions.append(f"{name}={evidence}")
    proved = {name for name, (_, evidence) in known.items() if evidence == SERVED}
    told = {name: trace for name, trace in service.told.items() if name in proved}
    told |= {name: trace for name, (_, trace) in service.tried.items() if known[name][1] == TRIED}
    if item.wire is not None:
        told |= wire_traces(item.wire, item.name, NOMINAL_OVER_COPPER)
    words["exceptions"] = ("; ".join(exceptions),)
    curves = {"breaking_points": {part: tuple(_points(part, item, service))}}
    return Parts(family, (part,), numbers, words, curves, (True,), None, told)


def donors_own(family: str, item: Item, job: JobFile, margins: Margins, memory: Memory) -> Parts:
    """Describe a donor item by what it served; jobs that say the same of it and of what it fed share the part."""
    fed = repr([load for load in job.loads if load.name in item.feeds])
    donor = job.donor
    bears = (family, repr(item), fed, donor.supply, donor.lighting, donor.switchgear, margins)
    return memory.once("donor's own part", bears, lambda: donor_part(family, item, served(item, job, margins)))


def _stands(item: Item, value: float, served: tuple[float | str, str] | None) -> bool:
    """Tell whether a figure of the job stands: hearsay does where service proves nothing, or proves more."""
    return item.evidence in FIRM or served is None or (isinstance(served[0], float) and value < served[0])


def _known(item: Item, service: Service) -> dict[str, tuple[float | str, str]]:
    """Gather every figure the job gives or the donor's service proves, with how it is known."""
    known: dict[str, tuple[float | str, str]] = {}
    if service.amps is not None:
        known = {
            "carry_a": (service.amps, SERVED),
            "make_a": (service.amps * service.rush, SERVED),
        }
        if service.at_rail:
            known["dc_volts_v"] = (service.volts_v, SERVED)
    said = {
        "dc_volts_v": item.dc_volts,
        "carry_a": item.carries,
        "bus_a": item.carries,
        "way_a": item.way,
        "load_min_w": item.watts_min,
        "load_max_w": item.watts_max,
        "area_mm2": item.wire,
    }
    known |= {
        name: (value, item.evidence)
        for name, value in said.items()
        if value is not None and _stands(item, value, known.get(name))
    }
    for name, (value, _) in service.tried.items():
        known.setdefault(name, (value, TRIED))
    if item.tested is not None and (item.dc_volts or 0.0) < TRIED_TO_V:
        known["dc_volts_v"] = (TRIED_TO_V, "measured")
    counted = {"pins": item.pins, "ways": item.ways, "contacts": item.contacts}
    known |= {name: (float(number), SAID) for name, number in counted.items() if number is not None}
    if item.fuses:
        known["takes_body"] = (item.fuses, SAID)
    if item.lead is not None:
        known["lead_mm2"] = (item.lead, COUNTED)
    if item.wire is not None:
        known |= loom_wire(item.wire)
    if item.contact:
        known["contact"] = (item.contact, SAID)
    elif item.kind == "key switch" and service.amps is not None:
        known["contact"] = ("opens to stop", SERVED)  # it fed loads, so it makes when on
    elif item.kind == "brake switch" and service.on_battery:
        known["contact"] = ("closes when braking", CLOSES)
    if item.latches is not None:
        known["latches"] = ("yes" if item.latches else "no", SAID)
    known["kind"] = (item.kind, SAID)
    return known | _flasher(item, service) if item.kind == "flasher" else known


def _flasher(item: Item, service: Service) -> dict[str, tuple[float | str, str]]:
    """Tell what a donor's flasher served, and what is said of it, which stands over that."""
    known: dict[str, tuple[float | str, str]] = {
        "supply_min_v": (service.nominal_v * LOWEST_SERVED_FRACTION, SERVED),
        "supply_max_v": (service.volts_v, SERVED),
        "polarity": ("either", SERVED),
    }
    said = {
        "supply_min_v": item.supply_min,
        "supply_max_v": item.supply_max,
        "polarity": item.polarity,
        "load_min_w": 0.0 if item.senses == "nothing" else None,
    }
    known |= {name: (value, item.evidence) for name, value in said.items() if value is not None}
    if item.rate is not None:
        known["flashes_per_min"] = (item.rate, COUNTED)
    return known


def _points(part: str, item: Item, service: Service) -> list[dict[str, object]]:
    """Give the breaking points of a donor contact: what is printed, what it served, and what it opened on the bench."""
    base = {"part_id": part, "time_constant_ms": 1.0, "direction": "forward"}
    points: list[dict[str, object]] = []
    proven = service.amps is not None and service.at_rail
    if item.breaks is not None and item.dc_volts is not None and (item.evidence in FIRM or not proven):
        points.append({**base, "volts_v": item.dc_volts, "breaks_a": item.breaks, "evidence": item.evidence})
    if service.amps is not None and service.at_rail:
        most = service.amps
        if item.breaks is not None and item.evidence in FIRM and (item.dc_volts or 0.0) >= service.volts_v:
            most = min(most, item.breaks)  # what was read stands over what is assumed of its loads
        served_point = {"volts_v": service.volts_v, "breaks_a": most, "evidence": SERVED}
        points.append({**base, **served_point, "time_constant_ms": SERVED_MS})
    if item.tested is not None:
        tried = {"volts_v": TRIED_TO_V, "breaks_a": item.tested, "evidence": "measured"}
        points.append({**base, **tried, "time_constant_ms": SERVED_MS})
    return points
