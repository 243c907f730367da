"""Reading a job file: its values, the line each stands on, and every fault at once."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from pydantic import BaseModel, ValidationError

from bom.errors import Fault, InputError
from bom.physics.pack import CHEMISTRIES
from bom.read.faults import faults_of
from bom.read.job import JobFile
from bom.read.job_keys import shown
from bom.read.locate import Lines, toml_fault
from bom.read.quantity import dimension_of


@dataclass(frozen=True)
class Default:
    """A value the job does not give, as a person would write it."""

    key: str
    value: str
    meaning: str


@dataclass(frozen=True)
class LoadedJob:
    """A job as read."""

    path: Path
    job: JobFile
    lines: Lines
    defaults: tuple[Default, ...]

    @property
    def name(self) -> str:
        """Name of the job, from its file."""
        return self.path.stem

    def margin_lines(self) -> Mapping[str, int]:
        """Give the line of each margin the job sets."""
        return {name: self.lines.line(("margins", name)) for name in self.job.margins}


def load_job(path: Path) -> LoadedJob:
    """Read a job file.

    Raises InputError with every fault of the file.
    """
    name = str(path)
    if not path.is_file():
        raise InputError([Fault(name, 0, "", "", 'No such file. "donorbill new NAME" writes a starter job.')])
    try:
        text = path.read_text(encoding="utf-8-sig")
        data = tomllib.loads(text)
    except UnicodeDecodeError as error:
        raise InputError([Fault(name, 0, "", "", "Save the file as UTF-8 text.")]) from error
    except tomllib.TOMLDecodeError as error:
        raise InputError([toml_fault(name, error)]) from error
    lines = Lines.of(text)
    try:
        job = JobFile.model_validate(data)
    except ValidationError as error:
        raise InputError(faults_of(error, file=name, lines=lines, model=JobFile)) from error
    faults = _cross_faults(name, job, lines)
    if faults:
        raise InputError(faults)
    return LoadedJob(path, job, lines, tuple(_defaults(job, "")))


def _cross_faults(file: str, job: JobFile, lines: Lines) -> list[Fault]:
    """Find what is wrong between tables: names used twice or not at all."""
    faults = []
    loads = [load.name for load in job.loads]
    for table, names in (("loads", loads), ("donor.items", [item.name for item in job.donor.items])):
        path = tuple(table.split("."))
        for index, name in enumerate(names):
            if name in names[:index]:
                faults.append(
                    Fault(
                        file,
                        lines.line((*path, index, "name")),
                        f"{table}[{index + 1}].name",
                        name,
                        "Give each its own name.",
                    )
                )
    for index, item in enumerate(job.donor.items):
        for fed in item.feeds:
            if fed not in loads:
                faults.append(
                    Fault(
                        file,
                        lines.line(("donor", "items", index, "feeds")),
                        f"donor.items[{index + 1}].feeds",
                        fed,
                        f"Name loads of the load list: {', '.join(loads)}.",
                    )
                )
    for index, load in enumerate(job.loads):
        if load.same_lamp_as and load.same_lamp_as not in loads:
            faults.append(
                Fault(
                    file,
                    lines.line(("loads", index, "same_lamp_as")),
                    f"loads[{index + 1}].same_lamp_as",
                    load.same_lamp_as,
                    f"Name a load of the load list: {', '.join(loads)}.",
                )
            )
    full = job.pack.full_charge or (job.pack.series or 0) * CHEMISTRIES[job.pack.chemistry].full_v
    cut = job.pack.bms.low_cut
    if cut is not None and cut >= full:
        accepted = f"Write a low cut below the full charge of this pack, {full:g} V; or correct its cells."
        faults.append(Fault(file, lines.line(("pack", "bms", "low_cut")), "pack.bms.low_cut", f"{cut:g} V", accepted))
    return faults


def _defaults(section: BaseModel, prefix: str) -> Iterator[Default]:
    """Walk the job and list every value it does not give, with what it means."""
    for name, field in type(section).model_fields.items():
        value = getattr(section, name)
        key = f"{prefix}{name}"
        if isinstance(value, BaseModel):
            yield from _defaults(value, f"{key}.")
        elif isinstance(value, list) and value and isinstance(value[0], BaseModel):
            continue
        elif name not in section.model_fields_set:
            yield Default(key, shown(value, dimension_of(field.annotation, field.metadata)), field.description or "")
