"""The drop allowed on the wires of a way there and back is no more than the whole allowed: ABYC E-11's 3 %."""

import re
from collections.abc import Callable, Mapping

import pytest

from bom.duties.circuits import Facts
from bom.duties.envelope import envelope
from bom.duties.model import Duty
from bom.loom.layout import lay_out
from bom.loom.model import Loom
from bom.read.job import JobFile
from bom.read.margins import Margins

WAY = re.compile(r" (left|right|dip|main|precharge)( splice)?$")
ALLOWED_V = 0.03 * 13.5  # ABYC E-11, 3 % for critical circuits there and back, read second-hand on a public page


def dearest_way_v(loom: Loom, duties: Mapping[str, Duty], start: str, end: str) -> float:
    """Add up what each wire of the longest way between two points may lose; parts lose nothing."""
    steps: dict[str, list[tuple[str, float]]] = {}
    for wire in loom.wires:
        steps.setdefault(wire.start, []).append((wire.end, duties[wire.name].drop_v.high if wire.guard else 0.0))
    for point in {wire.end for wire in loom.wires if wire.end.endswith(" in")}:
        outs = [out for out in steps if WAY.sub("", out) == f"{point.removesuffix(' in')} out"]
        steps.setdefault(point, []).extend((out, 0.0) for out in outs)

    def longest(here: str, seen: tuple[str, ...]) -> float:
        if here == end:
            return 0.0
        ways = [loss + longest(there, (*seen, here)) for there, loss in steps.get(here, []) if there not in seen]
        return max(ways, default=float("-inf"))

    return longest(start, ())


@pytest.mark.parametrize("key_at", ["12 V", "pack volts"])
@pytest.mark.parametrize("starter", ["street-72", "moped-48", "frame-return-105"])
def test_wires_of_a_way_share_what_the_way_may_lose(
    starter: str,
    key_at: str,
    edited: Callable[..., JobFile],
    facts_of: Callable[..., Facts],
    margins: Margins,
) -> None:
    facts = facts_of(edited(starter), key_at)
    loom = lay_out(facts.job, margins, key_at)
    duties = envelope(loom, facts)
    back = {wire.start: duties[wire.name].drop_v.high for wire in loom.wires if wire.end == "12 V rail minus"}
    ends = [
        (f"{place.circuit} fuse out", wire.end, wire.end.partition(" plus")[0])
        for wire in loom.wires
        if " plus" in wire.end and (place := loom.place(wire.name)).circuit.endswith(" circuit")
    ]
    ends += [("control fuse out", f"{coil} plus", coil) for coil in ("contactor coil", "precharge relay coil")]
    assert ends
    for start, end, name in ends:
        out = dearest_way_v(loom, duties, start, end)
        assert 0 < out + back.get(f"{name} minus", 0.0) <= ALLOWED_V * (1 + 1e-9), (start, end)
