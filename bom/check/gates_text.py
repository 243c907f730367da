"""The gates as lines for a terminal, and as plain data."""

from bom.build import Build
from bom.check.donor_gate import NOTHING, Gate
from bom.check.donor_gates import donor_gates, donor_type
from bom.check.why_text import wrapped

HANG = " " * 28


def gates_text(build: Build) -> str:
    """Print the donor's type and each gate in its order; what follows stands on a line of its own."""
    lines = wrapped(f"{donor_type(build.facts.job)}.", "    ")
    for number, gate in enumerate(donor_gates(build), start=1):
        lines += wrapped(f"{number:>2} {gate.name:<12} {gate.verdict.word:<11} {gate.answer}", HANG)
        lines += wrapped(f"{HANG}Do: {gate.follows}", f"{HANG}    ") if gate.follows != NOTHING else []
    return "\n".join(lines)


def gates_data(build: Build) -> list[dict[str, str]]:
    """Give each gate as plain data."""
    return [_plain(gate) for gate in donor_gates(build)]


def _plain(gate: Gate) -> dict[str, str]:
    return {**vars(gate), "verdict": gate.verdict.word}
