"""The traction circuit: pack, main fuse, breaks by hand, posts for the taps, contactor, controller, phase leads."""

from dataclasses import dataclass
from itertools import pairwise

from bom.loom.builder import Builder
from bom.loom.precharge import lay_out_precharge
from bom.loom.strings import lay_out_strings


@dataclass(frozen=True)
class Stop:
    """Something a heavy path runs through.

    stud      place whose stud the lugs go on; "" where the wire is crimped into it
    is_point  it is one point, a post, not something with two ends
    """

    name: str
    stud: str
    zone: str
    is_point: bool = False

    @property
    def ends(self) -> tuple[str, str]:
        """Name its two points; a post is one point."""
        return (self.name, self.name) if self.is_point else (f"{self.name} in", f"{self.name} out")


def lay_out_traction(build: Builder) -> None:
    """Place everything between pack and motor."""
    lay_out_strings(build)
    build.in_line("main fuse", "main_fuse", "main fuse", "traction", "under seat")
    build.place("main fuse holder", "fuse_holder", "main fuse holder", "traction", "under seat")
    build.link("takes fuse", "main fuse holder", "main fuse")
    stops = [*_hand_breaks(build), _post(build, "plus post")]
    if build.job.wishes.contactor:
        stops.append(_contactor(build))
    _plus_path(build, stops)
    _minus_path(build)
    if build.job.wishes.contactor and build.job.wishes.precharge:
        lay_out_precharge(build)
    _phase_leads(build)


def _hand_breaks(build: Builder) -> list[Stop]:
    """Place the pack plug and the isolator; the taps lie behind both, so that they kill the taps too."""
    wishes, stops = build.job.wishes, []
    if wishes.pack_plug:
        build.place("pack plug", "power_connector", "pack plug, mated pair", "traction", "under seat")
        stops.append(Stop("pack plug", "", "under seat"))
    if wishes.isolator != "none":
        build.in_line("isolator", "isolator", f"hand isolator ({wishes.isolator})", "traction", "frame")
        stops.append(Stop("isolator", "isolator", "frame"))
    return stops


def _post(build: Builder, name: str) -> Stop:
    build.place(name, "post", f"{name} where the taps join", "traction", "frame", ends=(name,))
    return Stop(name, name, "frame", is_point=True)


def _contactor(build: Builder) -> Stop:
    build.in_line("contactor", "contactor", "main contactor", "traction", "frame")
    build.link("behind", "main fuse", "contactor")
    build.clamp("contactor", "frame")
    return Stop("contactor", "contactor", "frame")


def _whole_path_m(build: Builder) -> float:
    runs = build.runs
    return runs.pack_to_fuse + runs.fuse_to_contactor + runs.contactor_to_controller + runs.controller_to_pack


def _piece(build: Builder, name: str, title: str, zone: str, ends: tuple[str, str], length_m: float) -> str:
    """Lay one piece of the traction path; every piece is of the pack lead's copper."""
    build.link("continues", "pack lead", name)
    return build.wire(
        name,
        title,
        "traction",
        zone,
        ends,
        length_m,
        guard="main fuse",
        part_of_m=_whole_path_m(build),
        together=build.margins.pair_wires,
    )


def _end(build: Builder, wire: str, stop: Stop) -> None:
    """Finish one end of a heavy wire: crimped into a plug, or lugged onto a stud."""
    if stop.stud:
        build.lug(wire, stop.name, on=stop.stud)
    else:
        build.link("takes wire", stop.name, wire)


def _plus_path(build: Builder, stops: list[Stop]) -> None:
    """Cut the plus run into wires between what it goes through, with a lug wherever there is a stud."""
    runs = build.runs
    _pack_lead(build)
    marks = [Stop("main fuse", "main fuse holder", "under seat"), *stops]
    for here, there in pairwise(marks):
        ends = (here.ends[1], there.ends[0])
        title = f"{here.name} to {there.name}"
        name = _piece(build, f"lead to {there.name}", title, there.zone, ends, runs.fuse_to_contactor / len(stops))
        _end(build, name, here)
        _end(build, name, there)
    last = marks[-1]
    ends = (last.ends[1], "controller plus")
    title = f"{last.name} to controller plus"
    name = _piece(build, "controller lead", title, "frame", ends, runs.contactor_to_controller)
    _end(build, name, last)
    build.lug(name, "controller")


def _pack_lead(build: Builder) -> None:
    """Lay the lead from the pack to the main fuse, which no fuse guards."""
    build.wire(
        "pack lead",
        "pack plus to main fuse",
        "traction",
        "under seat",
        ("pack plus", "main fuse in"),
        build.runs.pack_to_fuse,
        part_of_m=_whole_path_m(build),
        together=build.margins.pair_wires,
    )
    build.link("relieves", "main fuse", "pack lead")
    build.lug("pack lead", "pack")
    build.lug("pack lead", "fuse", on="main fuse holder")


def _minus_path(build: Builder) -> None:
    """Bring controller minus home through the post of the taps, the shunt and the pack plug."""
    wishes, run = build.job.wishes, build.runs.controller_to_pack
    stops = [_post(build, "minus post")]
    if wishes.meter == "volts and amps":
        build.in_line("shunt", "shunt", "shunt in the pack return", "traction", "frame")
        stops.append(Stop("shunt", "shunt", "frame"))
    if wishes.pack_plug:
        stops.append(Stop("pack plug", "", "under seat"))
    points = [("controller minus", None), *((stop.name, stop) for stop in stops), ("pack minus", None)]
    for (start, here), (end, there) in pairwise(points):
        ends = (_minus_end(start, here, 1), _minus_end(end, there, 0))
        zone = there.zone if there else "under seat"
        name = _piece(build, f"return to {end}", f"{start} to {end}", zone, ends, run / (len(points) - 1))
        for point, stop in ((start, here), (end, there)):
            if stop is None:
                build.lug(name, "controller" if point == "controller minus" else "pack")
            else:
                _end(build, name, stop)


def _minus_end(point: str, stop: Stop | None, side: int) -> str:
    if stop is None:
        return point
    return f"plug minus {('in', 'out')[side]}" if stop.name == "pack plug" else stop.ends[side]


def _phase_leads(build: Builder) -> None:
    """Run three leads to the motor's studs, or to its own tails in a covered joint."""
    run = build.runs.controller_to_motor
    build.wire(
        "phase leads",
        "three phase leads to the motor",
        "phase",
        "frame",
        ("controller phases", "motor"),
        run,
        part_of_m=run,
        together=3,
        count=3,
    )
    build.lug("phase leads", "controller", quantity=3)
    build.lug("phase leads", "motor", quantity=3)
    if build.job.motor.lead_area is not None:
        build.place("phase joint", "power_connector", "covered joint of leads and motor tails", "phase", "frame")
        build.link("takes wire", "phase joint", "phase leads")
        build.tail_lugs("motor tail lugs", "lugs on the motor's own tails", "phase", 3, end="motor")
