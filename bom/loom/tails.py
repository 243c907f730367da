"""Tails: where two wires are wanted on a bike whose lamps returned by the frame, each shell gets a lead of its own."""

from collections.abc import Sequence

from bom.loom.builder import Builder
from bom.loom.returns import gains_returns
from bom.read.job import JobFile, Load

SHELLED = ("filament", "LED", "motor")  # loads whose shell or case may be their minus


def shells_on_the_frame(job: JobFile, loads: Sequence[Load]) -> list[Load]:
    """List the donor's lamps and horns that come home by their shell, where the job wants wires to bring them home.

    New ones bring their leads; a light in another load's lamp shares that lamp's shell.
    """
    if not gains_returns(job):
        return []
    return [
        load
        for load in loads
        if load.fit == "donor" and load.kind in SHELLED and not load.same_lamp_as and not load.is_between
    ]


def lay_out_tails(build: Builder, circuit: str, zone: str, loads: Sequence[Load], splices: Sequence[str]) -> None:
    """Place the tails of some loads, each from its shell into the splice of its return wire."""
    for load in loads:
        shell = "case" if load.kind == "motor" else "shell"
        title = f"tail from the {shell} of the {load.name} to its return wire"
        tail = build.place(tail_place(load), "tail", title, circuit, zone, load.bought, load=load.name)
        for splice in splices:
            build.link("takes wire", splice, tail)


def tail_place(load: Load) -> str:
    """Name the place of a load's tails."""
    return f"tail of the {load.name}"
