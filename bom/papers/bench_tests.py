"""The test record: each test with its limit worked out for this bike, to be filled in by hand."""

from collections.abc import Sequence
from math import isfinite

from bom import units
from bom.choose.filled import NONE
from bom.papers.bench import Bench
from bom.papers.bench_bars import earth_tests, joint_tests, meter_tests, switch_tests
from bom.papers.fuse_rows import FuseRow
from bom.session import Session

Test = tuple[str, str]
# UN R6 (direction indicators): 90 flashes a minute, 30 either way; from memory.
FLASHES = "60 to 120 a minute"


def bench_tests(session: Session, figures: Bench, fuses: Sequence[FuseRow]) -> list[Test]:
    """List tests and limits in the order they are done."""
    wishes = session.loaded.job.wishes
    out = _dead(figures) + _low_side(session, fuses) + meter_tests(session)
    if wishes.contactor:
        out += _contactor(session, figures)
    out += _stops() + _riding(session, figures)
    if wishes.charger:
        out += _charging(session)
    return [
        *out,
        ("torque of every bolted joint again at 50 km", "as the first time"),
        ("isolation again at 500 km", _floor(figures)),
    ]


def _floor(figures: Bench) -> str:
    return f"at least {figures.floor_ohm / 1000:.3g} kohm"


def _dead(figures: Bench) -> list[Test]:
    return [
        ("no power: 12 V plus to 12 V minus", "no dead short"),
        ("no power: pack plus to pack minus, at the controller", "rises as the capacitors fill; no dead short"),
        ("no power: pack plus to frame, pack minus to frame", "open (proves little)"),
        ("isolation, pack plus to frame", _floor(figures)),
        ("isolation, pack minus to frame", _floor(figures)),
    ]


def _low_side(session: Session, fuses: Sequence[FuseRow]) -> list[Test]:
    margins, loom = session.margins, session.build.loom
    rail = f"{margins.rail_low_v:g} to {margins.rail_high_v:g} V"
    out = [("converter out, no load", rail), ("converter out, everything on and the horn", rail)]
    for row in fuses:
        if row.carry_a > 0 and row.part != NONE and loom.place(row.place).family == "blade_fuse":
            out.append(
                (
                    f"{row.place.removesuffix(' fuse')}, amps",
                    f"about {row.carry_a:.2g} A, fuse {row.rated_a:g} A",
                )
            )
    if any("indicate" in load.on for load in session.loaded.job.loads):
        out += [("flash rate, left", FLASHES), ("flash rate, right", FLASHES)]
    out += _on_diodes(session) + switch_tests(session) + earth_tests(session)
    out += [("stop lamp by front brake, by rear brake", "lights at once"), ("lamps, dip and main, telltales", "all")]
    return out


def _on_diodes(session: Session) -> list[Test]:
    """Ask a telltale on two diodes for both sides: a diode the wrong way round leaves it dark."""
    wanted = "flashes with both, the far lamps dark; else turn the diode of that side, ring end to the telltale"
    return [(f"{load.name}, left, then right", wanted) for load in session.loaded.job.loads if load.has_diodes]


def _contactor(session: Session, figures: Bench) -> list[Test]:
    build, margins = session.build, session.margins
    low = f"at most {margins.rail_low_v:g} V"
    entry = build.filled.get("contactor")
    out = [
        ("contactor pulls in at", low),
        ("contactor lets go at", "written down"),
        ("contactor coil amps, held", _coil_a(float(entry.part.number("coil_hold_a")[0])) if entry else "not known"),
    ]
    if session.loaded.job.wishes.precharge:
        volts = margins.precharge_fraction * build.facts.pack.full_charge_v.high
        out.append(
            (
                "bus volts when the contactor closes, pack full",
                f"at least {units.show(volts, 'voltage')} within {session.loaded.job.wishes.precharge_time:g} s",
            )
        )
    out += [
        ("bus after key off: falls (contact not welded)", "falls"),
        ("bus after key off: seconds to 60 V", "written down, and on the label"),
    ]
    return out


def _coil_a(amps: float) -> str:
    return f"about {amps:.2g} A" if isfinite(amps) else "written down"


def _stops() -> list[Test]:
    stops = (
        "key off",
        "stop switch",
        "each brake lever, if it is in the chain",
        "side stand, if it is in the chain",
        "throttle lead pulled",
    )
    out = [(f"wheel raised: {name}", "drive stops") for name in stops]
    return [*out, ("wheel raised: direction, throttle closed and open", "right way round, no creep")]


def _riding(session: Session, figures: Bench) -> list[Test]:
    control, pack, margins = session.loaded.job.controller, session.build.facts.pack, session.margins
    out = [
        ("battery amps, greatest on a ride", f"at most {control.battery_peak:g} A"),
        ("pack volts at that moment", f"above {units.show(pack.lowest_sag_v.low, 'voltage')}"),
        *joint_tests(session),
        ("each bolted joint after 10 minutes", f"warm to the hand; under {margins.terminal_c:g} °C"),
    ]
    if control.regen is not None:
        out += [
            ("regeneration on a full pack: greatest bus volts", f"at most {units.show(figures.working_v, 'voltage')}"),
            ("regeneration on a full pack: battery management", "stays closed"),
        ]
    if isfinite(figures.drain_limit_a):
        out.append(("key off: milliamps from the pack", f"at most {figures.drain_limit_a * 1000:.3g} mA"))
    return out


def _port(session: Session) -> list[Test]:
    if not session.loaded.job.wishes.charge_port:
        return []
    return [
        ("key on, cap of the charge port off: drive", "stops, and cannot be started"),
        ("charge port's pins with the cap shut and the isolator in", "live: not to be touched"),
    ]


def _charging(session: Session) -> list[Test]:
    pack, margins = session.build.facts.pack.full_charge_v, session.margins
    top = pack.high * (1 + margins.charger_over_fraction)
    return [
        *_port(session),
        ("charging amps at the start", f"at most {session.loaded.job.wishes.charge_current:g} A"),
        ("pack volts at the end", f"at most {units.show(top, 'voltage')}"),
    ]
