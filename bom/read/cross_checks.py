"""What is wrong between the tables of a job: names used twice, names that lead nowhere, volts that cannot be."""

from dataclasses import dataclass, field

from bom.errors import Fault
from bom.physics.pack import CHEMISTRIES
from bom.read.job import JobFile
from bom.read.locate import Lines


@dataclass
class _Finder:
    """Collects faults at paths of one file; lists count from 0 in a path and from 1 in print."""

    file: str
    lines: Lines
    faults: list[Fault] = field(default_factory=list)

    def add(self, path: tuple[str | int, ...], found: str, accepted: str) -> None:
        place = ""
        for step in path:
            place += f"[{step + 1}]" if isinstance(step, int) else f".{step}" if place else step
        self.faults.append(Fault(self.file, self.lines.line(path), place, found, accepted))


def cross_faults(file: str, job: JobFile, lines: Lines) -> list[Fault]:
    """Find every fault between tables."""
    finder = _Finder(file, lines)
    loads, items = [load.name for load in job.loads], [item.name for item in job.donor.items]
    _names(finder, ("loads",), loads)
    _names(finder, ("donor", "items"), items)
    known = f"Name a load of the load list: {', '.join(loads)}." if loads else "The load list is empty."
    for index, item in enumerate(job.donor.items):
        for fed in item.feeds:
            if fed not in loads:
                finder.add(("donor", "items", index, "feeds"), fed, known)
    for index, load in enumerate(job.loads):
        if load.same_lamp_as and load.same_lamp_as not in loads:
            finder.add(("loads", index, "same_lamp_as"), load.same_lamp_as, known)
    _kinds(finder, job)
    _volts(finder, job)
    return finder.faults


def _names(finder: _Finder, table: tuple[str, ...], names: list[str]) -> None:
    for index, name in enumerate(names):
        path: tuple[str | int, ...] = (*table, index, "name")
        if name in names[:index]:
            finder.add(path, name, "Give each its own name.")
        if not name.strip() or " / " in name or not name.isprintable():
            finder.add(path, name, 'Write a name on one line, without " / ".')


def _kinds(finder: _Finder, job: JobFile) -> None:
    """A loom has one place for each of these; a second one would not be judged."""
    seen: dict[str, str] = {}
    for index, item in enumerate(job.donor.items):
        if item.kind not in ("key switch", "kill switch", "flasher", "fuse box", "loom"):
            continue
        if item.kind in seen:
            accepted = f"List one {item.kind}; {seen[item.kind]} is one already."
            finder.add(("donor", "items", index, "kind"), item.kind, accepted)
        seen.setdefault(item.kind, item.name)


def _volts(finder: _Finder, job: JobFile) -> None:
    cell = CHEMISTRIES[job.pack.chemistry]
    full = job.pack.full_charge or (job.pack.series or 0) * cell.full_v
    cut = job.pack.bms.low_cut
    if cut is not None and cut >= full:
        accepted = f"Write a low cut below the full charge of this pack, {full:g} V; or correct its cells."
        finder.add(("pack", "bms", "low_cut"), f"{cut:g} V", accepted)
    if job.pack.series and job.pack.full_charge:
        made = job.pack.series * cell.full_v
        if not 0.85 * made <= job.pack.full_charge <= 1.05 * made:
            accepted = (
                f"{job.pack.series} {job.pack.chemistry} cells make {made:g} V when full; correct one of the two."
            )
            finder.add(("pack", "full_charge"), f"{job.pack.full_charge:g} V", accepted)
    control = job.controller
    if control.battery_peak < control.battery_continuous:
        accepted = f"Write a peak of at least the continuous {control.battery_continuous:g} A."
        finder.add(("controller", "battery_peak"), f"{control.battery_peak:g} A", accepted)
