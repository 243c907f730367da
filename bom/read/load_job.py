"""Reading a job file: its values, the line each stands on, and every fault at once."""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from pydantic import BaseModel, ValidationError

from bom.errors import Fault, InputError
from bom.read.cross_checks import name_faults, volt_faults
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
        raise InputError([toml_fault(name, error, text)]) from error
    lines = Lines.of(text)
    faults = name_faults(name, data, lines)
    try:
        job = JobFile.model_validate(data)
    except ValidationError as error:
        raise InputError([*faults, *faults_of(error, file=name, lines=lines, model=JobFile)]) from error
    faults += volt_faults(name, job, lines)
    if faults:
        raise InputError(faults)
    return LoadedJob(path, job, lines, tuple(_defaults(job, "")))


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
