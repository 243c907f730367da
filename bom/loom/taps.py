"""The thin pack-volts taps: converter, key input, meter, charging. Each starts at the plus post, behind a fuse."""

from dataclasses import dataclass

from bom.arrangement import AT_PACK, PACK, PACK_SLEEPING
from bom.loom.bridges import CONVERTER_ENABLE
from bom.loom.builder import BUS_SENSE, PILOT, Builder

BOTH = 2
KEY_NODE, KEY_TAP = "key node", "key"
RAIL_CLAMP = "rail clamp"  # place of the clamp across the 12 V supply


@dataclass(frozen=True)
class Tap:
    """One branch: its circuit, the fuse that guards it, and its length there and back."""

    build: Builder
    circuit: str
    guard: str
    whole_m: float

    def wire(self, name: str, title: str, start: str, end: str, length_m: float, crimps: int) -> str:
        """Lay a wire of the branch with this number of crimp terminals."""
        wire = self.build.wire(
            name,
            title,
            self.circuit,
            "frame",
            (start, end),
            length_m,
            guard=self.guard,
            part_of_m=self.whole_m,
            together=self.build.margins.pair_wires,
        )
        if crimps == BOTH:
            self.build.finish(wire)
        elif crimps:
            self.build.crimps(wire, crimps)
        return wire

    def from_holder(self, name: str, title: str, end: str, length_m: float, crimps: int) -> str:
        """Lay the wire that leaves the branch's own fuse, clamped in its holder."""
        wire = self.wire(name, title, f"{self.guard} out", end, length_m, crimps)
        self.build.link("takes wire", f"{self.guard} holder", wire)
        return wire

    def home(self, name: str, title: str, start: str, length_m: float, crimps: int) -> str:
        """Bring the branch's minus back to the minus post, on a lug."""
        wire = self.wire(name, title, start, "minus post", length_m, crimps)
        self.build.lug(wire, "minus post", on="minus post")
        return wire


def lay_out_taps(build: Builder) -> None:
    """Place every branch that leaves the traction circuit."""
    _converter(build)
    if build.job.controller.key_input == "pack volts":
        _key_input(build)
    if build.job.wishes.meter != "none":
        _meter(build)
    if build.job.wishes.pilot_lamp:
        _pilot_lamp(build)
    if build.job.wishes.charger:
        build.place("charger", "charger", "charger", "charging", "box")
    if build.job.wishes.charge_port:
        _charge_port(build)


def _converter(build: Builder) -> None:
    """Feed the converter from its fuse, through the key where the key carries pack volts."""
    run, key_run = build.runs.pack_to_converter, build.runs.key
    build.place(
        "converter",
        "converter",
        "DC-DC converter to 12 V",
        "converter input",
        "box",
        ends=("converter in", "converter minus", "12 V plus", "12 V minus"),
    )
    fuse = build.tap_fuse("converter", "converter input")
    if build.job.wishes.rail_clamp:
        build.place(RAIL_CLAMP, "clamp", "clamp across the 12 V supply, at the converter", "12 V supply", "box")
        build.link("opens through", fuse, RAIL_CLAMP)
    through_key = build.key_at == PACK
    if build.key_at == PACK_SLEEPING:
        _key_tap(build)
    tap = Tap(build, "converter input", fuse, 2 * run + (2 * key_run if through_key else 0))
    if through_key:
        _through_key(tap, key_run)
        tap.wire("converter feed", "key node to converter plus", "key node", "converter in", run, 2)
    else:
        tap.from_holder("converter feed", "converter fuse to converter plus", "converter in", run, 1)
    tap.home("converter return", "converter minus back to the minus post", "converter minus", run, 1)


def _through_key(tap: Tap, run: float) -> None:
    """Lead a branch from its fuse through the key to a joint behind it."""
    build, node = tap.build, KEY_NODE
    build.place(node, "post", "covered joint behind the key", tap.circuit, "frame", ends=(node,))
    tap.from_holder("key feed", f"{tap.guard} to the key switch", "key switch in", run, 1)
    tap.wire("key out", "key switch back to the frame", "key switch out", node, run, 2)


def _key_tap(build: Builder) -> None:
    """Lead pack volts through the key to the converter's enable alone; its feed stays joined."""
    run, key_run = build.runs.pack_to_converter, build.runs.key
    tap = Tap(build, "key input", build.tap_fuse(KEY_TAP, "key input"), 2 * key_run + run)
    _through_key(tap, key_run)
    tap.wire("enable wire", "key node to the converter's enable", KEY_NODE, CONVERTER_ENABLE, run, 2)


