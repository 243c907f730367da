"""The gates that a donor goes through, in their order, and what the matrix says of an item behind them."""

from collections.abc import Sequence

from bom.judge.loom_view import LoomView
from bom.loom.returns import gains_returns
from bom.read.donor_matrix import GATES, LAMP_KINDS, VERDICTS, Cell, Matrix
from bom.read.job import Donor, Load

# On a mixed bike the coils bear on these too: ignition grounded in off, and lamp leads that start at the coils.
MIXED_KINDS = ("key switch", "kill switch", "loom", "fuse box")
# Of these only LED lamps mind which pole the frame is: a filament does not.
MIND_AS_LEDS = (*LAMP_KINDS, "dip switch")


def open_gates(view: LoomView, loads: Sequence[Load], kind: str = "") -> tuple[str, ...]:
    """List the gates that this bike goes through, as far as they bear on a kind and its loads, in their order."""
    job = view.facts.job
    leds = any(load.kind == "LED" for load in loads)
    holds = {
        "always": True,
        "common minus": is_common_minus(view),
        "positive earth": job.donor.earth == "positive" and (leds or kind not in MIND_AS_LEDS),
        "6 V": job.donor.supply == "6 V",
        "AC-lit": job.donor.lighting == "AC" or _is_mixed_in(job.donor, loads, kind),
        "LED lamps": leds,
        "key at pack volts": view.facts.key_at_pack,
        "two-wire": gains_returns(job),
        "electronic": job.donor.switchgear == "electronic",
    }
    return tuple(gate for gate in GATES if holds[gate])


def is_common_minus(view: LoomView) -> bool:
    """Tell whether the converter joins pack minus and 12 V minus, or may."""
    converter = view.parts.get("converter")
    return converter is not None and converter.word("isolated")[0] != "yes"


def _is_mixed_in(donor: Donor, loads: Sequence[Load], kind: str) -> bool:
    """Tell whether the coils of a mixed bike bear on a kind, or fed one of its loads."""
    return donor.lighting == "mixed" and (kind in MIXED_KINDS or any(map(donor.fed_by_coils, loads)))


def cells_of(matrix: Matrix, kind: str, gates: Sequence[str]) -> tuple[Cell, ...]:
    """Give what the matrix says of a kind of item at these gates, in their order; a silent gate changes nothing."""
    return tuple(matrix[kind, gate] for gate in gates if (kind, gate) in matrix)


def worst(cells: Sequence[Cell]) -> Cell:
    """Give the cell that decides: the worst verdict, of alike ones that of the last gate."""
    return max(reversed(cells), key=lambda cell: VERDICTS.index(cell.verdict))
