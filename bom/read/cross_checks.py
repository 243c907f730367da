"""What is wrong between the tables of a job: names used twice, names that lead nowhere, volts that cannot be."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field

from bom.errors import Fault
from bom.physics.pack import CHEMISTRIES
from bom.read.job import MOST_PACK_V, Controller, Pack
from bom.read.locate import Lines
from bom.read.side_faults import side_faults


@dataclass
class Finder:
    """Collects faults at paths of one file."""

    file: str
    lines: Lines
    faults: list[Fault] = field(default_factory=list)

    def add(self, path: tuple[str | int, ...], found: str, accepted: str) -> None:
        """Add what was found at a path."""
        self.faults.append(Fault(self.file, self.lines.line(path), self.lines.place(path), found, accepted))


def name_faults(file: str, data: Mapping[str, object], lines: Lines) -> list[Fault]:
    """Find names used twice and names that lead nowhere, in the file as it stands: other faults do not hide these."""
    finder = Finder(file, lines)
    loads, items = _tables(data.get("loads")), _tables(_table(data.get("donor")).get("items"))
    load_names = [name for load in loads if isinstance(name := load.get("name"), str)]
    _names(finder, ("loads",), loads)
    _names(finder, ("donor", "items"), items)
    _names(finder, ("states",), _tables(data.get("states")))
    known = f"Name a load of the load list: {', '.join(load_names)}." if load_names else "The load list is empty."
    if len(load_names) == len(loads):  # else any name may be that of a load whose own could not be read
        _feeds(finder, items, load_names, known)
        _shared_lamps(finder, loads, known)
    _telltales(finder, loads, items)
    side_faults(finder.add, loads, items)
    _kinds(finder, items)
    return finder.faults


def pack_faults(file: str, pack: Pack, lines: Lines) -> list[Fault]:
    """Find volts and cells of a pack that cannot be together."""
    finder = Finder(file, lines)
    _volts(finder, pack)
    _cells(finder, pack)
    return finder.faults


def controller_faults(file: str, controller: Controller, lines: Lines) -> list[Fault]:
    """Find limits of a controller that cannot be together."""
    finder = Finder(file, lines)
    if controller.battery_peak < controller.battery_continuous:
        accepted = f"Write a peak of at least the continuous {controller.battery_continuous:g} A."
        finder.add(("controller", "battery_peak"), f"{controller.battery_peak:g} A", accepted)
    continuous = controller.phase_continuous
    if continuous is not None and controller.phase_peak < continuous:
        accepted = f"Write a peak of at least the continuous {continuous:g} A."
        finder.add(("controller", "phase_peak"), f"{controller.phase_peak:g} A", accepted)
    least, most = controller.supply_min, controller.supply_max
    if least is not None and most is not None and most <= least:
        finder.add(("controller", "supply_max"), f"{most:g} V", f"Write more than the lowest supply, {least:g} V.")
    return finder.faults


def _table(value: object) -> Mapping[str, object]:
    return value if isinstance(value, dict) else {}


def _tables(value: object) -> list[Mapping[str, object]]:
    return [_table(entry) for entry in value] if isinstance(value, list) else []


def _names(finder: Finder, table: tuple[str, ...], entries: list[Mapping[str, object]]) -> None:
    seen: dict[str, int] = {}
    for index, entry in enumerate(entries):
        name = entry.get("name")
        if not isinstance(name, str):
            continue  # the schema says what is missing or wrong
        path: tuple[str | int, ...] = (*table, index, "name")
        if name in seen:
            finder.add(path, name, f"Give each its own name; line {seen[name]} has this one.")
        if not name.strip() or " / " in name or not name.isprintable():
            finder.add(path, name, 'Write a name on one line, without " / ".')
        seen.setdefault(name, finder.lines.line(path))


def _feeds(finder: Finder, items: list[Mapping[str, object]], load_names: list[str], known: str) -> None:
    for index, item in enumerate(items):
        feeds = item.get("feeds", [])
        named = Counter(fed for fed in feeds if isinstance(fed, str)) if isinstance(feeds, list) else Counter[str]()
        for fed, times in named.items():
            if fed not in load_names:
                finder.add(("donor", "items", index, "feeds"), fed, known)
            elif times > 1:
                finder.add(("donor", "items", index, "feeds"), fed, "Name each load once.")


def _shared_lamps(finder: Finder, loads: list[Mapping[str, object]], known: str) -> None:
    """A lamp shared with itself, or with a load that only shares, would be bought by nobody."""
    names = [load.get("name") for load in loads]
    sharing = [load.get("name") for load in loads if load.get("same_lamp_as")]
    for index, load in enumerate(loads):
        other = load.get("same_lamp_as")
        if isinstance(other, str) and other not in names:
            finder.add(("loads", index, "same_lamp_as"), other, known)
        elif other and (other == load.get("name") or other in sharing):
            accepted = "Name the load that has the lamp itself, another than this one and without same_lamp_as."
            finder.add(("loads", index, "same_lamp_as"), str(other), accepted)


def _telltales(finder: Finder, loads: list[Mapping[str, object]], items: list[Mapping[str, object]]) -> None:
    """A telltale of both sides lies behind the indicators' own switch and fuse; else it has no sides."""
    switches = [item.get("feeds") for item in items if item.get("kind") == "indicator switch"]
    fed = [name for feeds in switches if isinstance(feeds, list) for name in feeds]
    shared = [load.get("telltale") in ("between the sides", "through two diodes") for load in loads]
    circuits = {
        load.get("circuit")
        for load, of_both in zip(loads, shared, strict=True)
        if load.get("name") in fed and load.get("circuit") and not of_both
    }
    for index, load in enumerate(loads):
        path: tuple[str | int, ...] = ("loads", index, "telltale")
        said = str(load.get("telltale"))
        if shared[index] and load.get("name") not in fed:
            accepted = "Name it in the feeds of an indicator switch: it hangs on that switch's two sides."
            finder.add(path, said, accepted)
        elif shared[index] and load.get("circuit") not in circuits:
            named = ", ".join(sorted(map(str, circuits))) or "give them one first"
            finder.add(path, said, f"Write the circuit of the indicators it hangs on: {named}.")


