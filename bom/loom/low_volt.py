"""The 12 V side: supply, load relay, fuse box, circuits with their loads."""

from bom.arrangement import AT_PACK
from bom.loom.branches import RUN_ZONE, SWITCHES, lay_out_branches
from bom.loom.builder import Builder
from bom.loom.control import lay_out_control
from bom.loom.relay_names import RELAY_COIL
from bom.loom.returns import is_wired
from bom.read.job import Load

METER_FEED = "meter feed"  # circuit that only a meter which runs on 12 V needs
RAIL_METER = "rail meter"  # place and circuit of the meter that shows the 12 V side


def lay_out_low_volt(build: Builder) -> None:
    """Place everything on the 12 V side."""
    _supply(build)
    if build.job.wishes.buffer_battery:
        _buffer(build)
    for name, loads in circuits(build.job.loads).items():
        _circuit(build, name, loads)
    _switches(build)
    _flasher(build)
    if build.job.wishes.meter != "none":
        _meter_feed(build)
    if build.job.wishes.shows_rail:
        _rail_meter(build)
    lay_out_control(build)


def circuits(loads: list[Load]) -> dict[str, list[Load]]:
    """Group loads by the circuit they name; one that names none is a circuit of its own."""
    grouped: dict[str, list[Load]] = {}
    for load in loads:
        grouped.setdefault(circuit_of(load), []).append(load)
    return grouped


def circuit_of(load: Load) -> str:
    """Name the circuit of a load: the one it names, or one of its own."""
    return f"{load.circuit or load.name} circuit"


def _supply(build: Builder) -> None:
    """Lead the converter's output to the fuse box, through the load relay where the key drives relays."""
    run = build.runs.converter_to_fuse_box
    rail = "12 V rail minus"
    build.place(rail, "post", "minus rail of the 12 V side", "12 V supply", "under seat", ends=(rail,))
    build.splice("12 V splice", "12 V supply", "12 V supply", "under seat")
    build.place("fuse box", "fuse_box", "fuse box", "12 V supply", "under seat", item=build.item("fuse box"))
    lead = ("control lead", "12 V supply to the control fuse", ("12 V supply", "control fuse in"))
    feeds = [("12 V feed", "converter plus to the fuse box", ("12 V supply", "fuse box in"))]
    if build.key_at not in AT_PACK:
        build.relay("load relay", "relay that feeds the fuse box when the key is on", "12 V supply", "frame")
        build.link("feeds", "converter", "load relay")
        feeds = [
            ("12 V feed", "converter plus to the load relay", ("12 V supply", "load relay in")),
            ("12 V feed 2", "load relay to the fuse box", ("load relay out", "fuse box in")),
        ]
    backs = [("12 V return", "minus rail to converter minus", (rail, "12 V minus"))]
    if not is_wired(build.job):
        backs.append(("frame bond", "frame to the minus rail", ("frame", rail)))
    guard = ""
    if build.job.wishes.buffer_battery:
        guard = build.in_line("buffer fuse", "blade_fuse", "fuse at the buffer battery", "12 V supply", "under seat")
    out = ("converter lead", "converter plus to the 12 V splice", ("12 V plus", "12 V supply"))
    for name, title, ends in (out, lead, *feeds, *backs):
        build.wire(
            name,
            title,
            "12 V supply",
            "frame",
            ends,
            build.margin_m("tail_m") if name == "converter lead" else run,
            guard=guard,
            part_of_m=2 * run,
            together=build.margins.pair_wires,
        )
        build.link("feeds", "converter", name)
        build.finish(name)
    build.link("feeds", "converter", "fuse box")


