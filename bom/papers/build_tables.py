"""The tables of the build sheet: volts, fuses, parts by where they sit, wires, crimps and bolts."""

from collections.abc import Iterator, Mapping, Sequence
from math import isfinite

from bom import units
from bom.build import Build
from bom.choose.filled import NONE
from bom.loom.model import Place
from bom.papers.bench_words import number
from bom.papers.fuse_rows import FuseRow
from bom.papers.sheet_volts import pack_rows
from bom.papers.wire_ends import LUG_AT, crimp_rows
from bom.papers.wire_rows import WireRow, wire_rows
from bom.read.families import BY_NAME

Row = Mapping[str, object]
ZONES = ("box", "under seat", "frame", "bar")
SMALL = ("cable", "lug", "terminal")


def tables(build: Build, fuses: Sequence[FuseRow]) -> Row:
    """Give every table of the build by its name in the template."""
    wires = wire_rows(build)
    return {
        "volts": [{"name": name, "span": str(span), "because": span.because} for name, span in pack_rows(build)],
        "fuses": [_fuse(row) for row in fuses],
        "zones": [{"name": zone, "rows": list(_parts(build, zone))} for zone in ZONES],
        "pack_wires": [_wire(row) for row in wires if row.side == "pack"],
        "low_wires": [_wire(row) for row in wires if row.side != "pack"],
        "crimps": crimp_rows(build),
        "studs": list(_studs(build)),
    }


def _parts(build: Build, zone: str) -> Iterator[Row]:
    """List the parts of a zone; wires, crimps and what is shrunk over them have tables of their own."""
    for place in build.loom.places:
        shrunk = place.family == "sleeve" and place.circuit != "labels"
        if place.zone == zone and place.family not in SMALL and not shrunk:
            yield _part(build, place)


def _part(build: Build, place: Place) -> Row:
    entry = build.filled.get(place.name)
    return {
        "place": place.name,
        "family": BY_NAME[place.family].title,
        "part": entry.part_id if entry else NONE.upper(),
        "name": entry.part.word("name")[0] if entry else "",
        "count": f"{place.quantity:g}{' m' if place.family == 'sleeve' else ''}",
    }


def _fuse(row: FuseRow) -> Row:
    fits = ", ".join(f"{rated:g}" for rated in row.fits)
    return {
        "place": row.place,
        "part": row.part,
        "rated": number(row.rated_a, "A", 4),
        "volts": number(row.dc_volts_v, "V", 4),
        "carry": number(row.carry_a, "A"),
        "wires": ", ".join(row.wires) or "none",
        "fits": f"{fits} A" if fits else "none listed",
    }


def _wire(row: WireRow) -> Row:
    leads = f"{row.count} x " if row.count > 1 else ""
    guard = f"{row.guard} {row.guard_a:g} A" if row.guard and isfinite(row.guard_a) else row.guard or "none"
    return {
        "number": row.number,
        "start": row.start,
        "end": row.end,
        "length": leads + units.show(row.length_m, "length"),
        "area": number(row.area_mm2, "mm²"),
        "volts": row.class_text,
        "colour": row.colour,
        "cable": row.cable,
        "guard": guard,
        "first": row.first_end,
        "second": row.second_end,
    }


def _studs(build: Build) -> Iterator[Row]:
    """List every bolted joint with the size of its bolt."""
    for place in build.loom.places:
        entry = build.filled.get(place.name)
        if place.family == "lug" and entry:
            size = float(entry.part.number("stud_m")[0])
            yield {
                "joint": place.name.replace(LUG_AT, " at "),
                "bolt": f"M{size:g}" if isfinite(size) else "not known",
                "lug": entry.part_id,
                "count": f"{place.quantity:g}",
            }
