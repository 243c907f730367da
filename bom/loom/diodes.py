"""The two diodes through which one telltale hangs on both sides of the indicators."""

from bom.loom.builder import Builder
from bom.loom.model import Bridge
from bom.read.job import Load


def diodes_place(load: Load) -> str:
    """Name the place of a telltale's diodes."""
    return f"{load.name} diodes"


def lay_out_diodes(build: Builder, circuit: str, zone: str, load: Load, fuse: str, whole_m: float) -> None:
    """Place a telltale's two diodes: each starts in the splice of its side, and one tail leads on to the telltale."""
    name = diodes_place(load)
    out, title = f"{name} out", f"diodes from left and right, ring ends to the {load.name}"
    build.place(name, "clamp", title, circuit, zone, 2, load=load.name)
    build.splice(f"{out} splice", out, circuit, zone, leads=2)
    wire = build.wire(
        f"wire from the {name}",
        f"{name} to the {load.name}",
        circuit,
        zone,
        (out, f"{load.name} plus"),
        build.margin_m("tail_m"),
        guard=fuse,
        part_of_m=whole_m,
        together=build.margins.bundle_wires,
        loads=(load.name,),
    )
    build.finish(wire)


def diode_bridges(load: Load, sides: dict[str, str], back: str) -> list[Bridge]:
    """Say where current runs through the diodes and the telltale.

    The diode of the lit side is a closed contact, its forward volts left out; that of the far side blocks and is open.

    sides  point of each side, by the way of the switch that leads to it
    """
    name = diodes_place(load)
    out = [
        Bridge(f"{name}{way}", "contact", point, f"{name} out", name, f"lit{way}", (load.name,))
        for way, point in sides.items()
    ]
    return [*out, Bridge(load.name, "load", f"{load.name} plus", back, "", "lit", (load.name,))]
