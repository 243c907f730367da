"""The walks in the record: plain SI figures under the names of the papers."""

from collections.abc import Mapping
from math import nan

from bom.build import Build
from bom.circuit.fault import Fault, Hot
from bom.circuit.standing import Standing
from bom.judge.parked_drain import empty_days, parked_days, parked_drain_a, parked_draws
from bom.papers.state_rows import state_rows

Kept = dict[str, object]
DIGITS = 6


def walks_record(build: Build) -> Kept:
    """Give what the walks found, to be laid among the other keys."""
    walks, waking = build.walks, build.walks.waking
    return {
        "states": [
            {**_solved(vars(row)), "settles": standing.settles, "wires": _wires(standing)}
            for row, standing in zip(state_rows(build), walks.states, strict=True)
        ],
        "shorts": [_short(fault) for fault in walks.faults],
        "opens": [_solved(vars(opened)) for opened in walks.opens],
        "stray_returns": [_solved(vars(stray)) for stray in walks.strays],
        "waking": {
            "steps": [_solved(vars(step)) for step in waking.steps] if waking else [],
            "stuck": [_solved(vars(stuck)) for stuck in waking.stuck] if waking else [],
            "losses": [vars(loss) for loss in waking.losses] if waking else [],
        },
        "rushes": [vars(rush) for rush in walks.rushes],
        "motor": [vars(figure) for figure in walks.motor],
        "lights": [_solved(vars(light)) for light in walks.lights],
        "dip": _solved(vars(walks.dip)) if walks.dip else None,
        "blinkers": [vars(cause) for cause in build.blinkers],
        "parked": _parked(build),
    }


def _solved(figures: Mapping[str, object]) -> Kept:
    """Drop what a solver leaves in place of nothing, in which machines differ: a millionth of a volt or an amp."""
    return {name: round(value, DIGITS) + 0.0 if isinstance(value, float) else value for name, value in figures.items()}


def _wires(standing: Standing) -> Kept:
    amps = standing.solution.amps
    return {
        name: _solved({"amps": amps[name], "celsius": celsius})
        for name, celsius in standing.hot_c.items()
        if name in amps
    }


def _short(fault: Fault) -> Kept:
    return {**_solved(vars(fault)), "end": fault.end.word, "wire": _hot(fault.wire), "stub": _hot(fault.stub)}


def _hot(hot: Hot | None) -> Kept | None:
    return _solved(vars(hot)) if hot else None


def _parked(build: Build) -> Kept:
    drain_a, unknown = parked_drain_a(build.walks.bike.view)
    return {
        "draws_a": dict(parked_draws(build.walks.bike.view)),
        "drain_a": drain_a,
        "not_known": unknown,
        "days": nan if unknown else parked_days(build.facts, drain_a),
        "days_to_least": nan if unknown else empty_days(build.facts, drain_a),
    }
