"""The figures of the bench tests, as words for the build sheet."""

from collections.abc import Mapping
from math import isfinite

from bom import units
from bom.papers.bench import Bench
from bom.session import Session


def number(value: float, unit: str, digits: int = 3) -> str:
    """Print a figure with its unit, or say that it is not known."""
    rounded = float(f"{value:.{digits}g}")
    return f"{rounded:.15g} {unit}" if isfinite(value) else "not known"


def bench_words(figures: Bench, session: Session) -> Mapping[str, str]:
    """Give every figure of the bench tests under the name that the template calls it by."""
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
