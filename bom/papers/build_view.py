"""The view of the build sheet: every text and figure its template prints, as words."""

from collections.abc import Mapping, Sequence
from math import isfinite

from bom import units
from bom.arrived.arrivals import arrivals, aside_lines
from bom.build import Build
from bom.check.cause_words import cause_lines, places_words
from bom.check.causes import Cause
from bom.check.report import donor_counts
from bom.duties.strings import most_apart_v
from bom.loom.returns import is_wired
from bom.loom.taps import RAIL_CLAMP
from bom.papers.ask_rows import goods_rows
from bom.papers.bench import Bench, bench
from bom.papers.bench_bars import passes_words
from bom.papers.bench_tests import bench_tests
from bom.papers.circuit_view import circuit_view
from bom.papers.fuse_rows import FuseRow, fuse_rows
from bom.papers.lead_view import lead_view
from bom.papers.owner_words import labels, owner
from bom.papers.plug_volts import plug_volts
from bom.papers.registration_rows import registration_rows
from bom.papers.routing import routing
from bom.papers.sheet_volts import pack_rows
from bom.papers.standing import ended, headline, marked
from bom.papers.unknowns import unknowns
from bom.papers.wire_ends import LUG_AT, crimp_rows
from bom.papers.wire_rows import WireRow, wire_rows
from bom.read.families import BY_NAME
from bom.read.questions import quick_way
from bom.session import Session

Row = Mapping[str, object]
ZONES = ("box", "under seat", "frame", "bar")


def view(session: Session) -> Mapping[str, object]:
    """Prepare everything the template prints."""
    build, job = session.build, session.loaded.job
    figures, fuses = bench(session), fuse_rows(build, session.catalogue)
    return {
        **_head(session),
        **_standing(session),
        **_tables(build, fuses),
        **circuit_view(build),
        **lead_view(build),
        "wishes": job.wishes,
        "registration": list(registration_rows(job.registration)),
        "received": arrivals(build),
        "aside": aside_lines(build),
        "wired": is_wired(job),
        "apart": _apart(build),
        "protected": job.pack.bms.opens == "minus",
        "rail_clamp": RAIL_CLAMP in build.filled,
        "buffered": "buffer battery" in build.filled,
        "regen": job.controller.regen is not None,
        "above": figures.above_60_v,
        "bench": _bench_words(figures, session),
        "tests": bench_tests(session, figures, fuses),
        "labels": labels(session, figures, fuses),
        "owner": owner(session),
        "routing": routing(build),
        "plug_volts": plug_volts(build),
        "polarised": [
            f"{place} ({entry.part_id})"
            for place, entry in build.filled.items()
            if "polarised" in entry.part.words and entry.part.word("polarised")[0] == "yes"
        ],
        "first_fuse": _first_fuse(build),
        "passes": passes_words(build),
        "phase_peak": units.show(job.controller.phase_peak, "current"),
        "untested": [item for item in build.donor if item.verdict == "test first"],
    }


def _apart(build: Build) -> str:
    """Say how near the strings' volts must be when they are joined; "" where there is one string."""
    if build.facts.job.pack.strings == 1:
        return ""
    volts = most_apart_v(build.facts)
    return f"{volts} ({volts.because})" if volts else "0.1 V (resistance or charge limit not known; common practice)"


def _first_fuse(build: Build) -> str:
    """Name the fuse for the first closing, "" where no precharge path has one."""
    entry = build.filled.get("precharge fuse")
    return f"{entry.part_id}, {entry.part.number('rated_a')[0]:g} A" if entry else ""


def _head(session: Session) -> Row:
    build, job = session.build, session.loaded.job
    return {
        "title": job.title,
        "customer": job.customer,
        "date": job.date.isoformat(),
        "arrangement": build.arrangement,
        "headline": headline(build),
        "job_name": session.loaded.name,
        "total": f"{build.bill.total:,.2f} {build.bill.currency}",
    }


def _standing(session: Session) -> Row:
    """Give what is to be settled, what holds without its margin, what is not known, and the donor's items."""
    build = session.build
    return {
        "troubles": [_cause(cause, session) for cause in build.causes if cause.to_settle],
        "tights": [_cause(cause, session) for cause in build.causes if not cause.to_settle],
        "unknowns": [
            {
                "datum": entry.datum,
                "parts": ", ".join(entry.parts),
                "way": entry.way,
                "minutes": f"{entry.minutes:g}",
            }
            for entry in unknowns(build, session.catalogue.find_out)
        ],
        "donor": build.donor,
        "donor_counts": donor_counts(build),
        "keeping": [f"{i.name}: {i.kept.words(build.bill.currency)}." for i in build.donor if i.kept],
        "certainties": session.certainties,
        "goods": goods_rows(session.questions),
    }


