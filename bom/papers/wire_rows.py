"""The wire list: one row a wire, with its cable, its fuse and what is crimped on its ends."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite, nan

from bom.build import Build
from bom.choose.filled import NONE
from bom.duties.model import Duty
from bom.judge.ratings import cable_ampacity, drop_v
from bom.judge.verdict import Verdict
from bom.loom.model import Wire
from bom.papers.standing import worst_at
from bom.papers.wire_ends import wire_ends
from bom.parts import Parts

PACK_MINUS, PROTECTED_MINUS = "pack minus", "protected minus"


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
    part, margins = entry.part if entry else None, build.facts.margins
    first, second = wire_ends(wire, build)
    return WireRow(
        number=number,
        name=wire.name,
        title=_named(place.title, build),
        start=_named(wire.start, build),
        end=_named(wire.end, build),
        count=max(1, round(place.quantity / wire.length_m)),
        length_m=wire.length_m,
        cable=entry.part_id if entry else NONE,
        cable_name=part.word("name")[0] if part else "",
        area_mm2=_figure(part, "area_mm2"),
        class_text=_class(part, place.circuit),
        colour=(part.word("colour")[0] if part else "") or "as it is",
        guard=wire.guard,
        guard_a=_figure(guard.part if guard else None, "rated_a"),
        carry_a=_need(duty, "carry_a"),
        ampacity_a=float(cable_ampacity(part, duty, margins).values[0]) if part else nan,
        drop_v=float(drop_v(part, duty, margins).values[0]) if part and duty.has("carry_a") else nan,
        allowed_drop_v=_need(duty, "drop_v"),
        first_end=first,
        second_end=second,
        side="pack" if duty.has("fault_low_a") or place.circuit == "phase" else "12 V",
        verdict=verdict,
    )


def _named(point: str, build: Build) -> str:
    """Name the pack's minus for what it is where the battery management opens that side."""
    protected = build.facts.job.pack.bms.opens == "minus"
    return point.replace(PACK_MINUS, PROTECTED_MINUS) if protected else point


def _need(duty: Duty, name: str) -> float:
    return duty.needs[name].high if duty.has(name) else nan


def _figure(part: Parts | None, name: str) -> float:
    return float(part.number(name)[0]) if part else nan


def _class(part: Parts | None, circuit: str) -> str:
    if part is None:
        return ""
    volts = _figure(part, "class_ac_v" if circuit == "phase" else "class_dc_v")
    return f"{volts:g} V {'AC' if circuit == 'phase' else 'DC'}" if isfinite(volts) else "not known"
