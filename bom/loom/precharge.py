"""The precharge path across the contactor, what closes the contactor, and the holder for the first closing."""

from bom.loom.builder import Builder
from bom.loom.taps import lay_out_bus_sense

BUS_STUB = "precharge bus stub"
FIRST_CLOSING = "first closing holder"


def lay_out_precharge(build: Builder) -> None:
    """Bridge the contactor with a fused resistor, and place what closes the contactor when it is done.

    A relay switches the resistor, unless it is wished across the contactor for good.
    """
    fuse, switched = build.tap_fuse("precharge", "precharge"), build.job.wishes.precharge_switched
    if switched:
        build.relay("precharge relay", "relay of the precharge path", "precharge", "frame")
    build.in_line("precharge resistor", "precharge_resistor", "precharge resistor", "precharge", "frame")
    if switched:
        build.link("fills through", "precharge relay", "precharge resistor")
    build.link("rides", fuse, "precharge resistor")
    build.place("contactor closer", "closer", "closes the contactor when the bus is full", "precharge", "frame")
    build.link("drives", "contactor closer", "contactor")
    if switched:
        build.link("drives", "contactor closer", "precharge relay")
    _wires(build, fuse, switched)
    build.lug(BUS_STUB, "controller")
    build.link("relieves", fuse, BUS_STUB)
    build.link("takes wire", "precharge fuse holder", "precharge wire 1")
    lay_out_bus_sense(build)
    _first_closing(build, fuse)


def _wires(build: Builder, fuse: str, switched: bool) -> None:
    """Lay the path piece by piece, from its fuse to the bus."""
    runs = build.runs
    # The resistor sits at the controller: with the contactor closed its fuse no longer guards the wire between them.
    run, resistor = runs.contactor_to_controller, "precharge resistor in"
    to_resistor = (
        (
            ("precharge wire 1", (f"{fuse} out", "precharge relay in"), run, fuse),
            ("precharge wire 2", ("precharge relay out", resistor), run, fuse),
        )
        if switched
        else (("precharge wire 1", (f"{fuse} out", resistor), run, fuse),)
    )
    path = (*to_resistor, (BUS_STUB, ("precharge resistor out", "controller plus"), runs.tap_stub, ""))
    for name, ends, length_m, guard in path:
        build.wire(
            name,
            f"{ends[0]} to {ends[1]}",
            "precharge",
            "frame",
            ends,
            length_m,
            guard=guard,
            part_of_m=sum(row[2] for row in path),
            together=build.margins.pair_wires,
        )
        build.crimps(name, 2 if name == "precharge wire 2" else 1)


def _first_closing(build: Builder, fuse: str) -> None:
    """Place what stands in for the main fuse at the first closing: a spare precharge fuse on two short leads."""
    holder = build.place(FIRST_CLOSING, "fuse_holder", "holder for the first closing", "precharge", "frame")
    build.link("takes fuse", holder, fuse)
    run = build.runs.pack_to_fuse
    stub = build.wire(
        "first closing stub",
        "two leads from the first closing holder to the main fuse holder",
        "precharge",
        "frame",
        ("main fuse holder studs", "first closing holder"),
        run,
        part_of_m=2 * run,
        together=build.margins.pair_wires,
        count=2,
    )
    build.lug(stub, "main fuse holder", on="main fuse holder", quantity=2)
    build.link("takes wire", holder, stub)
