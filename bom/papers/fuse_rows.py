"""The fuse table: what each fuse is, what it guards, and the window its rating must lie in."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import inf, nan

import numpy as np

from bom.build import Build
from bom.duties.model import Duty
from bom.judge.ratings import rerating
from bom.loom.model import Place
from bom.money.bill import FUSES
from bom.papers.wire_rows import ampacity_a, wire_numbers
from bom.parts import Parts
from bom.read.catalogue import Catalogue


@dataclass(frozen=True)
class FuseRow:
    """One fuse as the papers print it; NaN where a figure is not known.

    wires     numbers of the wires it guards
    least_a   smallest rating that holds the load at its loading and ambient
    most_a    largest rating the thinnest guarded wire allows
    fits      ratings of the same body in the catalogue that lie between, by load and wire alone
    """

    place: str
    part: str
    name: str
    rated_a: float
    dc_volts_v: float
    breaking_a: float
    carry_a: float
    fault_low_a: float
    fault_high_a: float
    wires: tuple[str, ...]
    least_a: float
    most_a: float
    fits: tuple[float, ...]


def fuse_rows(build: Build, catalogue: Catalogue) -> list[FuseRow]:
    """List every fuse of the loom, pack side first."""
    places = [place for family in FUSES for place in build.loom.places if place.family == family]
    numbers = wire_numbers(build)
    return [_row(place, build, catalogue, numbers) for place in places]


def _row(place: Place, build: Build, catalogue: Catalogue, numbers: Mapping[str, str]) -> FuseRow:
    duty = build.duties[place.name]
    guarded = [link.second for link in build.loom.links if link.kind == "guards" and link.first == place.name]
    wires = tuple(numbers[name] for name in guarded)
    carry, low, high = (
        _end(duty, name, top) for name, top in (("carry_a", True), ("fault_low_a", False), ("fault_high_a", True))
    )
    entry = build.filled.get(place.name)
    if entry is None:
        return FuseRow(place.name, "left open", "", nan, nan, nan, carry, low, high, wires, nan, nan, ())
    part = entry.part
    least, most = _least_a(part, duty, build), _most_a(part, guarded, build)
    return FuseRow(
        place.name,
        entry.part_id,
        part.word("name")[0],
        float(part.number("rated_a")[0]),
        float(part.number("dc_volts_v")[0]),
        float(part.number("dc_breaking_a")[0]),
        carry,
        low,
        high,
        wires,
        least,
        most,
        _fits(part, catalogue, least, most),
    )


def _end(duty: Duty, name: str, top: bool) -> float:
    if name not in duty.needs:
        return nan
    span = duty.needs[name]
    return span.high if top else span.low


def _least_a(part: Parts, duty: Duty, build: Build) -> float:
    if "carry_a" not in duty.needs:
        return nan
    loading = float(part.number("loading_factor")[0])
    loading = build.facts.margins.fuse_loading if np.isnan(loading) else loading
    return duty.carry_a.high / (loading * float(rerating(part, ambient_c=duty.ambient_c.high)[0]))


def _most_a(part: Parts, guarded: list[str], build: Build) -> float:
    """Take the thinnest wire: its ampacity, and the rating whose sure fusing current it still stands."""
    fusing = float(part.number("conventional_fusing")[0])
    limit = build.facts.margins.fusing_over_ampacity
    most = inf
    for name in guarded:
        if name not in build.filled:
            return nan
        ampacity = ampacity_a(build.filled[name].part, build.duties[name], build)
        if np.isnan(ampacity) or np.isnan(fusing):
            return nan
        most = min(most, ampacity, limit * ampacity / fusing)
    return most if guarded else nan


def _fits(part: Parts, catalogue: Catalogue, least: float, most: float) -> tuple[float, ...]:
    table, body = catalogue.families[part.family], part.word("body")[0]
    return tuple(
        sorted(
            {
                float(rated)
                for rated, shape in zip(table.number("rated_a"), table.word("body"), strict=True)
                if shape == body and least <= rated <= most
            }
        )
    )
