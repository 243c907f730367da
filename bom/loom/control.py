"""The control chain at 12 V: its fuse, key and stop switch, charge interlock, and every coil with its way back."""

from dataclasses import dataclass

from bom.arrangement import AT_PACK, PACK, PACK_SLEEPING, SLEEPING
from bom.loom.bridges import CONVERTER_ENABLE
from bom.loom.builder import Builder
from bom.loom.relay_names import RELAY_COIL, STOP_RELAY, switch_relays

# How a wire of the chain lies: through the bar plug, between two things at the bar, or on the frame.
PLUGGED, AT_BAR = "through the bar plug", "at the bar"


@dataclass(frozen=True)
class Way:
    """One wire of the chain before it is laid; the allowed drop is shared over those in the chain itself."""

    name: str
    title: str
    ends: tuple[str, str]
    lies: str
    in_chain: bool = False


def lay_out_control(build: Builder) -> None:
    """Lay the chain that drives the coils; the key carries 12 V in it, or pack volts elsewhere.

    The chain has a fuse of its own ahead of the load relay; a way of the fuse box would wait for itself.
    """
    _places(build)
    fed = _fed(build)
    if len(fed) > 1:
        build.splice("coil splice", "coils", "key control", "frame")
    ways = [*_chain(build, fed), *_returns(build)]
    runs = build.runs
    length_m = {PLUGGED: runs.key, AT_BAR: build.margin_m("bar_link_m"), "frame": runs.contactor_to_controller}
    # Out through the chain, then interlock, splice and closer to a coil, and back; one tail at the key.
    whole_m = sum(length_m[way.lies] for way in ways if way.in_chain) + 4 * runs.contactor_to_controller
    whole_m += build.margin_m("tail_m")
    build.place("bar plug", "signal_connector", "plug of the handlebar leads", "key control", "bar")
    for way in ways:
        build.wire(
            way.name,
            way.title,
            "key control",
            "frame" if way.lies == "frame" else "bar",
            way.ends,
            length_m[way.lies],
            guard="control fuse",
            part_of_m=whole_m,
            together=build.margins.bundle_wires,
        )
        build.finish(way.name)
        if way.lies == PLUGGED:
            build.link("takes wire", "bar plug", way.name)


def _places(build: Builder) -> None:
    """Place what stands in the chain."""
    key_circuit = {PACK: "converter input", PACK_SLEEPING: "key input"}.get(build.key_at, "key control")
    build.in_line("key switch", "key_switch", "key switch", key_circuit, "bar", build.item("key switch"))
    stop_circuit = RELAY_COIL if _inverts(build) else "key control"
    build.in_line("stop switch", "stop_switch", "stop switch", stop_circuit, "bar", build.item("kill switch"))
    if _inverts(build):
        title = "relay that opens the coil chain while the kill switch pulls it in"
        build.relay(STOP_RELAY, title, "key control", "frame")
        build.link("pulls", "stop switch", STOP_RELAY)
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


def _inverts(build: Builder) -> bool:
    """Tell whether the kill switch closes to stop and works through a relay."""
    kill = build.item("kill switch")
    return kill is not None and kill.keep != "no" and bool(kill.relay)


def _has(build: Builder, name: str) -> bool:
    return name in build.places


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


def _returns(build: Builder) -> list[Way]:
    """Bring the minus of everything at 12 V on the frame home to the rail."""
    coils = [place.name for place in build.places.values() if place.family in ("relay", "contactor")]
    elsewhere = {STOP_RELAY, *switch_relays(build.job.donor.items)}
    driven = [f"{name} coil" for name in coils if name not in elsewhere]
    driven += ["contactor closer"] if _has(build, "contactor closer") else []
    control = build.job.controller
    driven += ["key input"] if control.key_input == "12 V" and control.key_return == "own terminal" else []
    return [
        Way(f"{name} return", f"{name} minus to the 12 V minus rail", (f"{name} minus", "12 V rail minus"), "frame")
        for name in driven
    ]


def _chain(build: Builder, fed: dict[str, str]) -> list[Way]:
    """List the wires from the fuse through key, stop switch and charge interlock to the coils."""
    point, lies = "control fuse out", PLUGGED
    ways: list[Way] = []
    if build.key_at not in AT_PACK:
        ends = ("key switch out", "load relay coil plus")
        ways += [
            Way("key feed", "control fuse to the key switch", (point, "key switch in"), PLUGGED, in_chain=True),
            Way("load relay feed", "key switch to the load relay's coil", ends, PLUGGED),
        ]
        point, lies = "key switch out", AT_BAR
        if build.key_at == SLEEPING:
            ends = ("key switch out", CONVERTER_ENABLE)
            ways.append(Way("enable wire", "key switch to the converter's enable", ends, PLUGGED))
    stop = STOP_RELAY if _inverts(build) else "stop switch"
    if stop == STOP_RELAY:
        lies = PLUGGED if lies == AT_BAR else "frame"  # the relay sits on the frame, the key at the bar
        ways += _stop_coil(build)
    ways.append(Way("stop feed", f"{point} to the {stop}", (point, f"{stop} in"), lies, in_chain=True))
    # One thing fed needs no splice; nothing fed leaves the controller's own stop input.
    last = "coils" if len(fed) > 1 else next(iter(fed.values()), "controller stop input")
    if _has(build, "charge interlock"):
        ends = ("charge interlock out", last)
        ways.append(Way("interlock wire", f"charge interlock to {last}", ends, "frame"))
        last = "charge interlock in"
    lies = "frame" if stop == STOP_RELAY else PLUGGED
    ways.append(Way("stop wire", f"{stop} to {last}", (f"{stop} out", last), lies, in_chain=True))
    if len(fed) > 1:
        ways += [Way(wire, f"coil splice to {point}", ("coils", point), "frame") for wire, point in fed.items()]
    if _has(build, "contactor closer"):
        coil = ("contactor closer out", "contactor coil plus")
        ways.append(Way("contactor coil feed", "closer to the contactor's coil", coil, "frame"))
    if _has(build, "precharge relay"):
        relay = ("contactor closer out precharge", "precharge relay coil plus")
        ways.append(
            Way("precharge relay feed", "closer to the precharge relay's coil, which it lets go", relay, "frame")
        )
    return ways


def _stop_coil(build: Builder) -> list[Way]:
    """Lead the stop relay's coil to a kill switch that closes to stop, and that to where it was earthed."""
    earthed = build.job.donor.lamp_return == "frame" and build.job.wishes.two_wire is not True
    end, lies = ("frame", AT_BAR) if earthed else ("12 V rail minus", PLUGGED)
    feed, coil = (f"{STOP_RELAY} in", f"{STOP_RELAY} coil plus"), (f"{STOP_RELAY} coil minus", "stop switch in")
    return [
        Way("stop relay feed", "stop relay's own feed to its coil", feed, "frame"),
        Way("stop lead", "stop relay's coil to the kill switch", coil, PLUGGED),
        Way("stop ground", f"kill switch to the {end}", ("stop switch out", end), lies),
    ]
