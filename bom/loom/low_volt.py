"""The 12 V side: supply, load relay, fuse box, circuits with their loads, and the control chain."""

from bom.loom.branches import RUN_ZONE, SWITCHES, lay_out_branches
from bom.loom.builder import Builder
from bom.read.job import Load


def lay_out_low_volt(build: Builder) -> None:
    """Place everything on the 12 V side."""
    _supply(build)
    if build.job.wishes.buffer_battery:
        _buffer(build)
    for name, loads in circuits(build.job.loads).items():
        _circuit(build, name, loads)
    _switches(build)
    _flasher(build)
    _control_chain(build)


def circuits(loads: list[Load]) -> dict[str, list[Load]]:
    """Group loads by the circuit they name; one that names none is a circuit of its own."""
    grouped: dict[str, list[Load]] = {}
    for load in loads:
        grouped.setdefault(f"{load.circuit or load.name} circuit", []).append(load)
    return grouped


def two_wire(build: Builder) -> bool:
    """Tell whether lamps return by wire: as the builder says, else as the donor has it."""
    wish = build.job.wishes.two_wire
    return build.job.donor.lamp_return == "wire" if wish is None else wish


def _supply(build: Builder) -> None:
    """Lead the converter's output to the fuse box, through the load relay where the key drives relays."""
    run = build.job.runs.converter_to_fuse_box
    rail = "12 V rail minus"
    build.place(rail, "post", "minus rail of the 12 V side", "12 V supply", "under seat", ends=(rail,))
    build.place("fuse box", "fuse_box", "fuse box", "12 V supply", "under seat", item=build.item("fuse box"))
    lead = ("control lead", "12 V supply to the control fuse", ("12 V supply", "control fuse in"))
    feeds = [("12 V feed", "converter plus to the fuse box", ("12 V supply", "fuse box in"))]
    if build.key_at == "12 V":
        build.relay("load relay", "relay that feeds the fuse box when the key is on", "12 V supply", "frame")
        build.link("feeds", "converter", "load relay")
        feeds = [
            ("12 V feed", "converter plus to the load relay", ("12 V supply", "load relay in")),
            ("12 V feed 2", "load relay to the fuse box", ("load relay out", "fuse box in")),
        ]
    backs = [("12 V return", "minus rail to converter minus", (rail, "12 V minus"))]
    if not two_wire(build):
        backs.append(("frame bond", "frame to the minus rail", ("frame", rail)))
    guard = ""
    if build.job.wishes.buffer_battery:
        guard = build.in_line("buffer fuse", "blade_fuse", "fuse at the buffer battery", "12 V supply", "under seat")
    for name, title, ends in (lead, *feeds, *backs):
        build.wire(
            name,
            title,
            "12 V supply",
            "frame",
            ends,
            run,
            guard=guard,
            part_of_m=2 * run,
            together=build.margins.pair_wires,
        )
        build.link("feeds", "converter", name)
        terminals = build.finish(name)
        if terminals:
            build.link("feeds", "converter", terminals)
    build.link("feeds", "converter", "fuse box")


def _buffer(build: Builder) -> None:
    """Hang the buffer battery on the 12 V supply through its own fuse."""
    build.place("buffer battery", "buffer_battery", "12 V buffer battery", "12 V supply", "under seat")
    build.link("charges", "converter", "buffer battery")
    build.place("buffer fuse holder", "fuse_holder", "holder of the buffer fuse", "12 V supply", "under seat")
    build.link("takes fuse", "buffer fuse holder", "buffer fuse")
    run = build.job.runs.converter_to_fuse_box
    for name, title, ends in (
        ("buffer lead", "buffer battery through its fuse to the 12 V supply", ("buffer fuse out", "12 V supply")),
        ("buffer return", "12 V minus to the buffer battery", ("12 V minus", "buffer minus")),
    ):
        build.wire(
            name,
            title,
            "12 V supply",
            "under seat",
            ends,
            run,
            guard="buffer fuse",
            part_of_m=2 * run,
            together=build.margins.pair_wires,
        )
        build.finish(name)
    build.link("takes wire", "buffer fuse holder", "buffer lead")


def _circuit(build: Builder, name: str, loads: list[Load]) -> None:
    fuse = build.place(
        f"{name} fuse",
        "blade_fuse",
        f"blade fuse, {name}",
        name,
        "under seat",
        ends=("fuse box in", f"{name} fuse out"),
    )
    build.link("takes fuse", "fuse box", fuse)
    build.link("opens", "converter", fuse)
    lay_out_branches(build, name, fuse, loads, returns=two_wire(build))
    for load in loads:
        if load.is_bought:
            family = "horn" if load.purpose == "horn" else "lamp"
            build.place(lamp_place(load), family, load.name, name, RUN_ZONE[load.run], load.bought, load=load.name)


