"""Reading a job file: its values, the line each stands on, and every fault at once."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from pydantic import BaseModel

from bom.errors import Fault
from bom.read.checked import checked, right_of
from bom.read.cross_checks import controller_faults, name_faults, pack_faults
from bom.read.job import Controller, JobFile, Pack
from bom.read.job_keys import shown
from bom.read.lead_faults import lead_faults
from bom.read.locate import Lines
from bom.read.margins import Margins
from bom.read.quantity import dimension_of
from bom.read.salvage import read_toml


@dataclass(frozen=True)
class Default:
    """A value the job does not give, as a person would write it."""

    key: str
    value: str
    meaning: str


@dataclass(frozen=True)
class LoadedJob:
    """A job as read; its margins are those of the catalogue with the job's own in their place."""

    path: Path
    job: JobFile
    lines: Lines
    defaults: tuple[Default, ...]
    margins: Margins

    @property
    def name(self) -> str:
        """Name of the job, from its file."""
        return self.path.stem


def load_job(path: Path, margins: Margins, faults: list[Fault]) -> LoadedJob | None:
    """Read a job file; its faults are added, and what is right of it is given if it makes a job.

    margins  those of the catalogue, which the job may set otherwise
    """
    file = str(path)
    text = _text(path, faults)
    if text is None:
        return None
    salvaged = read_toml(file, text, faults)
    lines, found = Lines.of(salvaged.text), list[Fault]()
    job = checked(JobFile, salvaged.data, file, lines, found)
    found += name_faults(file, salvaged.data, lines)
    found += lead_faults(file, salvaged.data, lines)
    pack = job.pack if job else right_of(Pack, salvaged.data.get("pack"))
    controller = job.controller if job else right_of(Controller, salvaged.data.get("controller"))
    found += pack_faults(file, pack, lines) if pack else []
    found += controller_faults(file, controller, lines) if controller else []
    margins = margins.overridden(_numbers(salvaged.data.get("margins")), file, lines, found)
    faults += [fault for fault in found if not salvaged.explains(fault)]
    return LoadedJob(path, job, lines, tuple(_defaults(job, "")), margins) if job else None


def _numbers(table: object) -> dict[str, float]:
    """Keep the numbers of a table; the schema says what is wrong with the others."""
    return {name: value for name, value in table.items() if _is_number(value)} if isinstance(table, dict) else {}


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _text(path: Path, faults: list[Fault]) -> str | None:
    """Read the file's text; where it is not UTF-8, what Western European programs write is read all the same."""
    starter = '"donorbill new NAME" writes a starter job.'
    if not path.is_file():
        problem = "This is no file but a folder or a device" if path.exists() else "No such file"
        faults.append(Fault(str(path), 0, "", "", f"{problem}. {starter}"))
        return None
    raw = path.read_bytes()
    if not raw.strip():
        faults.append(Fault(str(path), 0, "", "", f"The file is empty. {starter}"))
        return None
    if raw.startswith((b"\xff\xfe", b"\xfe\xff")):
        faults.append(Fault(str(path), 1, "", "", "This is UTF-16 text: save the file as UTF-8."))
        return raw.decode("utf-16", errors="replace")
    try:
        return raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = raw[: error.start].count(b"\n") + 1
        text = raw.decode("cp1252", errors="replace")
        found = text.splitlines()[line - 1].strip()
        faults.append(Fault(str(path), line, "", found, "Save the file as UTF-8 text."))
        return text


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
