"""From a circuit's fuse to its loads: through the flasher, through the donor's switches, and back."""

from dataclasses import dataclass, replace

from bom.loom.builder import Builder
from bom.loom.diodes import diode_bridges, lay_out_diodes
from bom.loom.earth_side import Home, bridges_home, home_of, split, wires_home
from bom.loom.model import FAR_SIDE, Bridge
from bom.loom.relay_names import relay_of
from bom.loom.switch_relay import lay_out_switch_relay
from bom.loom.tails import lay_out_tails, shells_on_the_frame
from bom.read.job import Item, Load

# The donor's switches that carry a load's current, in the order current goes through them; alike ones lie side by side.
SWITCHES = ("start button", "light switch", "dip switch", "indicator switch", "horn button", "brake switch")
RUN_ZONE = {"front": "bar", "rear": "under seat", "dash": "bar"}
RAIL_MINUS = "12 V rail minus"
# A change-over switch has two ways out, each with a wire of its own.
SIDES = (" left", " right")
WAYS = {"dip switch": (" dip", " main"), "indicator switch": SIDES}


@dataclass(frozen=True)
class Branch:
    """Loads of one circuit that one set of switches feeds and that lie at the end of one run.

    home  their way home, where switches lie in it
    """

    circuit: str
    loads: tuple[Load, ...]
    stages: tuple[tuple[Item, ...], ...]
    flashes: bool
    home: Home | None = None

    @property
    def run(self) -> str:
        """Name the run that leads to the loads."""
        return self.loads[0].run

    @property
    def label(self) -> str:
        """Name the loads."""
        return " and ".join(load.name for load in self.loads)

    @property
    def telltales(self) -> list[Load]:
        """List the telltales that hang on both sides through diodes."""
        return [load for load in self.loads if load.has_diodes]

    @property
    def shells(self) -> int:
        """Count the lamps that bring a minus of their own."""
        return sum(load.bought for load in self.loads if not load.same_lamp_as and not load.is_between)

    def lights_of(self, point: str) -> int:
        """Count the lights fed at a point; left and right have half each, and share a telltale of both."""
        if not point.endswith(SIDES):
            return sum(load.bought for load in self.loads)
        return sum(load.bought if load.is_shared else load.bought // 2 for load in self.loads)


@dataclass(frozen=True)
class Piece:
    """One wire of a branch before it is laid."""

    name: str
    start: str
    end: str
    length_m: float


def lay_out_branches(build: Builder, circuit: str, fuse: str, loads: list[Load], *, returns: bool) -> None:
    """Lay the wires of one circuit: every branch out, and back to the minus rail where lamps return by wire.

    The drop allowed is shared over the longest way there and back, with a tail at every stage.
    """
    laid = []
    for branch in _branches(build, circuit, loads, returns=returns):
        out, back = _way_out(build, branch, f"{fuse} out"), _way_back(build, branch, returns=returns)
        _splice_lamps(build, branch, out[-1], back[0] if back else [])
        _bridge(build, branch, out[-1], returns=returns)
        laid.append((branch, [*out, *back]))
    whole_m = max(sum(_longest_m(level) + build.margin_m("tail_m") for level in levels) for _, levels in laid)
    served = _served(laid)
    for branch, levels in laid:
        for piece in (piece for level in levels for piece in level):
            if piece.name in build.places:
                continue  # two branches share the wire to their switch
            build.wire(
                piece.name,
                f"{piece.start} to {piece.end}",
                circuit,
                RUN_ZONE[branch.run],
                (piece.start, piece.end),
                piece.length_m,
                guard=fuse,
                part_of_m=whole_m,
                together=build.margins.bundle_wires,
                item=_own_loom(build, piece),
                loads=served[piece.name],
            )
            build.finish(piece.name)
        for item in (item for stage in branch.stages for item in stage if item.relay):
            if relay_of(item) not in build.places:
                run_m = _run_m(build, "front" if _at_bar(item) else branch.run)
                lay_out_switch_relay(build, item, fuse, run_m, wired=returns)
        for load in branch.telltales:
            lay_out_diodes(build, circuit, RUN_ZONE[branch.run], load, fuse, whole_m)


def _own_loom(build: Builder, piece: Piece) -> Item | None:
    """Give the donor's loom where it may have this wire: one whose lamps returned by the frame has none back."""
    back = piece.end == RAIL_MINUS
    return None if back and build.job.donor.lamp_return == "frame" else build.item("loom")


def _bridge(build: Builder, branch: Branch, feeds: list[Piece], *, returns: bool) -> None:
    """Say where current runs through the flasher, the switches and the lamps of a branch."""
    known = {bridge.name for bridge in build.bridges}
    if branch.flashes and "flasher" not in known:
        build.bridges.append(Bridge("flasher", "contact", "flasher in", "flasher out", "flasher", "lit", ()))
    for item in (item for stage in branch.stages for item in stage if not item.relay):
        point = _point(branch, item)
        for way in WAYS.get(item.kind, ("",)):
            bridge = Bridge(
                f"{point}{way}", "contact", f"{point} in", f"{point} out{way}", f"switch {item.name}", f"lit{way}", ()
            )
            if bridge.name not in known:
                build.bridges.append(replace(bridge, loads=tuple(item.feeds)))
    build.bridges += [bridge for bridge in bridges_home(branch.home) if bridge.name not in known] if branch.home else []
    ends = {piece.end for piece in feeds}
    for load in branch.loads:
        left, right = (f"{branch.label} plus{side}" for side in SIDES)
        if load.is_between and {left, right} <= ends:
            build.bridges.append(Bridge(load.name, "load", left, right, "", "lit", (load.name,)))
            continue
        # A light in another load's lamp returns with that.
        back = f"{branch.label} minus" if branch.shells else _lamp_minus(build, load)
        back = back if returns or branch.home else "frame"
        apart = _sides_home(build, branch) if returns else ()
        if load.has_diodes:
            sides = {way: f"{branch.label} plus{way}" for way in SIDES}
            build.bridges += diode_bridges(load, sides, back)
            continue
        for end in dict.fromkeys(piece.end for piece in feeds):
            way = end.removeprefix(f"{branch.label} plus")
            gate = FAR_SIDE if way == SIDES[1] and _has_telltale_between(build) else f"lit{way}"
            for home in branch.home.ways if branch.home else ("",):
                lit, name = f"lit{home}" if home else gate, f"{load.name}{way}{home}"
                own = way if way in apart else ""
                build.bridges.append(Bridge(name, "load", end, f"{back}{own}{home}", "", lit, (load.name,)))


def _has_telltale_between(build: Builder) -> bool:
    """Tell whether a telltale comes home through the lamps of the far side, which then are part of the circuit."""
    return any(load.is_between for load in build.job.loads)


def _lamp_minus(build: Builder, load: Load) -> str:
    """Find where the lamp that holds another load's light returns."""
    for bridge in build.bridges:
        if bridge.kind == "load" and load.same_lamp_as in bridge.loads:
            return bridge.end
    return RAIL_MINUS


def _served(laid: list[tuple[Branch, list[list[Piece]]]]) -> dict[str, tuple[str, ...]]:
    """Name the loads behind each wire; one that branches share serves those of all."""
    served: dict[str, tuple[str, ...]] = {}
    for branch, levels in laid:
        for piece in (piece for level in levels for piece in level):
            served[piece.name] = (*served.get(piece.name, ()), *(load.name for load in branch.loads))
    return served


def _longest_m(level: list[Piece]) -> float:
    return max(piece.length_m for piece in level)


def _way_back(build: Builder, branch: Branch, *, returns: bool) -> list[list[Piece]]:
    """Bring the lamps' minus home, through switches where they lie there.

    A light in another load's lamp returns with that; one without switches, on the frame, needs no wire.
    """
    if branch.shells and branch.home:
        return [[Piece(*piece) for piece in level] for level in wires_home(branch.home)]
    if not branch.shells or not returns:
        return []
    name, minus, run_m = f"wire from the {branch.label}", f"{branch.label} minus", _run_m(build, branch.run)
    sides = _sides_home(build, branch) or ("",)
    return [[Piece(f"{name}{side}", f"{minus}{side}", RAIL_MINUS, run_m) for side in sides]]


def _sides_home(build: Builder, branch: Branch) -> tuple[str, ...]:
    """Give left and right where each housing comes home by a wire of its own, so that a lost one darkens one lamp only.

    None where a light of both sides, or one of another circuit, hangs on a return that they share.
    """
    at_sides = bool(branch.stages) and branch.stages[-1][0].kind == "indicator switch" and branch.home is None
    names = {load.name for load in branch.loads}
    joined = any(load.is_shared or load.same_lamp_as for load in branch.loads)
    joined = joined or any(load.same_lamp_as in names for load in build.job.loads)
    return SIDES if at_sides and branch.shells and not joined else ()


def _splice_lamps(build: Builder, branch: Branch, feeds: list[Piece], back: list[Piece]) -> None:
    """Where one wire serves several lamps, their own leads meet it in a splice; so do diodes and tails."""
    zone = RUN_ZONE[branch.run]
    for point in (piece.end for piece in feeds):
        count = branch.lights_of(point)
        if count > 1 or branch.telltales:
            build.splice(f"{point} splice", point, branch.circuit, zone, leads=count)
    tailed = shells_on_the_frame(build.job, branch.loads)
    own = branch.shells - sum(load.bought for load in tailed)
    shared = len(back) if branch.home is None else 1  # two ways of a dip switch lead home from one and the same lamp
    points = [piece.start for piece in back] if branch.shells > shared or tailed else []
    for point in points:
        build.splice(f"{point} splice", point, branch.circuit, zone, leads=own // shared)
    lay_out_tails(build, branch.circuit, zone, tailed, [f"{point} splice" for point in points])


def _branches(build: Builder, circuit: str, loads: list[Load], *, returns: bool) -> list[Branch]:
    """Group loads that share their switches, their flasher and their run."""
    grouped: dict[tuple[tuple[str, ...], bool, str], list[Load]] = {}
    for load in loads:
        switches = tuple(item.name for stage in _stages(build, load) for item in stage)
        grouped.setdefault((switches, "indicate" in load.on, load.run), []).append(load)
    branches = []
    for (_, flashes, run), group in grouped.items():
        live, earth = split(_stages(build, group[0]))
        branch = Branch(circuit, tuple(group), live, flashes)
        home = home_of(build, circuit, branch.label, run, earth, wired=returns) if earth else None
        branches.append(replace(branch, home=home))
    return branches


def _stages(build: Builder, load: Load) -> tuple[tuple[Item, ...], ...]:
    """Give the switches that feed a load, one stage for each kind."""
    feeding = [item for item in build.job.donor.items if load.name in item.feeds]
    kinds = [kind for kind in SWITCHES if any(item.kind == kind for item in feeding)]
    return tuple(tuple(item for item in feeding if item.kind == kind) for kind in kinds)


def _way_out(build: Builder, branch: Branch, start: str) -> list[list[Piece]]:
    """Lead from the fuse through the flasher and each stage of switches to the loads; wires of a level are alike."""
    levels: list[list[Piece]] = []
    froms, at_bar = [start], False
    ways: tuple[str, ...] = ("",)
    if branch.flashes:
        levels.append([Piece(f"{branch.circuit} to the flasher", start, "flasher in", _run_m(build, "front"))])
        froms, at_bar = ["flasher out"], True
    for stage in branch.stages:
        points = [_point(branch, item) for item in stage]
        levels.append(
            [
                Piece(
                    f"{_from(here, froms)}{branch.circuit} to the {relay_of(item) if item.relay else item.name}",
                    here,
                    f"{point} in",
                    _to_switch_m(build, branch, item, at_bar=at_bar),
                )
                for here in froms
                for item, point in zip(stage, points, strict=True)
            ]
        )
        froms, at_bar = [f"{point} out" for point in points], any(_at_bar(item) and not item.relay for item in stage)
        ways = WAYS.get(stage[0].kind, ("",))
    length_m = _last_m(build, branch) if at_bar else _run_m(build, branch.run)
    levels.append(
        [
            Piece(
                f"{_from(here, froms)}wire to the {branch.label}{way}",
                f"{here}{way}",
                f"{branch.label} plus{way}",
                length_m,
            )
            for here in froms
            for way in ways
        ]
    )
    return levels


def _point(branch: Branch, item: Item) -> str:
    """Name what the loads' current goes through: a switch, or the relay that it pulls in."""
    return relay_of(item) if item.relay else f"{item.name} ({branch.circuit})"


def _at_bar(item: Item) -> bool:
    """Tell whether a switch sits at the handlebar; a brake switch does where the job says so."""
    return item.kind != "brake switch" or item.at == "bar"


def _to_switch_m(build: Builder, branch: Branch, item: Item, *, at_bar: bool) -> float:
    """Give the length to a switch, from another thing at the bar or from the fuse box."""
    if item.relay:
        return build.margin_m("bar_link_m") if not at_bar else _run_m(build, "front")
    if not _at_bar(item):
        return _run_m(build, branch.run)
    return build.margin_m("bar_link_m") if at_bar else _run_m(build, "front")


def _from(here: str, froms: list[str]) -> str:
    """Tell wires side by side apart by where they start."""
    return f"{here}, " if len(froms) > 1 else ""


def _last_m(build: Builder, branch: Branch) -> float:
    """Give the length from a switch at the bar to the loads."""
    if RUN_ZONE[branch.run] == "bar":
        return build.margin_m("bar_link_m")
    return _run_m(build, "front") + _run_m(build, branch.run)


def _run_m(build: Builder, run: str) -> float:
    length_m: float = getattr(build.runs, run)
    return length_m
