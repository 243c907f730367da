"""Switches in the return of their loads: from a lamp's minus through them, home to the rail or onto the frame.

On a donor whose lamps return through the frame such a switch joins its lead to its own body, and so to the frame. Where
lamps return by wire it has a second lead, which becomes the return.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from bom.loom.builder import Builder
from bom.loom.model import Bridge
from bom.read.job import Item

Stage = tuple[Item, ...]
# Of switches that lie one behind the other the change-over lies next to the lamps: its two ways are theirs.
CHANGES_OVER = {"dip switch": (" dip", " main")}


@dataclass(frozen=True)
class Home:
    """The way home of one branch.

    circuit  its circuit
    label    its loads
    stages   switches one behind the other, nearest to the loads first; alike ones side by side
    wired    it comes home by wire, else through the frame
    load_m, link_m, rail_m  from the loads to the first switch, between switches, and home
    """

    circuit: str
    label: str
    stages: tuple[Stage, ...]
    wired: bool
    load_m: float
    link_m: float
    rail_m: float

    def point(self, item: Item) -> str:
        """Name a switch where this circuit goes through it."""
        return f"{item.name} ({self.circuit})"

    @property
    def ways(self) -> tuple[str, ...]:
        """Give the ways into the first switch: two of a change-over, else one."""
        return CHANGES_OVER.get(self.stages[0][0].kind, ("",))


def split(stages: Sequence[Stage]) -> tuple[tuple[Stage, ...], tuple[Stage, ...]]:
    """Part the stages into those before the loads, and those behind them, nearest first; a relay stands before them."""
    earth = [stage for stage in stages if stage[0].side == "earth" and not stage[0].relay]
    return tuple(stage for stage in stages if stage not in earth), tuple(reversed(earth))


def wires_home(home: Home) -> Iterator[list[tuple[str, str, str, float]]]:
    """Give the wires of each level as (name, start, end, length); wires of a level are alike."""
    froms = [(f"{home.label} minus{way}", way, f"wire from the {home.label}{way}") for way in home.ways]
    length_m = home.load_m
    for stage in home.stages:
        many = len(stage) > 1
        yield [
            (f"{name} to the {item.name}" if many else name, start, f"{home.point(item)} in{way}", length_m)
            for start, way, name in froms
            for item in stage
        ]
        froms = [(f"{home.point(item)} out", "", f"{home.circuit} from the {item.name}") for item in stage]
        length_m = home.link_m
    if home.wired:
        yield [(name, start, "12 V rail minus", home.rail_m) for start, _, name in froms]


def bridges_home(home: Home) -> Iterator[Bridge]:
    """Give the way through each switch; the last one's body is the frame where nothing leads home by wire."""
    for number, stage in enumerate(home.stages):
        last = number == len(home.stages) - 1
        for item in stage:
            point = home.point(item)
            end = "frame" if last and not home.wired else f"{point} out"
            for way in home.ways if number == 0 else ("",):
                gate, part, fed = f"lit{way}", f"switch {item.name}", tuple(item.feeds)
                yield Bridge(f"{point}{way}", "contact", f"{point} in{way}", end, part, gate, fed)


def home_of(build: Builder, circuit: str, label: str, run: str, stages: tuple[Stage, ...], *, wired: bool) -> Home:
    """Measure the way home of a branch: along its run, and past the bar where the switch sits there."""
    link_m, front_m = build.margin_m("bar_link_m"), build.runs.front
    run_m = getattr(build.runs, run)
    at_bar = [item.kind != "brake switch" or item.at == "bar" for stage in stages for item in stage]
    to_bar_m = link_m if run != "rear" else front_m + run_m
    load_m = to_bar_m if at_bar[0] else run_m
    return Home(circuit, label, stages, wired, load_m, link_m, front_m if at_bar[-1] else run_m)
