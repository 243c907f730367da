"""From a circuit's fuse to its loads: through the flasher, through the donor's switches, and back."""

from dataclasses import dataclass

from bom.loom.builder import Builder
from bom.read.job import Item, Load

# The donor's switches that carry a load's current, in the order current goes through them; alike ones lie side by side.
SWITCHES = ("start button", "light switch", "dip switch", "indicator switch", "horn button", "brake switch")
RUN_ZONE = {"front": "bar", "rear": "under seat", "dash": "bar"}
# A change-over switch has two ways out, each with a wire of its own.
WAYS = {"dip switch": (" dip", " main"), "indicator switch": (" left", " right")}


@dataclass(frozen=True)
class Branch:
    """Loads of one circuit that one set of switches feeds and that lie at the end of one run."""

    circuit: str
    loads: tuple[Load, ...]
    stages: tuple[tuple[Item, ...], ...]
    flashes: bool

    @property
    def run(self) -> str:
        """Name the run that leads to the loads."""
        return self.loads[0].run

    @property
    def label(self) -> str:
        """Name the loads."""
        return " and ".join(load.name for load in self.loads)


@dataclass(frozen=True)
class Piece:
    """One wire of a branch before it is laid."""

    name: str
    start: str
    end: str
    length_m: float


def lay_out_branches(build: Builder, circuit: str, fuse: str, loads: list[Load], *, returns: bool) -> None:
    """Lay the wires of one circuit: every branch out, and back to the minus rail where lamps return by wire."""
    for branch in _branches(build, circuit, loads):
        levels = _way_out(build, branch, f"{fuse} out")
        if returns:
            ends = (f"{branch.label} minus", "12 V rail minus")
            levels.append([Piece(f"{branch.label} return", *ends, _run_m(build, branch.run))])
        whole_m = sum(level[0].length_m for level in levels)
        for piece in (piece for level in levels for piece in level):
            if any(wire.name == piece.name for wire in build.wires):
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
                item=build.item("loom"),
                load=branch.loads[0].name,
            )
            build.finish(piece.name)


def _branches(build: Builder, circuit: str, loads: list[Load]) -> list[Branch]:
    """Group loads that share their switches, their flasher and their run."""
    grouped: dict[tuple[tuple[str, ...], bool, str], list[Load]] = {}
    for load in loads:
        switches = tuple(item.name for stage in _stages(build, load) for item in stage)
        grouped.setdefault((switches, "indicate" in load.on, load.run), []).append(load)
    return [
        Branch(circuit, tuple(group), _stages(build, group[0]), flashes) for (_, flashes, _), group in grouped.items()
    ]


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
        bar = stage[0].kind != "brake switch"
        length_m = build.margins.bar_link_m if bar and at_bar else _run_m(build, "front" if bar else branch.run)
        points = [f"{item.name} ({branch.circuit})" for item in stage]
        levels.append(
            [
                Piece(f"{_from(here, froms)}{branch.circuit} to the {item.name}", here, f"{point} in", length_m)
                for here in froms
                for item, point in zip(stage, points, strict=True)
            ]
        )
        froms, at_bar, ways = [f"{point} out" for point in points], bar, WAYS.get(stage[0].kind, ("",))
    length_m = _last_m(build, branch) if at_bar else _run_m(build, branch.run)
    levels.append(
        [
            Piece(
                f"{_from(here, froms)}{branch.label}{way} feed", f"{here}{way}", f"{branch.label} plus{way}", length_m
            )
            for here in froms
            for way in ways
        ]
    )
    return levels


def _from(here: str, froms: list[str]) -> str:
    """Tell wires side by side apart by where they start."""
    return f"{here}, " if len(froms) > 1 else ""


def _last_m(build: Builder, branch: Branch) -> float:
    """Give the length from a switch at the bar to the loads."""
    if RUN_ZONE[branch.run] == "bar":
        return build.margins.bar_link_m
    return _run_m(build, "front") + _run_m(build, branch.run)


def _run_m(build: Builder, run: str) -> float:
    length_m: float = getattr(build.job.runs, run)
    return length_m