def _kinds(finder: Finder, items: list[Mapping[str, object]]) -> None:
    """A loom has one place for each of these; a second one would not be judged."""
    seen: dict[str, str] = {}
    for index, item in enumerate(items):
        kind = str(item.get("kind"))
        if kind not in ("key switch", "kill switch", "flasher", "fuse box", "loom"):
            continue
        if kind in seen:
            finder.add(("donor", "items", index, "kind"), kind, f"List one {kind}; {seen[kind]} is one already.")
        seen.setdefault(kind, str(item.get("name")))


def _volts(finder: Finder, pack: Pack) -> None:
    cell = CHEMISTRIES[pack.chemistry]
    full = pack.full_charge or (pack.series or 0) * cell.full_v
    cut = pack.bms.low_cut
    if cut is not None and cut >= full:
        accepted = f"Write a low cut below the full charge of this pack, {full:g} V; or correct its cells."
        finder.add(("pack", "bms", "low_cut"), f"{cut:g} V", accepted)
    if pack.series and pack.full_charge:
        made = pack.series * cell.full_v
        if not 0.85 * made <= pack.full_charge <= 1.05 * made:
            accepted = f"{pack.series} {pack.chemistry} cells make {made:g} V when full; correct one of the two."
            finder.add(("pack", "full_charge"), f"{pack.full_charge:g} V", accepted)
    if full > MOST_PACK_V:
        most = int(MOST_PACK_V / cell.full_v)
        accepted = f"They make {full:g} V when full; packs up to {MOST_PACK_V:g} V are judged: write at most {most}."
        finder.add(("pack", "series"), f"{pack.series}", accepted)


def _cells(finder: Finder, pack: Pack) -> None:
    """Find cells too large or too small for the formulas of bom.physics.pack."""
    series = pack.series or round((pack.full_charge or 0) / CHEMISTRIES[pack.chemistry].full_v)
    if series < 1:
        accepted = f"Write at least one cell's full charge, {CHEMISTRIES[pack.chemistry].full_v:g} V."
        finder.add(("pack", "full_charge"), f"{pack.full_charge:g} V", accepted)
    if pack.capacity is not None and not 0.5 <= pack.capacity / pack.parallel <= 400:
        each = f"{pack.capacity:g} Ah over {pack.parallel} cells side by side"
        accepted = f"{each} makes a cell of {pack.capacity / pack.parallel:.3g} Ah; a cell has 0.5 to 400 Ah."
        finder.add(("pack", "capacity"), f"{pack.capacity:g} Ah", accepted)
    if pack.cell_resistance is not None and pack.pack_resistance is None:
        made_ohm = series * pack.cell_resistance / pack.parallel
        if series >= 1 and made_ohm < 1e-4:
            accepted = f"They make a pack of {made_ohm * 1000:.2g} mΩ; the least is 0.1 mΩ. Measure a cell again."
            finder.add(("pack", "cell_resistance"), f"{pack.cell_resistance * 1000:g} mΩ", accepted)
