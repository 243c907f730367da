"""The 12 V side: supply, load relay, fuse box, circuits with their loads, and the control chain."""

from collections.abc import Mapping

from bom.loom.builder import Builder
from bom.read.job import Item, Load

# The donor's switches that carry a load's current, and the trade's name of their place.
SWITCHES: Mapping[str, str] = {
    "start button": "start button",
    "horn button": "horn button",
    "light switch": "light switch",
    "dip switch": "dip switch",
    "indicator switch": "indicator switch",
    "brake switch": "brake switch",
}
RUN_ZONE = {"front": "bar", "rear": "under seat", "dash": "bar"}


def lay_out_low_volt(build: Builder) -> None:
    """Place everything on the 12 V side."""
    _supply(build)
    for name, loads in circuits(build.job.loads).items():
        _circuit(build, name, loads)
    _switches(build)
    _flasher(build)
    _control_chain(build)


def circuits(loads: list[Load]) -> dict[str, list[Load]]:
    """Group loads by the circuit they name; one that names none is a circuit of its own."""
    grouped: dict[str, list[Load]] = {}
    for load in loads:
        grouped.setdefault(load.circuit or load.name, []).append(load)
    return grouped


def _supply(build: Builder) -> None:
    run, wishes = build.job.runs.converter_to_fuse_box, build.job.wishes
    guard = ""
    back = "fuse box minus rail to converter minus" if two_wire(build) else "frame bond to converter minus"
    if wishes.buffer_battery:
        build.place("buffer battery", "buffer_battery", "12 V buffer battery", "12 V supply", "under seat")
        build.link("charges", "converter", "buffer battery")
        guard = build.place("buffer fuse", "blade_fuse", "fuse at the buffer battery", "12 V supply", "under seat")
        build.place("buffer fuse holder", "fuse_holder", "holder of the buffer fuse", "12 V supply", "under seat")
        build.link("takes fuse", "buffer fuse holder", guard)
    for name, title, ends in (
        ("12 V feed", "converter plus to the fuse box", ("12 V supply", "fuse box in")),
        ("12 V return", back, ("12 V rail minus", "12 V minus")),
    ):
        build.wire(
            name,
            title,
            "12 V supply",
            "frame",
            ends,
            run,
            guard=guard,
            part_of_m=2 * run,
            together=int(build.margins.pair_wires),
        )
        build.crimps(name, "frame")
        build.link("feeds", "converter", name)
    if build.key_at == "12 V":
        build.place(
            "load relay",
            "relay",
            "relay that feeds the fuse box when the key is on",
            "12 V supply",
            "frame",
            1,
            ("12 V supply", "fuse box in"),
        )
    item = build.item("fuse box")
    if item and item.keep != "no":
        build.donor_place(item, "fuse box", "fuse_box", "fuse box", "12 V supply", "under seat")
    else:
        build.place("fuse box", "fuse_box", "fuse box", "12 V supply", "under seat")


def two_wire(build: Builder) -> bool:
    """Tell whether lamps return by wire: as the builder says, else as the donor has it."""
    wish = build.job.wishes.two_wire
    return build.job.donor.lamp_return == "wire" if wish is None else wish


def _circuit(build: Builder, name: str, loads: list[Load]) -> None:
    fuse = build.place(
        f"{name} fuse", "blade_fuse", f"blade fuse, {name}", name, "under seat", 1, ("fuse box in", f"{name} fused")
    )
    build.link("takes fuse", "fuse box", fuse)
    build.link("opens", "converter", fuse)
    run = getattr(build.job.runs, loads[0].run)
    zone = RUN_ZONE[loads[0].run]
    returns = two_wire(build)
    loom = build.item("loom")
    kept = loom if loom and loom.keep != "no" else None
    ways = [(f"{name} feed", f"fuse box to {name}", (f"{name} fused", name))]
    if returns:
        ways.append((f"{name} return", f"{name} to the 12 V minus rail", (f"{name} minus", "12 V rail minus")))
    for wire, title, ends in ways:
        build.wire(
            wire,
            title,
            name,
            zone,
            ends,
            run,
            guard=fuse,
            part_of_m=run * len(ways),
            together=int(build.margins.bundle_wires),
            item=kept,
            load=loads[0].name,
        )
        build.crimps(wire, zone)
    for load in loads:
        if load.fit == "new" and load.purpose:
            family = "horn" if load.purpose == "horn" else "lamp"
            build.place(load.name, family, load.name, name, zone, load.count, load=load.name)


def _switches(build: Builder) -> None:
    """Give each donor switch that feeds loads its place; a donor without one needs none bought."""
    for item in build.job.donor.items:
        if item.kind in SWITCHES and item.feeds:
            build.donor_place(item, item.name, "bar_switch", item.name, f"switch {item.name}", "bar")


def _flasher(build: Builder) -> None:
    if any("indicate" in load.on for load in build.job.loads):
        item = build.item("flasher")
        if item and item.keep != "no":
            build.donor_place(item, "flasher", "flasher", "flasher unit", "flasher", "bar")
        else:
            build.place("flasher", "flasher", "flasher unit", "flasher", "bar")


def _control_chain(build: Builder) -> None:
    """Lay the key and stop switch: they drive coils at 12 V, or the key carries pack volts."""
    circuit = "key control" if build.key_at == "12 V" else "converter input"
    _kept_or_bought(build, build.item("key switch"), "key switch", "key_switch", circuit, ("key in", "key out"))
    _kept_or_bought(build, build.item("kill switch"), "stop switch", "stop_switch", "stop chain", ("key out", "coils"))
    run = build.job.runs.key
    fuse = build.place(
        "control fuse", "blade_fuse", "blade fuse of the key and stop chain", "key control", "under seat"
    )
    build.link("takes fuse", "fuse box", fuse)
    build.link("opens", "converter", fuse)
    ways = [("stop wire", "stop switch to the coils", ("coils", "coil feed"))]
    if build.key_at == "12 V":
        ways = [
            ("key feed", "control fuse to the key switch", ("control fused", "key in")),
            ("key out", "key switch to the stop switch", ("key out", "stop in")),
            *ways,
        ]
    for name, title, ends in ways:
        build.wire(
            name,
            title,
            "key control",
            "bar",
            ends,
            run,
            guard=fuse,
            part_of_m=run * len(ways),
            together=int(build.margins.bundle_wires),
        )
        build.crimps(name, "bar")
    build.place("bar plug", "signal_connector", "plug of the handlebar leads", "key control", "bar")
    for name, _, _ in ways:
        build.link("takes wire", "bar plug", name)


def _kept_or_bought(
    build: Builder, item: Item | None, name: str, family: str, circuit: str, ends: tuple[str, str]
) -> None:
    if item and item.keep != "no":
        build.donor_place(item, name, family, name, circuit, "bar", 1, ends)
    else:
        build.place(name, family, name, circuit, "bar", 1, ends)
