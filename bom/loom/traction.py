"""The traction circuit: pack, main fuse, hand break, contactor, controller, phase leads."""

from itertools import pairwise

from bom.loom.builder import Builder


def lay_out_traction(build: Builder) -> None:
    """Place everything between pack and motor."""
    build.place("main fuse", "main_fuse", "main fuse", "traction", "under seat", 1, ("fuse in", "fuse out"))
    build.place("main fuse holder", "fuse_holder", "main fuse holder", "traction", "under seat")
    build.link("takes fuse", "main fuse holder", "main fuse")
    stops = _hand_breaks(build)
    if build.job.wishes.contactor:
        _contactor(build)
        stops.append(("contactor", "contactor", "frame"))
    _plus_path(build, stops)
    _minus_path(build)
    _phase_leads(build)


def _hand_breaks(build: Builder) -> list[tuple[str, str, str]]:
    """Place the pack plug and the isolator; list what the plus path runs through."""
    wishes, stops = build.job.wishes, []
    if wishes.pack_plug:
        build.place("pack plug", "power_connector", "pack plug, mated pair", "traction", "under seat")
        stops.append(("pack plug", "", "under seat"))
    if wishes.isolator != "none":
        build.place("isolator", "isolator", f"hand isolator ({wishes.isolator})", "traction", "frame")
        stops.append(("isolator", "isolator", "frame"))
    return stops


def _contactor(build: Builder) -> None:
    build.place("contactor", "contactor", "main contactor", "traction", "frame", 1, ("contactor in", "bus plus"))
    build.link("behind", "main fuse", "contactor")
    build.place("coil clamp", "clamp", "clamp across the contactor coil", "key control", "frame")
    build.link("clamps", "coil clamp", "contactor")
    if build.job.wishes.precharge:
        _precharge(build)


def _precharge(build: Builder) -> None:
    """Bridge the contactor with a fused, switched resistor."""
    build.place(
        "precharge resistor",
        "precharge_resistor",
        "precharge resistor",
        "precharge",
        "frame",
        1,
        ("precharge mid", "bus plus"),
    )
    build.place(
        "precharge relay",
        "relay",
        "relay of the precharge path",
        "precharge",
        "frame",
        1,
        ("precharge tap", "precharge mid"),
    )
    build.link("fills through", "precharge relay", "precharge resistor")
    fuse = build.tap_fuse("precharge", "precharge")
    build.link("rides", fuse, "precharge resistor")
    build.place("contactor closer", "closer", "closes the contactor when the bus is full", "precharge", "frame")
    build.link("drives", "contactor closer", "contactor")
    run = build.job.runs.fuse_to_contactor
    wire = build.wire(
        "precharge wire",
        "tap fuse through relay and resistor to the bus",
        "precharge",
        "frame",
        ("precharge tap", "bus plus"),
        run,
        guard=fuse,
        part_of_m=run,
        together=int(build.margins.pair_wires),
    )
    build.link("takes wire", "precharge fuse holder", wire)
    build.crimps(wire, "frame")


def _plus_path(build: Builder, stops: list[tuple[str, str, str]]) -> None:
    """Cut the plus run into wires between what it goes through, with a lug wherever there is a stud."""
    runs, pack = build.job.runs, "under seat"
    build.wire(
        "pack lead",
        "pack plus to main fuse",
        "traction",
        pack,
        ("pack plus", "fuse in"),
        runs.pack_to_fuse,
        part_of_m=_whole_path_m(build),
        together=int(build.margins.pair_wires),
    )
    build.link("relieves", "main fuse", "pack lead")
    build.lug("pack lead", "pack", pack)
    build.lug("pack lead", "fuse", pack, on="main fuse holder")
    marks = [("main fuse", "main fuse holder", pack), *stops]
    for here, there in pairwise(marks):
        name = _piece(
            build, f"lead to {there[0]}", here[0], f"{there[0]} in", there[2], runs.fuse_to_contactor / len(stops)
        )
        _end(build, name, here)
        _end(build, name, there)
    rest = 0.0 if stops else runs.fuse_to_contactor
    name = _piece(
        build, "controller lead", marks[-1][0], "controller plus", "frame", runs.contactor_to_controller + rest
    )
    _end(build, name, marks[-1])
    build.lug(name, "controller", "frame")


def _whole_path_m(build: Builder) -> float:
    runs = build.job.runs
    return runs.pack_to_fuse + runs.fuse_to_contactor + runs.contactor_to_controller + runs.controller_to_pack


def _piece(build: Builder, name: str, here: str, end: str, zone: str, length_m: float) -> str:
    return build.wire(
        name,
        f"{here} to {end.removesuffix(' in')}",
        "traction",
        zone,
        (f"{here} out", end),
        length_m,
        guard="main fuse",
        part_of_m=_whole_path_m(build),
        together=int(build.margins.pair_wires),
    )


def _end(build: Builder, wire: str, stop: tuple[str, str, str]) -> None:
    """Finish one end of a heavy wire: crimped into a plug, or lugged onto a stud."""
    part, stud, zone = stop
    if stud:
        build.lug(wire, part, zone, on=stud)
    else:
        build.link("takes wire", part, wire)


def _minus_path(build: Builder) -> None:
    runs, total = build.job.runs, _whole_path_m(build)
    together = int(build.margins.pair_wires)
    pieces = 2 if build.job.wishes.pack_plug else 1
    build.wire(
        "controller return",
        "controller minus towards the pack",
        "traction",
        "frame",
        ("controller minus", "plug minus" if pieces == 2 else "pack minus"),
        runs.controller_to_pack / pieces,
        guard="main fuse",
        part_of_m=total,
        together=together,
    )
    build.lug("controller return", "controller", "frame")
    if pieces == 2:
        build.link("takes wire", "pack plug", "controller return")
        build.wire(
            "pack return",
            "pack plug to pack minus",
            "traction",
            "under seat",
            ("plug minus", "pack minus"),
            runs.controller_to_pack / pieces,
            guard="main fuse",
            part_of_m=total,
            together=together,
        )
        build.link("takes wire", "pack plug", "pack return")
    build.lug("pack return" if pieces == 2 else "controller return", "pack", "under seat")


def _phase_leads(build: Builder) -> None:
    runs = build.job.runs
    build.wire(
        "phase leads",
        "three phase leads to the motor",
        "phase",
        "frame",
        ("controller phases", "motor"),
        runs.controller_to_motor,
        part_of_m=runs.controller_to_motor,
        together=3,
        count=3,
    )
    build.lug("phase leads", "controller", "frame", quantity=3)
    build.lug("phase leads", "motor", "frame", quantity=3)
