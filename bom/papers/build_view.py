"""The view of the build sheet: every text and figure its template prints, as words."""

from collections.abc import Mapping

from bom import units
from bom.arrived.arrivals import arrivals, aside_lines
from bom.build import Build
from bom.check.cause_words import cause_lines, places_words
from bom.check.causes import Cause
from bom.check.cure_words import cure_words
from bom.check.donor_text import donor_counts
from bom.duties.strings import most_apart_v
from bom.loom.returns import is_wired
from bom.loom.taps import RAIL_CLAMP
from bom.papers.ask_rows import goods_rows
from bom.papers.bench import bench
from bom.papers.bench_bars import earth_words, passes_words
from bom.papers.bench_tests import bench_tests
from bom.papers.bench_words import bench_words
from bom.papers.build_tables import tables
from bom.papers.circuit_view import circuit_view
from bom.papers.fuse_rows import fuse_rows
from bom.papers.lead_view import lead_view
from bom.papers.owner_words import labels, owner
from bom.papers.plug_volts import plug_volts
from bom.papers.registration_rows import registration_rows
from bom.papers.routing import routing
from bom.papers.standing import ended, headline, marked
from bom.papers.unknowns import unknowns
from bom.read.questions import quick_way
from bom.session import Session

Row = Mapping[str, object]


def view(session: Session) -> Mapping[str, object]:
    """Prepare everything the template prints."""
    build, job = session.build, session.loaded.job
    figures, fuses = bench(session), fuse_rows(build, session.catalogue)
    return {
        **_head(session),
        **_standing(session),
        **tables(build, fuses),
        **circuit_view(build),
        **lead_view(build),
        **_of_the_bike(session),
        "wishes": job.wishes,
        "key_unsaid": "key_input" not in job.controller.model_fields_set,
        "key_laid": job.controller.key_input,
        "registration": list(registration_rows(job.registration)),
        "received": arrivals(build),
        "aside": aside_lines(build),
        "above": figures.above_60_v,
        "bench": bench_words(figures, session),
        "tests": bench_tests(session, figures, fuses),
        "labels": labels(session, figures, fuses),
        "owner": owner(session),
        "routing": routing(build),
        "plug_volts": plug_volts(build),
        "passes": passes_words(build),
    }


def _of_the_bike(session: Session) -> Row:
    """Give what sets this bike apart: what it has, and what of it needs care."""
    build, job = session.build, session.loaded.job
    return {
        "wired": is_wired(job),
        "apart": _apart(build),
        "protected": job.pack.bms.opens == "minus",
        "rail_clamp": RAIL_CLAMP in build.filled,
        "buffered": "buffer battery" in build.filled,
        "regen": job.controller.regen is not None,
        "polarised": [
            f"{place} ({entry.part_id})"
            for place, entry in build.filled.items()
            if "polarised" in entry.part.words and entry.part.word("polarised")[0] == "yes"
        ],
        "first_fuse": _first_fuse(build),
        "earth_bar": earth_words(session),
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


def _cause(cause: Cause, session: Session) -> Row:
    """Give a cause: what decides first, then in one line each what else it must meet."""
    first, *others = cause_lines(cause)
    cure = cure_words(cause, session)
    quick = quick_way(cause.data[0], session.catalogue.find_out) if cause.asks else None
    return {
        "mark": f"{marked(cause.verdict)}, {cause.harm.word}",
        "title": cause.title,
        "do": f"{quick.way} (about {quick.minutes:g} min)." if quick else "",
        "cure": ended(cure) if cure else "",
        "decides": first.text,
        "places": places_words(cause),
        "others": [
            f"{line.verdict.word}: {line.text}{f' Cure: {ended(line.cure)}' if line.cure else ''}" for line in others
        ],
    }
