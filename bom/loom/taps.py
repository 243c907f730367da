"""The thin pack-volts taps: converter, key input, meter, charging. Each starts at the plus post, behind a fuse."""

from bom.loom.builder import Builder


def lay_out_taps(build: Builder) -> None:
    """Place every branch that leaves the traction circuit."""
    _converter(build)
    if build.job.controller.key_input == "pack volts":
        _key_input(build)
    if build.job.wishes.meter != "none":
        _meter(build)
    if build.job.wishes.charger:
        build.place("charger", "charger", "charger", "charging", "box")
    if build.job.wishes.charge_port:
        _charge_port(build)


def _wire(
    build: Builder,
    name: str,
    title: str,
    circuit: str,
    ends: tuple[str, str],
    length_m: float,
    *,
    guard: str,
    part_of_m: float,
    crimped: float,
) -> str:
    wire = build.wire(
        name,
        title,
        circuit,
        "frame",
        ends,
        length_m,
        guard=guard,
        part_of_m=part_of_m,
        together=build.margins.pair_wires,
    )
    if crimped:
        build.crimps(wire, crimped)
    return wire


def _home(
    build: Builder, name: str, title: str, circuit: str, start: str, length_m: float, **sizes: float | str
) -> str:
    """Bring a tap's minus back to the minus post, on a lug."""
    guard, part_of_m, crimped = str(sizes["guard"]), float(sizes["part_of_m"]), float(sizes["crimped"])
    wire = _wire(
        build,
        name,
        title,
        circuit,
        (start, "minus post"),
        length_m,
        guard=guard,
        part_of_m=part_of_m,
        crimped=crimped,
    )
    build.lug(wire, "minus post", on="minus post")
    return wire


def _converter(build: Builder) -> None:
    run, key_run = build.job.runs.pack_to_converter, build.job.runs.key
    build.place(
        "converter",
        "converter",
        "DC-DC converter to 12 V",
        "converter input",
        "box",
        ends=("converter in", "converter minus", "12 V supply", "12 V minus"),
    )
    fuse = build.tap_fuse("converter", "converter input")
    start = f"{fuse} out"
    through_key = build.key_at == "pack volts"
    total = 2 * run + (2 * key_run if through_key else 0)
    circuit = "converter input"
    first = "converter feed"
    if through_key:
        first = "key feed"
        _wire(
            build,
            "key feed",
            "converter fuse to the key switch",
            circuit,
            (start, "key switch in"),
            key_run,
            guard=fuse,
            part_of_m=total,
            crimped=1,
        )
        _wire(
            build,
            "key out",
            "key switch back to the frame",
            circuit,
            ("key switch out", "key node"),
            key_run,
            guard=fuse,
            part_of_m=total,
            crimped=2,
        )
        start = "key node"
    _wire(
        build,
        "converter feed",
        "to converter plus",
        circuit,
        (start, "converter in"),
        run,
        guard=fuse,
        part_of_m=total,
        crimped=2 if through_key else 1,
    )
    build.link("takes wire", "converter fuse holder", first)
    _home(
        build,
        "converter return",
        "converter minus back to the minus post",
        circuit,
        "converter minus",
        run,
        guard=fuse,
        part_of_m=total,
        crimped=1,
    )


def _key_input(build: Builder) -> None:
    """Feed the controller's key input: by a DC relay at 12 V, or from the key at pack volts."""
    run = build.job.runs.contactor_to_controller
    if build.key_at == "pack volts":
        _wire(
            build,
            "key input wire",
            "key node to the controller's key input",
            "key input",
            ("key node", "controller key input"),
            run,
            guard="converter fuse",
            part_of_m=run,
            crimped=2,
        )
        return
    fuse = build.tap_fuse("key input", "key input")
    build.relay("key input relay", "DC relay that feeds the controller's key input", "key input", "frame")
    feed = _wire(
        build,
        "key input feed",
        "tap fuse to the key input relay",
        "key input",
        (f"{fuse} out", "key input relay in"),
        run,
        guard=fuse,
        part_of_m=2 * run,
        crimped=1,
    )
    build.link("takes wire", "key input fuse holder", feed)
    _wire(
        build,
        "key input wire",
        "relay to the controller's key input",
        "key input",
        ("key input relay out", "controller key input"),
        run,
        guard=fuse,
        part_of_m=2 * run,
        crimped=2,
    )


def _meter(build: Builder) -> None:
    """Feed the meter behind the key where pack volts are switched there, so that it rests when parked."""
    wishes, run = build.job.wishes, build.job.runs.meter
    build.place("meter", "meter", f"battery gauge ({wishes.meter})", "meter", "bar")
    if build.job.controller.key_input == "pack volts":
        start, guard = "controller key input", "converter fuse" if build.key_at == "pack volts" else "key input fuse"
        _wire(
            build,
            "meter plus",
            "switched pack volts to the meter",
            "meter",
            (start, "meter plus"),
            run,
            guard=guard,
            part_of_m=2 * run,
            crimped=2,
        )
    else:
        guard = build.tap_fuse("meter", "meter")
        wire = _wire(
            build,
            "meter plus",
            "tap fuse to the meter",
            "meter",
            (f"{guard} out", "meter plus"),
            run,
            guard=guard,
            part_of_m=2 * run,
            crimped=1,
        )
        build.link("takes wire", "meter fuse holder", wire)
    _home(
        build,
        "meter minus",
        "meter back to the minus post",
        "meter",
        "meter minus",
        run,
        guard=guard,
        part_of_m=2 * run,
        crimped=1,
    )
    if wishes.meter == "volts and amps":
        _shunt_sense(build)


def _shunt_sense(build: Builder) -> None:
    """Bring the shunt's millivolts to the meter; the fuse at the shunt guards both wires against the pack."""
    build.link("drops in", "shunt", "meter")
    run = build.job.runs.meter
    fuse = build.in_line("sense fuse", "tap_fuse", "fuse in the shunt's sense lead", "meter", "frame")
    build.place("sense fuse holder", "fuse_holder", "holder of the sense fuse", "meter", "frame")
    build.link("takes fuse", "sense fuse holder", fuse)
    for side, start in (("plus", f"{fuse} out"), ("minus", "shunt out")):
        wire = _wire(
            build,
            f"sense {side}",
            f"shunt to meter, sense {side}",
            "meter",
            (start, f"meter sense {side}"),
            run,
            guard=fuse,
            part_of_m=2 * run,
            crimped=1 if side == "plus" else 2,
        )
        if side == "plus":
            build.link("takes wire", "sense fuse holder", wire)


def _charge_port(build: Builder) -> None:
    fuse = build.tap_fuse("charge", "charging")
    build.place("charge port", "charge_port", "charge port with cap", "charging", "frame")
    run = build.job.runs.charge_port
    plus = _wire(
        build,
        "charge plus",
        "charge port to its fuse",
        "charging",
        ("charge port plus", f"{fuse} out"),
        run,
        guard=fuse,
        part_of_m=2 * run,
        crimped=0,
    )
    build.link("takes wire", "charge fuse holder", plus)
    minus = _home(
        build,
        "charge minus",
        "charge port back to the minus post",
        "charging",
        "charge port minus",
        run,
        guard=fuse,
        part_of_m=2 * run,
        crimped=0,
    )
    for wire in (plus, minus):
        build.link("takes wire", "charge port", wire)
