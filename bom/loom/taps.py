"""The thin pack-volts taps: converter, key input, meter, charging."""

from bom.loom.builder import Builder


def lay_out_taps(build: Builder) -> None:
    """Place every branch that leaves the traction circuit behind the breaks by hand."""
    _converter(build)
    if build.job.controller.key_input == "pack volts":
        _key_input(build)
    if build.job.wishes.meter != "none":
        _meter(build)
    if build.job.wishes.charger:
        build.place("charger", "charger", "charger", "charging", "box")
    if build.job.wishes.charge_port:
        _charge_port(build)


def _tap_wire(
    build: Builder,
    name: str,
    title: str,
    circuit: str,
    ends: tuple[str, str],
    length_m: float,
    *,
    guard: str,
    part_of_m: float,
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
        together=int(build.margins.pair_wires),
    )
    build.crimps(wire, "frame")
    return wire


def _converter(build: Builder) -> None:
    run, key_run = build.job.runs.pack_to_converter, build.job.runs.key
    build.place(
        "converter",
        "converter",
        "DC-DC converter to 12 V",
        "converter input",
        "box",
        1,
        ("converter in", "converter minus", "12 V supply", "12 V minus"),
    )
    fuse = build.tap_fuse("converter", "converter input")
    start = "converter tap"
    through_key = build.key_at == "pack volts"
    total = 2 * run + (2 * key_run if through_key else 0)
    if through_key:
        for name, title, ends in (
            ("key feed", "converter tap to the key switch", (start, "key in")),
            ("key out", "key switch back to the converter", ("key out", "converter in")),
        ):
            _tap_wire(build, name, title, "converter input", ends, key_run, guard=fuse, part_of_m=total)
    feed = _tap_wire(
        build,
        "converter feed",
        "tap fuse to converter plus",
        "converter input",
        (start if not through_key else "key out", "converter in"),
        run,
        guard=fuse,
        part_of_m=total,
    )
    build.link("takes wire", "converter fuse holder", feed)
    _tap_wire(
        build,
        "converter return",
        "converter minus back to the minus of the bike",
        "converter input",
        ("converter minus", build.minus_point()),
        run,
        guard=fuse,
        part_of_m=total,
    )


def _key_input(build: Builder) -> None:
    """Feed the controller's key input: by a DC relay at 12 V, or from the key at pack volts."""
    run = build.job.runs.contactor_to_controller + build.job.runs.fuse_to_contactor
    if build.key_at == "pack volts":
        _tap_wire(
            build,
            "key input wire",
            "key switch to the controller's key input",
            "key input",
            ("key out", "controller key input"),
            build.job.runs.key,
            guard="converter fuse",
            part_of_m=build.job.runs.key,
        )
        return
    fuse = build.tap_fuse("key input", "key input")
    build.place(
        "key input relay",
        "relay",
        "DC relay that feeds the controller's key input",
        "key input",
        "frame",
        1,
        ("key input tap", "controller key input"),
    )
    wire = _tap_wire(
        build,
        "key input wire",
        "tap fuse through the relay to the key input",
        "key input",
        ("key input tap", "controller key input"),
        run,
        guard=fuse,
        part_of_m=run,
    )
    build.link("takes wire", "key input fuse holder", wire)


def _meter(build: Builder) -> None:
    """Feed the meter behind the key where pack volts are switched there, so that it rests when parked."""
    wishes, run = build.job.wishes, build.job.runs.meter
    place = (
        "meter",
        "meter",
        f"battery gauge ({wishes.meter})",
        "meter",
        "bar",
        1,
        ("meter plus", build.minus_point()),
    )
    build.place(*place)
    switched = build.job.controller.key_input == "pack volts"
    if switched:
        start, guard = "controller key input", "converter fuse" if build.key_at == "pack volts" else "key input fuse"
    else:
        start, guard = "meter tap", build.tap_fuse("meter", "meter")
    wire = _tap_wire(
        build,
        "meter plus",
        f"{start} to the meter",
        "meter",
        (start, "meter plus"),
        run,
        guard=guard,
        part_of_m=2 * run,
    )
    if not switched:
        build.link("takes wire", "meter fuse holder", wire)
    _tap_wire(
        build,
        "meter minus",
        "meter back to the minus of the bike",
        "meter",
        ("meter minus", build.minus_point()),
        run,
        guard=guard,
        part_of_m=2 * run,
    )
    if wishes.meter == "volts and amps":
        build.place("shunt", "shunt", "shunt in the pack return", "traction", "under seat")
        build.link("drops in", "shunt", "meter")


def _charge_port(build: Builder) -> None:
    fuse = build.tap_fuse("charge", "charging")
    build.place("charge port", "charge_port", "charge port with cap", "charging", "frame")
    run = build.job.runs.charge_port
    plus = _tap_wire(
        build,
        "charge plus",
        "charge port to its fuse",
        "charging",
        ("charge port", "charge tap"),
        run,
        guard=fuse,
        part_of_m=2 * run,
    )
    minus = _tap_wire(
        build,
        "charge minus",
        "charge port back to the minus of the bike",
        "charging",
        ("charge port minus", build.minus_point()),
        run,
        guard=fuse,
        part_of_m=2 * run,
    )
    build.link("takes wire", "charge fuse holder", plus)
    for wire in (plus, minus):
        build.link("takes wire", "charge port", wire)
