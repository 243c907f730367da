"""The view of the walks for the build sheet: shorts, open wires, waking, rushes."""

from collections import Counter
from collections.abc import Mapping, Sequence
from math import isfinite, isinf, isnan

from bom import units
from bom.build import Build
from bom.check.blinkers import NO, OWN, Cause
from bom.circuit.fault import End
from bom.circuit.lights import Light
from bom.circuit.rushes import Rush
from bom.papers.arrangements import fault_lines, key_opens
from bom.papers.closing_rows import loss_words, losses, waits, walked_in
from bom.papers.open_rows import HELPS, KEEPS, OWN_LOAD, OpenRow, open_rows, stray_rows
from bom.papers.page import some_of
from bom.papers.sheet_lights import shown
from bom.papers.short_rows import ShortRow, celsius, hottest_words, short_rows

MOST_ROWS = 12
MOST_RUSHES = 6
MOST_POINTS, MOST_WIRES = 3, 4
IN_TIME = (End.NO_CURRENT, End.CLEARED)

View = Mapping[str, object]


def circuit_view(build: Build) -> View:
    """Prepare what the walks have to say."""
    shorts, opens, waking = short_rows(build), _alike_opens(build), build.walks.waking
    bad = [row for row in shorts if row.end not in IN_TIME][:MOST_ROWS]
    return {
        "shorts": [_short(row) for row in bad],
        "shorts_rest": _rest(shorts, bad),
        "opens": [_open(rows) for rows in opens[:MOST_ROWS]],
        "opens_more": sum(len(rows) for rows in opens[MOST_ROWS:]),
        "stray": _stray(build),
        "walked_in": walked_in(build).told,
        "waking": [{"what": step.what, "volts": volts(step.volts), "at": step.at} for step in waking.steps]
        if waking
        else [],
        "stuck": [_stuck(stuck.coil, stuck.volts, waits(stuck)) for stuck in waking.stuck] if waking else [],
        "key_opens": key_opens(build),
        "key_faults": fault_lines(build),
        "losses": [
            dict(
                zip(
                    ("what", "dark", "drops"),
                    (loss.what[:1].upper() + loss.what[1:], *loss_words(loss, build)),
                    strict=True,
                )
            )
            for loss in losses(build)
        ],
        "lamps": [_lamp(light) for light in build.walks.lights],
        "blinkers": [_blinker(cause) for cause in build.blinkers if _worth_saying(cause)],
        "rushes": [_rush(rush) for rush in _greatest(build.walks.rushes)],
    }


def volts(value: float) -> str:
    """Print volts."""
    return units.show(value, "voltage")


def amps(value: float) -> str:
    """Print amps; no fraction from a hundred on."""
    return f"{value:.0f} A" if value >= 100 else units.show(value, "current")


def _short(row: ShortRow) -> View:
    low, high = amps(row.low_a), amps(row.high_a)
    hot = celsius(row.hot)
    warm = f"{hottest_words(row)}, {f'{hot} °C' if isinstance(hot, int) else hot}" if row.hot else "–"
    return {
        "cure": row.cure,
        "points": some_of(row.points, MOST_POINTS),
        "to": row.to,
        "end": row.end.word,
        "amps": low if low == high else f"{low} to {high}",
        "opens": f"{row.fuse}, {row.latest_s:g} s" if isfinite(row.latest_s) else "never",
        "hot": warm,
    }


def _rest(shorts: Sequence[ShortRow], shown: Sequence[ShortRow]) -> str:
    """Sum up the shorts that have no row of their own by how they end."""
    rest: Counter[End] = Counter()
    for row in shorts:
        if not any(row is other for other in shown):
            rest[row.end] += len(row.points)
    if not rest:
        return "Every short walked stands above." if shorts else "No short could be walked."
    told = "; ".join(f"{rest[end]} times {end.word}" for end in sorted(rest, reverse=True))
    return f"{'The others' if shown else 'All shorts'}, each point onto its return and onto the frame: {told}."


def _alike_opens(build: Build) -> list[list[OpenRow]]:
    """Group the wires that overload another, float a minus or stop the drive, by what becomes of the bike."""
    groups: dict[tuple[object, ...], list[OpenRow]] = {}
    for row in open_rows(build):
        if row.opened.carries or row.opened.floats or row.stops:
            groups.setdefault(row.alike, []).append(row)
    return list(groups.values())


def _open(rows: Sequence[OpenRow]) -> View:
    first = rows[0]
    opened = first.opened
    named = opened.floats if len({row.opened.floats for row in rows}) == 1 else "their minus ends"
    then = [f"{named} at {volts(opened.floats_v)}"] if opened.floats else []
    if opened.carries:
        then.append(f"{opened.carries} carries {amps(opened.carries_a)}, may {amps(opened.ampacity_a)}")
    return {
        "wires": some_of([f"{row.number} {row.opened.wire}" for row in rows], MOST_WIRES),
        "dark": OWN_LOAD if first.alone and len(rows) > 1 else first.dark or "nothing",
        "drops": first.drops or "–",
        "then": "; ".join(then) or "–",
    }


def _stray(build: Build) -> str:
    """Say what a lost traction minus does, its cure first."""
    rows = stray_rows(build)
    if not rows:
        return ""
    worst = rows[0]
    if worst.too_much:
        return (
            f"Do: {HELPS}. With {worst.number} {worst.wire} off and {worst.bond}, {amps(worst.amps)} come home through "
            f"the {worst.through}, which may carry {amps(worst.may_a)}; no fuse sees it."
        )
    return (
        f"A lost traction minus finds no thin way home: the converter keeps pack and 12 V apart. Keep it so: {KEEPS}."
    )


def _lamp(light: Light) -> View:
    return {
        "name": light.load,
        "low": volts(light.low_v),
        "light": shown(light, light.light),
        "high": volts(light.high_v),
        "life": shown(light, light.life),
        "state": light.low_state,
    }


def _worth_saying(cause: Cause) -> bool:
    """Leave out what is right of a donor's flasher that goes; the workbook has it."""
    return not (cause.of.startswith(OWN) and cause.answer == NO)


def _blinker(cause: Cause) -> View:
    """Print one cause."""
    return {
        "cause": f"{cause.of}: {cause.cause}",
        "answer": cause.answer,
        "because": f"{cause.because}. Find out: {cause.datum}." if cause.datum else cause.because,
        "test": cause.test,
    }


def _stuck(coil: str, value: float, reason: str) -> View:
    return {"coil": coil, "volts": volts(value), "waits": reason}


def _greatest(rushes: Sequence[Rush]) -> list[Rush]:
    """Keep the greatest, and those that are not known, in their order."""
    known = sorted((rush.peak_a for rush in rushes if not isnan(rush.peak_a)), reverse=True)
    least = known[:MOST_RUSHES][-1] if known else 0.0
    return [rush for rush in rushes if isnan(rush.peak_a) or rush.peak_a >= least]


def _rush(rush: Rush) -> View:
    return {
        "what": rush.what,
        "peak": amps(rush.peak_a),
        "time": "never" if isinf(rush.time_s) else units.show(rush.time_s, "time"),
        "heat": units.show(rush.heat_j, "energy"),
    }
