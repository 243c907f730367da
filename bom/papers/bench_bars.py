"""Limits that a bench reads beside parts that stand: joints, old contacts, the meter, what a fuse lets through."""

from bom import units
from bom.build import Build
from bom.judge.ratings import earliest_opening_s
from bom.parts import DONOR
from bom.read.job import CONTACTS
from bom.session import Session
from bom.span import Span

Test = tuple[str, str]
SEEN_AT = 2.0  # a fuse's sheet prints its opening at twice its rating


def joint_tests(session: Session) -> list[Test]:
    """Give the millivolts a bolted joint may lose at the controller's continuous amps."""
    amps = session.loaded.job.controller.battery_continuous
    sound_mv = amps * session.margins.bolted_joint_high_ohm * 1000
    limit = f"at most {sound_mv:.2g} mV, none over twice the middle one"
    return [(f"millivolts over each joint at {amps:g} A (or less: in proportion)", limit)]


def switch_tests(session: Session) -> list[Test]:
    """Give, for each donor switch that stands, the volts its contact may lose, as ohms at its load's amps."""
    build, out, drop_v = session.build, list[Test](), session.margins.switch_drop_v
    items = {item.name: item for item in session.loaded.job.donor.items if item.kind in CONTACTS}
    for entry in build.filled.values():
        item, duty = items.get(entry.part_id.removeprefix(DONOR)), build.duties[entry.place.name]
        if entry.origin == "donor" and item and duty.has("carry_a") and duty.carry_a.high > 0:
            ohm = drop_v / duty.carry_a.high
            limit = f"at most {drop_v:g} V ({1000 * ohm:.3g} mohm); over it clean it, or a relay"
            out.append((f"volts over the {item.name}'s closed contact, its loads on", limit))
    return list(dict.fromkeys(out))


def earth_tests(session: Session) -> list[Test]:
    """Give the ohms between the frame and each lamp that returns through it."""
    job, bar = session.loaded.job, earth_words(session)
    if job.wishes.two_wire or job.donor.lamp_return != "frame" or not bar:
        return []
    return [("frame to each lamp's body, paint bared, star washer in", f"below {bar}")]


def earth_words(session: Session) -> str:
    """Give the ohms that a lamp's way home may have: its share of the greatest lamp's drop; "" without a lamp."""
    margins, budget = session.margins, session.build.facts.budget
    lamps = [entry.amps for entry in budget.loads.values() if entry.load.kind in ("filament", "LED")]
    if not lamps:
        return ""
    ohm = min(margins.lamp_earth_ohm, margins.drop_lamp_fraction * budget.rail_v / max(lamps))
    return f"{1000 * ohm:.0f} mohm"


def meter_tests(session: Session) -> list[Test]:
    """Give what the meter, and any other that charging hangs on, may read beside a good one on a full pack."""
    if session.loaded.job.wishes.meter == "none":
        return []
    full_v, share = session.build.facts.pack.full_charge_v.high, session.margins.meter_fraction
    low, high = (units.show(full_v * (1 + part), "voltage") for part in (-share, share))
    return [("meter beside a known good one, pack full", f"{low} to {high}".replace(" V to", " to"))]


def passes_words(build: Build) -> str:
    """Say what the main fuse lets through before it opens, "" where none stands."""
    entry = build.filled.get("main fuse")
    if entry is None:
        return ""
    rated = float(entry.part.number("rated_a")[0])
    twice = SEEN_AT * rated
    current = Span(twice, twice, "current", "twice the rating")
    seconds = float(earliest_opening_s(entry.part, current=current).values[0])
    held = f"{seconds:g} s or longer" if seconds > 0 else "a time nobody printed"
    return f"The main fuse of {rated:g} A passes {twice:g} A for {held}."
