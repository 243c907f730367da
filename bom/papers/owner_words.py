"""The words of the labels, and what the owner must know."""

from collections.abc import Mapping, Sequence
from math import isfinite

from bom import units
from bom.loom.builder import PILOT
from bom.loom.low_volt import RAIL_METER
from bom.papers.bench import Bench
from bom.papers.fuse_rows import FuseRow
from bom.read.job import JobFile
from bom.session import Session

WAKES = "The key wakes the bike from the buffer battery: if it stood long and nothing wakes, charge that battery first."


def labels(session: Session, figures: Bench, fuses: Sequence[FuseRow]) -> list[str]:
    """Give the words of each label."""
    pack, job = session.build.facts.pack, session.loaded.job
    high = figures.working_v
    rated = ", ".join(f"{row.place} {f'{row.rated_a:g}' if isfinite(row.rated_a) else '____'} A" for row in fuses)
    isolator = _isolator(job)
    out = [
        f"On the pack box, the controller and the motor leads: DANGER, up to {high:.0f} V direct current",
        f"Beside the {isolator}: KEY OFF, THEN ISOLATE HERE, with an arrow",
        "Beside the controller: AFTER ISOLATING WAIT ____ s AND MEASURE (enter the time measured below)",
        f"At the fuses: {rated}",
    ]
    if job.wishes.bus_stays_live:
        out.append(f"Beside the controller: LIVE WITH THE KEY OFF, OPEN THE {isolator.upper()} FIRST")
    if job.wishes.charge_port:
        end = f"{units.show(pack.full_charge_v.high, 'voltage')} END OF CHARGE, at most {job.wishes.charge_current:g} A"
        out.append(f"At the charge port: {end}, {job.pack.chemistry} CELLS ONLY")
    return out


def owner(session: Session) -> Mapping[str, object]:
    """Give the figures of the owner's notes."""
    build, job = session.build, session.loaded.job
    flasher = build.filled.get("flasher")
    grounding = [item for item in job.donor.items if item.kind == "kill switch" and item.relay and item.may_stay]
    return {
        "full": units.show(build.facts.pack.full_charge_v.high, "voltage"),
        "charge_a": f"{job.wishes.charge_current:g} A",
        "chemistry": job.pack.chemistry,
        "flasher": flasher.part.word("name")[0] if flasher else "",
        "isolator": f"the {_isolator(job)}",
        "buffer": WAKES if build.facts.sleeps and "buffer battery" in build.filled else "",
        "rail": _rail_words(session),
        "pilot": _pilot_words(session),
        "tries": [
            f"Before every ride try the {item.name}: a broken lead leaves it dead unnoticed." for item in grounding
        ],
    }


def _rail_words(session: Session) -> str:
    """Say what the rail meter's reading means; nothing where there is none."""
    build = session.build
    if RAIL_METER not in build.filled:
        return ""
    dead = units.show(build.facts.margins.rail_dead_v, "voltage")
    words = (
        f"Rail meter with the key on: below {dead} the converter is not charging. Ride home by day and have it seen to"
    )
    battery = build.filled.get("buffer battery")
    if battery and battery.part.word("chemistry")[0] == "iron phosphate":
        words += "; an iron phosphate battery holds its volts for long, so heed any fall from the usual reading"
    return f"{words}."


def _pilot_words(session: Session) -> Mapping[str, str]:
    """Say how the pilot lamp is fitted; nothing where there is none."""
    entry = session.build.filled.get(PILOT)
    if entry is None:
        return {}
    part, hole = entry.part, entry.part.number("hole_mm")[0]
    return {
        "hole": f"{hole:g} mm" if isfinite(hole) else "not known, measure it",
        "colour": part.word("colour")[0] or "colour not known",
        "sealed": part.word("ip_code")[0] or "not known",
    }


def _isolator(job: JobFile) -> str:
    """Name what isolates the pack by hand."""
    if job.wishes.isolator != "none":
        return job.wishes.isolator
    return "pack plug" if job.wishes.pack_plug else "main fuse"