def lamp_place(load: Load) -> str:
    """Name the place of a lamp or horn to be bought."""
    return f"new {load.name}"


def _switches(build: Builder) -> None:
    """Give each donor switch that feeds loads its place; a donor without one needs none bought."""
    for item in build.job.donor.items:
        if item.kind in SWITCHES and item.feeds:
            build.place(f"switch {item.name}", "bar_switch", item.name, f"switch {item.name}", "bar", item=item)


def _flasher(build: Builder) -> None:
    lamps = [load for load in build.job.loads if "indicate" in load.on]
    if not lamps:
        return
    build.place("flasher", "flasher", "flasher unit", "flasher", "bar", item=build.item("flasher"))
    for load in lamps:
        if load.is_bought:
            build.link("flashes", "flasher", lamp_place(load))


def _control_chain(build: Builder) -> None:
    """Lay the key and stop switch: they drive coils at 12 V, or the key carries pack volts.

    The chain has a fuse of its own ahead of the load relay; a way of the fuse box would wait for itself.
    """
    at_12 = build.key_at == "12 V"
    build.in_line(
        "key switch",
        "key_switch",
        "key switch",
        "key control" if at_12 else "converter input",
        "bar",
        build.item("key switch"),
    )
    build.in_line("stop switch", "stop_switch", "stop switch", "key control", "bar", build.item("kill switch"))
    fuse = build.place(
        "control fuse",
        "blade_fuse",
        "blade fuse of the key and stop chain",
        "key control",
        "under seat",
        ends=("control fuse in", "control fuse out"),
    )
    build.place("control fuse holder", "fuse_holder", "in-line holder of the control fuse", "key control", "under seat")
    build.link("takes fuse", "control fuse holder", fuse)
    build.link("opens", "converter", fuse)
    ways = [("stop feed", "control fuse to the stop switch", ("control fuse out", "stop switch in"))]
    if at_12:
        ways = [
            ("key feed", "control fuse to the key switch", ("control fuse out", "key switch in")),
            ("load relay feed", "key switch to the load relay's coil", ("key switch out", "load relay coil")),
            ("key out", "key switch to the stop switch", ("key switch out", "stop switch in")),
        ]
    ways.append(("stop wire", "stop switch to the coils", ("stop switch out", "coils")))
    for name, title, ends in ways:
        _control_wire(build, name, title, "bar", ends, build.job.runs.key)
    build.link("takes wire", "control fuse holder", ways[0][0])
    back = ("coil return", "coils back to the 12 V minus rail", ("coils minus", "12 V rail minus"))
    for name, title, ends in (*_coil_wires(build), back):
        _control_wire(build, name, title, "frame", ends, build.job.runs.contactor_to_controller)
    build.place("bar plug", "signal_connector", "plug of the handlebar leads", "key control", "bar")
    for name, _, _ in ways:
        build.link("takes wire", "bar plug", name)


def _coil_wires(build: Builder) -> list[tuple[str, str, tuple[str, str]]]:
    """List the wires from the coils' feed: the contactor's coil only through what waits for the bus."""
    out = []
    if any(place.name == "contactor closer" for place in build.places):
        out += [
            ("closer feed", "coils' feed to the contactor closer", ("coils", "contactor closer in")),
            ("contactor coil feed", "closer to the contactor's coil", ("contactor closer out", "contactor coil")),
        ]
    elif build.job.wishes.contactor:
        out.append(("contactor coil feed", "coils' feed to the contactor's coil", ("coils", "contactor coil")))
    if build.job.controller.key_input == "12 V":
        out.append(("key input wire", "coils' feed to the controller's key input", ("coils", "controller key input")))
    return out


def _control_wire(build: Builder, name: str, title: str, zone: str, ends: tuple[str, str], run: float) -> None:
    """Lay one wire of the chain; the drop is shared over key, stop switch, coils and the way back."""
    runs = build.job.runs
    build.wire(
        name,
        title,
        "key control",
        zone,
        ends,
        run,
        guard="control fuse",
        part_of_m=3 * runs.key + 3 * runs.contactor_to_controller,
        together=build.margins.bundle_wires,
    )
    build.finish(name)