def _key_input(build: Builder) -> None:
    """Feed the controller's key input: by a DC relay at 12 V, or from the key at pack volts."""
    run, end = build.runs.contactor_to_controller, "controller key input"
    if build.job.wishes.meter != "none":
        build.splice("key input splice", end, "key input", "frame", leads=1)
    if build.key_at in AT_PACK:
        tap = Tap(build, "key input", _key_guard(build), run)
        tap.wire("key input wire", "key node to the controller's key input", "key node", end, run, 2)
        return
    tap = Tap(build, "key input", build.tap_fuse("key input", "key input"), 2 * run)
    build.relay("key input relay", "DC relay that feeds the controller's key input", "key input", "frame")
    tap.from_holder("key input feed", "tap fuse to the key input relay", "key input relay in", run, 1)
    tap.wire("key input wire", "relay to the controller's key input", "key input relay out", end, run, 2)


def _key_guard(build: Builder) -> str:
    """Name the fuse ahead of what switches the controller's key input."""
    return {PACK: "converter fuse", PACK_SLEEPING: f"{KEY_TAP} fuse"}.get(build.key_at, "key input fuse")


def _meter(build: Builder) -> None:
    """Feed the meter behind the key where pack volts are switched there, so that it rests when parked."""
    wishes, run = build.job.wishes, build.runs.meter
    build.place("meter", "meter", f"battery gauge ({wishes.meter})", "meter", "bar")
    if build.job.controller.key_input == "pack volts":
        guard = _key_guard(build)
        tap = Tap(build, "meter", guard, 2 * run)
        tap.wire("meter plus", "switched pack volts to the meter", "controller key input", "meter plus", run, 2)
    else:
        tap = Tap(build, "meter", build.tap_fuse("meter", "meter"), 2 * run)
        tap.from_holder("meter plus", "tap fuse to the meter", "meter plus", run, 1)
    tap.home("meter minus", "meter back to the minus post", "meter minus", run, 1)
    if wishes.meter == "volts and amps":
        _shunt_sense(build)


def _shunt_sense(build: Builder) -> None:
    """Bring the shunt's millivolts to the meter; the fuse at the shunt guards both wires against the pack."""
    build.link("drops in", "shunt", "meter")
    run = build.runs.meter
    fuse = build.tap_fuse("sense", "meter", at="shunt in")
    tap = Tap(build, "meter", fuse, 2 * run)
    tap.from_holder("sense plus", "shunt to meter, sense plus", "meter sense plus", run, 1)
    tap.wire("sense minus", "shunt to meter, sense minus", "shunt out", "meter sense minus", run, 1)
    build.lug("sense minus", "shunt", on="shunt")


def _pilot_lamp(build: Builder) -> None:
    """Hang the pilot lamp behind the contactor, on a fuse of its own: it burns while the controller has pack volts."""
    run = build.runs.meter
    build.place(PILOT, "pilot_lamp", "pilot lamp: the traction side is live", PILOT, "bar")
    tap = Tap(build, PILOT, build.tap_fuse("pilot lamp", PILOT, at="controller plus"), 2 * run)
    tap.from_holder("pilot lamp plus wire", "pilot lamp fuse to the pilot lamp", "pilot lamp plus", run, 1)
    tap.home("pilot lamp minus wire", "pilot lamp back to the minus post", "pilot lamp minus", run, 1)


def _charge_port(build: Builder) -> None:
    """Lead the charge port to its fuse and back to the minus post; the port takes both wires."""
    run = build.runs.charge_port
    build.place("charge port", "charge_port", "charge port with cap", "charging", "frame")
    if build.job.wishes.charger:
        build.link("plugs into", "charger", "charge port")
    tap = Tap(build, "charging", build.tap_fuse("charge", "charging"), 2 * run)
    plus = tap.from_holder("charge plus", "charge port to its fuse", "charge port plus", run, 0)
    minus = tap.home("charge minus", "charge port back to the minus post", "charge port minus", run, 0)
    for wire in (plus, minus):
        build.link("takes wire", "charge port", wire)


def lay_out_bus_sense(build: Builder) -> None:
    """Lead the volts on both sides of the contactor to a closer that compares them, each behind its own fuse."""
    run = build.runs.contactor_to_controller
    tap = Tap(build, BUS_SENSE, build.tap_fuse("bus sense", BUS_SENSE, at="controller plus"), 2 * run)
    tap.from_holder("bus sense plus", "bus sense fuse to the closer", "contactor closer sense plus", run, 1)
    tap.home("bus sense minus", "closer back to the minus post", "contactor closer sense minus", run, 1)
    pack = Tap(build, BUS_SENSE, build.tap_fuse("pack sense", BUS_SENSE), 2 * run)
    pack.from_holder("pack sense plus", "pack sense fuse to the closer", "contactor closer pack plus", run, 1)
