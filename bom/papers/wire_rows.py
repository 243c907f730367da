"""The wire list: one row a wire, with its cable, its fuse and what is crimped on its ends."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite, isnan, nan

from bom.build import Build
from bom.duties.model import Duty
from bom.judge.ratings import cable_ampacity
from bom.judge.verdict import Verdict
from bom.loom.model import Wire
from bom.papers.standing import worst_at
from bom.papers.wire_ends import wire_ends
from bom.parts import Parts
from bom.physics.conductor import hot_resistance_ohm


@dataclass(frozen=True)
class WireRow:
    """One wire as the papers print it; NaN where a figure is not known.

    number      "W01", in the order of the loom
    count       leads of this length (three between controller and motor)
    guard       place of the fuse before it, "" for none
    first_end   what sits on the end named `start`
    second_end  what sits on the end named `end`
    """

    number: str
    name: str
    title: str
    start: str
    end: str
    count: int
    length_m: float
    cable: str
    cable_name: str
    area_mm2: float
    class_text: str
    colour: str
    guard: str
    guard_a: float
    carry_a: float
    ampacity_a: float
    drop_v: float
    allowed_drop_v: float
    first_end: str
    second_end: str
    side: str
    verdict: Verdict


def wire_rows(build: Build) -> list[WireRow]:
    """List every wire of the loom."""
    verdicts = {name: finding.verdict for name, finding in worst_at(build).items()}
    verdicts |= {hole.place.name: hole.verdict for hole in build.holes}
    return [
        _row(f"W{index:02d}", wire, build, verdicts.get(wire.name, Verdict.NOT_ASKED))
        for index, wire in enumerate(build.loom.wires, start=1)
    ]


def wire_numbers(build: Build) -> Mapping[str, str]:
    """Give the number of each wire by its name."""
    return {wire.name: f"W{index:02d}" for index, wire in enumerate(build.loom.wires, start=1)}


def _row(number: str, wire: Wire, build: Build, verdict: Verdict) -> WireRow:
    place, duty = build.loom.place(wire.name), build.duties[wire.name]
    entry, guard = build.filled.get(wire.name), build.filled.get(wire.guard)
    part = entry.part if entry else None
    first, second = wire_ends(wire, build)
    return WireRow(
        number,
        wire.name,
        place.title,
        wire.start,
        wire.end,
        max(1, round(place.quantity / wire.length_m)),
        wire.length_m,
        entry.part_id if entry else "left open",
        part.word("name")[0] if part else "",
        _figure(part, "area_mm2"),
        _class(part, place.circuit),
        wire.colour or (part.word("colour")[0] if part else "") or "as it is",
        wire.guard,
        float(guard.part.number("rated_a")[0]) if guard else nan,
        _need(duty, "carry_a"),
        ampacity_a(part, duty, build) if part else nan,
        _drop_v(part, duty, build) if part else nan,
        _need(duty, "drop_v"),
        first,
        second,
        "pack" if "fault_low_a" in duty.needs or place.circuit == "phase" else "12 V",
        verdict,
    )


def ampacity_a(part: Parts, duty: Duty, build: Build) -> float:
    """Amps the cable at a place carries for ever there; NaN where its insulation is not known."""
    margins = build.facts.margins
    answer = cable_ampacity(
        part,
        ambient_c=duty.ambient_c.high,
        together=duty.together.high,
        terminal_c=margins.terminal_c,
    )
    return float(answer[0])


def _drop_v(part: Parts, duty: Duty, build: Build) -> float:
    """Volts lost along the wire at its running amps and its hottest, as the rule of the drop takes it."""
    limit_c = build.facts.margins.terminal_c
    own_c = _figure(part, "conductor_max_c")
    mohm = _figure(part, "resistance_mohm_per_m")
    if isnan(mohm) or "carry_a" not in duty.needs:
        return nan
    ohm = hot_resistance_ohm(
        resistance_20_mohm_per_m=mohm,
        length_m=duty.length_m.high,
        temperature_c=limit_c if isnan(own_c) else min(own_c, limit_c),
    )
    return float(ohm) * duty.carry_a.high


def _need(duty: Duty, name: str) -> float:
    return duty.needs[name].high if name in duty.needs else nan


def _figure(part: Parts | None, name: str) -> float:
    return float(part.number(name)[0]) if part else nan


def _class(part: Parts | None, circuit: str) -> str:
    if part is None:
        return ""
    volts = _figure(part, "class_ac_v" if circuit == "phase" else "class_dc_v")
    return f"{volts:g} V {'AC' if circuit == 'phase' else 'DC'}" if isfinite(volts) else "not known"