def _buffer(build: Builder) -> None:
    """Hang the buffer battery on the 12 V supply through its own fuse."""
    build.place("buffer battery", "buffer_battery", "12 V buffer battery", "12 V supply", "under seat")
    build.link("charges", "converter", "buffer battery")
    build.place("buffer fuse holder", "fuse_holder", "holder of the buffer fuse", "12 V supply", "under seat")
    build.link("takes fuse", "buffer fuse holder", "buffer fuse")
    run = build.runs.converter_to_fuse_box
    stub_m = build.runs.tap_stub
    for name, title, ends, length_m, guard in (
        ("buffer stub", "buffer battery to its fuse", ("buffer plus", "buffer fuse in"), stub_m, ""),
        ("buffer lead", "buffer fuse to the 12 V splice", ("buffer fuse out", "12 V supply"), run, "buffer fuse"),
        ("buffer return", "minus rail to the buffer battery", ("12 V rail minus", "buffer minus"), run, "buffer fuse"),
    ):
        build.wire(
            name,
            title,
            "12 V supply",
            "under seat",
            ends,
            length_m,
            guard=guard,
            part_of_m=2 * run + stub_m,
            together=build.margins.pair_wires,
        )
        build.finish(name)
    build.link("relieves", "buffer fuse", "buffer stub")


def _circuit(build: Builder, name: str, loads: list[Load]) -> None:
    fuse = _way(build, name)
    lay_out_branches(build, name, fuse, loads, returns=is_wired(build.job))
    for load in loads:
        if load.is_bought:
            family = "horn" if load.purpose == "horn" else "lamp"
            build.place(lamp_place(load), family, load.name, name, RUN_ZONE[load.run], load.bought, load=load.name)


def _way(build: Builder, circuit: str) -> str:
    """Take a way of the fuse box for a circuit, and return its fuse."""
    ends = ("fuse box in", f"{circuit} fuse out")
    fuse = build.place(f"{circuit} fuse", "blade_fuse", f"blade fuse, {circuit}", circuit, "under seat", ends=ends)
    build.link("takes fuse", "fuse box", fuse)
    build.link("opens", "converter", fuse)
    return fuse


def lamp_place(load: Load) -> str:
    """Name the place of a lamp or horn to be bought."""
    return f"new {load.name}"


def _meter_feed(build: Builder) -> None:
    """Feed a meter that runs on 12 V from a way of the fuse box; one that runs on the pack needs none of it."""
    _to_the_bar(build, METER_FEED, "meter feed", "meter 12 V", "the meter's 12 V")


def _rail_meter(build: Builder) -> None:
    """Hang a meter of the 12 V side on a way of the fuse box, which is dead with the key off."""
    build.place(RAIL_METER, "meter", "voltmeter of the 12 V side", RAIL_METER, "bar")
    _to_the_bar(build, RAIL_METER, "rail meter feed", RAIL_METER, "the rail meter's")


def _to_the_bar(build: Builder, circuit: str, feed: str, point: str, owner: str) -> None:
    """Lay plus and minus from a way of the fuse box to a meter."""
    fuse = _way(build, circuit)
    for name, title, ends in (
        (feed, f"fuse box to {owner} plus", (f"{fuse} out", f"{point} plus")),
        (f"{feed} return", f"{owner} minus to the minus rail", (f"{point} minus", "12 V rail minus")),
    ):
        build.wire(
            name,
            title,
            circuit,
            "bar",
            ends,
            build.runs.meter,
            guard=fuse,
            part_of_m=2 * build.runs.meter,
            together=build.margins.bundle_wires,
        )
        build.finish(name)


def _switches(build: Builder) -> None:
    """Give each donor switch that feeds loads its place; a donor without one needs none bought."""
    for item in build.job.donor.items:
        if item.kind in SWITCHES and item.feeds:
            circuit = RELAY_COIL if item.relay else f"switch {item.name}"
            build.place(f"switch {item.name}", "bar_switch", item.name, circuit, "bar", item=item)


def _flasher(build: Builder) -> None:
    lamps = [load for load in build.job.loads if "indicate" in load.on]
    if not lamps:
        return
    build.place("flasher", "flasher", "flasher unit", "flasher", "bar", item=build.item("flasher"))
    for load in lamps:
        if load.is_bought and not load.is_telltale:
            build.link("flashes", "flasher", lamp_place(load))
