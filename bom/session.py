"""One run: read the job and the catalogue, convert every key arrangement, see what could be kept."""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from bom.arrangement import ALL, arranged, compared
from bom.build import Build
from bom.check.certainty import Certainty, certainties
from bom.check.question import Question
from bom.check.questions import questions
from bom.convert import convert
from bom.errors import Fault, InputError
from bom.judge.verdict import Verdict
from bom.keep.kept import keep_what_goes
from bom.loom.layout import lay_out
from bom.memory import Memory
from bom.money.prices import left_out
from bom.read.catalogue import Catalogue, read_catalogue
from bom.read.families import BY_NAME
from bom.read.job import JobFile
from bom.read.load_job import LoadedJob, load_job
from bom.read.margins import Margins, shipped_margins
from bom.read.words import nearest


@dataclass(frozen=True)
class Session:
    """What one run worked out.

    build   the arrangement asked for (or the cheapest sound one)
    others  the other arrangements, for comparison
    notes   what was left out of the choice, for the papers
    """

    loaded: LoadedJob
    catalogue: Catalogue
    build: Build
    others: tuple[Build, ...]
    notes: tuple[str, ...]

    @property
    def margins(self) -> Margins:
        """Give the margins this job was judged with."""
        return self.loaded.margins

    @cached_property
    def questions(self) -> tuple[Question, ...]:
        """Give the questions that would change a verdict; worked out when a paper first asks."""
        return questions(self.build, self.catalogue)

    @cached_property
    def certainties(self) -> Mapping[str, Certainty]:
        """Give what it takes to know of each donor item to be tested first."""
        return certainties(self.build, self.questions)

    @property
    def builds(self) -> tuple[Build, ...]:
        """List every arrangement, the one papered first."""
        return (self.build, *self.others)


def run(job_path: Path, catalogue_folder: Path, say: Callable[[str], None]) -> Session:
    """Read and convert.

    Raises InputError with the faults of job and catalogue together. Pins are checked where nothing leaves
    doubt about the places they name.
    """
    say("reading")
    faults: list[Fault] = []
    catalogue = _catalogue(catalogue_folder, faults)
    of_job: list[Fault] = []
    loaded = load_job(job_path, catalogue.margins if catalogue else shipped_margins(), of_job)
    faults += of_job
    if loaded is None or catalogue is None:
        raise InputError(faults)
    if not any(_bears_on_places(fault) for fault in of_job):
        faults += _pin_faults(loaded, catalogue)
    notes = _currency_notes(loaded, catalogue, faults)
    if faults:
        raise InputError(faults)
    memory = Memory()

    def built(job: JobFile, key_at: str) -> Build:
        return convert(job, catalogue, loaded.margins, key_at, say, memory)

    builds = _builds(loaded.job, built)
    if loaded.job.wishes.key == "cheapest":
        builds.sort(key=lambda build: (build.count(Verdict.FAIL), build.count(Verdict.CANT_TELL), build.bill.total))
    build, *others = builds
    kept = replace(build, donor=keep_what_goes(build, others, catalogue, built))
    return Session(loaded, catalogue, kept, tuple(others), notes)


def _builds(job: JobFile, built: Callable[[JobFile, str], Build]) -> list[Build]:
    """Convert every key arrangement once, the wished one first."""
    builds: dict[str, Build] = {}
    for key_at, asked in compared(job):
        build = built(asked, key_at)
        builds.setdefault(build.arrangement, build)
    return list(builds.values())


def _currency_notes(loaded: LoadedJob, catalogue: Catalogue, faults: list[Fault]) -> tuple[str, ...]:
    """Say which offers cannot be priced for want of a rate; where none can be, that is a fault of the job."""
    money = loaded.job.money
    offers = [offer for group in catalogue.offers.values() for offer in group]
    missing = left_out(offers, money)
    if offers and sum(missing.values()) == len(offers):
        accepted = f"The offers are in {', '.join(sorted(missing))}: use one of them, or give its worth in money.rates."
        faults.append(
            Fault(
                str(loaded.path), loaded.lines.line(("money", "currency")), "money.currency", money.currency, accepted
            )
        )
    return tuple(
        f"{count} offers in {currency} were left out: money.rates gives no rate for {currency}."
        for currency, count in sorted(missing.items())
    )


def _pin_faults(loaded: LoadedJob, catalogue: Catalogue) -> list[Fault]:
    """Find pins and received parts that name no place of any arrangement, or no part of the place's family."""
    job = loaded.job
    looms = [lay_out(arranged(job, key_at), loaded.margins, key_at) for key_at in ALL]
    families = {place.name: place.family for loom in looms for place in loom.places}
    faults, seen = [], set[str]()
    for key, line, name, part in _named(loaded):
        if name not in families:
            accepted = f"No place of this bike has this name.{nearest(name, list(families))}"
            faults.append(Fault(str(loaded.path), line, key, name, accepted))
        elif part not in catalogue.families[families[name]].ids:
            title = BY_NAME[families[name]].title
            accepted = f"The catalogue holds no {title} of this id."
            faults.append(Fault(str(loaded.path), line, key, part, accepted))
        elif f"{key} {name}" in seen:
            faults.append(Fault(str(loaded.path), line, key, name, "Write each place once."))
        seen.add(f"{key} {name}")
    return faults


def _named(loaded: LoadedJob) -> Iterator[tuple[str, int, str, str]]:
    """Give key, line, place and part of each pin and of each part that arrived."""
    for name, part in loaded.job.pins.items():
        yield f"pins.{name}", loaded.lines.line(("pins", name)), name, part
    for index, entry in enumerate(loaded.job.received):
        yield "received", loaded.lines.line(("received", index, "place")), entry.place, entry.part


def _bears_on_places(fault: Fault) -> bool:
    """Tell whether a fault of the job leaves doubt about which places the bike has; one of the whole file does."""
    return not fault.place or fault.place.startswith(("loads", "donor", "wishes", "controller.key", "motor.lead"))


def _catalogue(folder: Path, faults: list[Fault]) -> Catalogue | None:
    try:
        return read_catalogue(folder)
    except InputError as error:
        faults += error.faults
        return None
