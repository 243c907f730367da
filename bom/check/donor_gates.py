"""The ten gates that a donor goes through, in their order, and its type in words: worked out from the build."""

from collections.abc import Callable
from typing import TYPE_CHECKING

from bom.check import gates_of_supply, gates_of_switches
from bom.check.donor_gate import Gate
from bom.read.job import JobFile

if TYPE_CHECKING:
    from bom.build import Build

ASKED: tuple[Callable[["Build"], Gate], ...] = (
    gates_of_supply.isolation,
    gates_of_supply.earth,
    gates_of_supply.voltage,
    gates_of_supply.feed,
    gates_of_supply.lamp,
    gates_of_switches.key,
    gates_of_switches.switch_side,
    gates_of_switches.load,
    gates_of_switches.back,
    gates_of_switches.evidence,
)
INTERLOCKS = ("side-stand switch", "clutch switch")


def donor_gates(build: "Build") -> tuple[Gate, ...]:
    """Ask each gate in its order."""
    return tuple(ask(build) for ask in ASKED)


def donor_type(job: JobFile) -> str:
    """Say in one line what kind of bike it was, and what that was read from."""
    donor = job.donor
    read = [f"{donor.supply}", f"{donor.lighting} lighting", f"{donor.earth} earth", f"{donor.switchgear} switchgear"]
    interlocks = [item.name for item in donor.items if item.kind in INTERLOCKS]
    read += [f"with {name}" for name in interlocks]
    return f"{_type(job, bool(interlocks))} (read from: {', '.join(read)})"


def _type(job: JobFile, interlocks: bool) -> str:
    """Give the first type that fits, the most telling sign first."""
    donor = job.donor
    types = (
        (donor.switchgear == "electronic", "modern bike, its switches tell a module that feeds the lamps"),
        (donor.lighting == "AC", f"{donor.supply} moped or small two-stroke, lit by its flywheel coils"),
        (donor.lighting == "mixed", f"{donor.supply} commuter, headlamp from the coils"),
        (donor.supply == "6 V", "old 6 V classic, lamps from dynamo and battery"),
        (donor.earth == "positive", "late 12 V classic with plus on the frame"),
        (interlocks, "12 V street bike with relays and interlocks"),
    )
    return next((words for fits, words in types if fits), "12 V street bike, its switches carry the lamps themselves")
