"""The control chain at 12 V: its fuse, key and stop switch, charge interlock, and every coil with its way back."""

from bom.loom.builder import Builder

Way = tuple[str, str, tuple[str, str]]  # name, title, and the points a wire joins


def lay_out_control(build: Builder) -> None:
    """Lay the chain that drives the coils; the key carries 12 V in it, or pack volts elsewhere.

    The chain has a fuse of its own ahead of the load relay; a way of the fuse box would wait for itself.
    """
    _places(build)
    fed = _fed(build)
    if len(fed) > 1:
        build.splice("coil splice", "coils", "key control", "frame")
    bar, frame = _chain(build, fed)
    back = [
        (f"{coil} return", f"{coil} minus to the 12 V minus rail", (f"{coil} minus", "12 V rail minus"))
        for coil in _coils(build)
    ]
    share_m = len(bar) * build.job.runs.key + 3 * build.job.runs.contactor_to_controller
    for zone, run, ways in (
        ("bar", build.job.runs.key, bar),
        ("frame", build.job.runs.contactor_to_controller, [*frame, *back]),
    ):
        for name, title, ends in ways:
            build.wire(
                name,
                title,
                "key control",
                zone,
                ends,
                run,
                guard="control fuse",
                part_of_m=share_m,
                together=build.margins.bundle_wires,
            )
            build.finish(name)
    build.link("takes wire", "control fuse holder", bar[0][0])
    build.place("bar plug", "signal_connector", "plug of the handlebar leads", "key control", "bar")
    for name, _, _ in bar:
        build.link("takes wire", "bar plug", name)


def _places(build: Builder) -> None:
    """Place what stands in the chain."""
    key_circuit = "key control" if build.key_at == "12 V" else "converter input"
    build.in_line("key switch", "key_switch", "key switch", key_circuit, "bar", build.item("key switch"))
    build.in_line("stop switch", "stop_switch", "stop switch", "key control", "bar", build.item("kill switch"))
    if build.job.wishes.charge_port:
        title = "switch under the charge port's cap: open while it is off"
        build.in_line("charge interlock", "cap_switch", title, "key control", "frame")
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


def _has(build: Builder, name: str) -> bool:
    return any(place.name == name for place in build.places)


def _fed(build: Builder) -> dict[str, str]:
    """List the wires that the chain's end feeds, each with the point it leads to."""
    fed = {}
    if _has(build, "contactor closer"):
        fed["closer feed"] = "contactor closer in"
    elif build.job.wishes.contactor:
        fed["contactor coil feed"] = "contactor coil plus"
    if _has(build, "key input relay"):
        fed["key input relay feed"] = "key input relay coil plus"
    if build.job.controller.key_input == "12 V":
        fed["key input wire"] = "controller key input"
    return fed


def _coils(build: Builder) -> list[str]:
    """List everything at 12 V on the frame whose minus comes home to the rail."""
    relays = [f"{place.name} coil" for place in build.places if place.family in ("relay", "contactor")]
    return [*relays, "contactor closer"] if _has(build, "contactor closer") else relays


def _chain(build: Builder, fed: dict[str, str]) -> tuple[list[Way], list[Way]]:
    """List the wires from the fuse to the coils: those that run to the handlebar, and those on the frame."""
    point = "control fuse out"
    bar: list[Way] = []
    if build.key_at == "12 V":
        bar += [
            ("key feed", "control fuse to the key switch", (point, "key switch in")),
            ("load relay feed", "key switch to the load relay's coil", ("key switch out", "load relay coil plus")),
        ]
        point = "key switch out"
    bar.append(("stop feed", f"{point} to the stop switch", (point, "stop switch in")))
    # One thing fed needs no splice; nothing fed leaves the controller's own stop input.
    last = "coils" if len(fed) > 1 else next(iter(fed.values()), "controller stop input")
    frame: list[Way] = []
    if _has(build, "charge interlock"):
        bar.append(("stop wire", "stop switch to the charge interlock", ("stop switch out", "charge interlock in")))
        frame.append(("interlock wire", "charge interlock to the coils", ("charge interlock out", last)))
    else:
        bar.append(("stop wire", "stop switch to the coils", ("stop switch out", last)))
    if len(fed) > 1:
        frame += [(wire, f"coil splice to {point}", ("coils", point)) for wire, point in fed.items()]
    if _has(build, "contactor closer"):
        frame += [
            ("contactor coil feed", "closer to the contactor's coil", ("contactor closer out", "contactor coil plus")),
            (
                "precharge relay feed",
                "closer to the precharge relay's coil, which it lets go",
                ("contactor closer out precharge", "precharge relay coil plus"),
            ),
        ]
    return bar, frame