def _tables(build: Build, fuses: Sequence[FuseRow]) -> Row:
    wires = wire_rows(build)
    return {
        "volts": [{"name": name, "span": str(span), "because": span.because} for name, span in pack_rows(build)],
        "fuses": [_fuse(row) for row in fuses],
        "zones": _zones(build),
        "pack_wires": [_wire(row) for row in wires if row.side == "pack"],
        "low_wires": [_wire(row) for row in wires if row.side != "pack"],
        "crimps": crimp_rows(build),
        "studs": _studs(build),
    }


def number(value: float, unit: str, digits: int = 3) -> str:
    """Print a figure with its unit, or say that it is not known."""
    rounded = float(f"{value:.{digits}g}")
    return f"{rounded:.15g} {unit}" if isfinite(value) else "not known"


def _cause(cause: Cause, session: Session) -> Row:
    """Give a cause: what decides first, then in one line each what else it must meet."""
    first, *others = cause_lines(cause)
    quick = quick_way(cause.data[0], session.catalogue.find_out) if cause.asks else None
    return {
        "mark": f"{marked(cause.verdict)}, {cause.harm.word}",
        "title": cause.title,
        "do": f"{quick.way} (about {quick.minutes:g} min)." if quick else "",
        "cure": ended(cause.cure),
        "decides": first.text,
        "places": places_words(cause),
        "others": [f"{line.verdict.word}: {line.text}" for line in others],
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


def _zones(build: Build) -> list[Row]:
    """List parts by where they sit; wires, crimps and what is shrunk over them have tables of their own."""
    small = ("cable", "lug", "terminal")
    out: list[Row] = []
    for zone in ZONES:
        rows = []
        for place in build.loom.places:
            shrunk = place.family == "sleeve" and place.circuit != "labels"
            if place.zone == zone and place.family not in small and not shrunk:
                entry = build.filled.get(place.name)
                rows.append(
                    {
                        "place": place.name,
                        "family": BY_NAME[place.family].title,
                        "part": entry.part_id if entry else "LEFT OPEN",
                        "name": entry.part.word("name")[0] if entry else "",
                        "count": f"{place.quantity:g}{' m' if place.family == 'sleeve' else ''}",
                    }
                )
        out.append({"name": zone, "rows": rows})
    return out


def _studs(build: Build) -> list[Row]:
    """List every bolted joint with the size of its bolt."""
    rows: list[Row] = []
    for place in build.loom.places:
        entry = build.filled.get(place.name)
        if place.family == "lug" and entry:
            size = float(entry.part.number("stud_m")[0])
            rows.append(
                {
                    "joint": place.name.replace(LUG_AT, " at "),
                    "bolt": f"M{size:g}" if isfinite(size) else "not known",
                    "lug": entry.part_id,
                    "count": f"{place.quantity:g}",
                }
            )
    return rows


def _bench_words(figures: Bench, session: Session) -> Mapping[str, str]:
    margins, pack, job = session.margins, session.build.facts.pack, session.loaded.job
    return {
        "highest": units.show(figures.working_v, "voltage"),
        "floor": number(figures.floor_ohm / 1000, "kohm"),
        "known": number(figures.known_ohm / 1000, "kohm"),
        "capacitance": str(figures.capacitance),
        "capacitance_from": figures.capacitance.because,
        "precharge_ohm": number(figures.precharge_ohm, "ohm"),
        "fill": number(figures.fill_s, "s", 2) if job.wishes.precharge else "no precharge",
        "fraction": f"{margins.precharge_fraction:.0%}",
        "fill_v": units.show(margins.precharge_fraction * pack.full_charge_v.high, "voltage"),
        "timer": f"{job.wishes.precharge_time:g} s",
        "bleed": number(figures.bleed_s, "s", 2),
        "drain": number(figures.drain_a * 1000, "mA"),
        "drain_unknown": figures.drain_unknown,
        "drain_limit": number(figures.drain_limit_a * 1000, "mA") if isfinite(figures.drain_limit_a) else "",
        "days": f"{figures.drain_days:.0f} days" if isfinite(figures.drain_days) else "",
        "lost": f"{margins.drain_fraction:.0%}",
        "wanted_days": f"{margins.drain_days:g}",
        "rail_low": f"{margins.rail_low_v:g} V",
        "rail_dead": units.show(margins.rail_dead_v, "voltage"),
    }
