"""Everything the papers are made of, and writing all of them into one folder."""

from dataclasses import dataclass
from pathlib import Path

from bom.build import Build
from bom.margins import Margins
from bom.read.catalogue import Catalogue
from bom.read.load_job import LoadedJob


@dataclass(frozen=True)
class Papers:
    """What every paper reads.

    build  the arrangement that is papered
    other  the other key arrangement, for comparison; None when it was not worked out
    """

    loaded: LoadedJob
    catalogue: Catalogue
    margins: Margins
    build: Build
    other: Build | None

    @property
    def builds(self) -> tuple[Build, ...]:
        """List the arrangements, the papered one first."""
        return (self.build, self.other) if self.other else (self.build,)


def write_papers(papers: Papers, folder: Path) -> list[Path]:
    """Write workbook, build sheet and record, named after the job; give their paths.

    The same input gives the same bytes. Raises OSError where the folder can't be written.
    """
    from bom.papers.build_sheet import build_sheet
    from bom.papers.record import record
    from bom.papers.workbook import workbook

    folder.mkdir(parents=True, exist_ok=True)
    name = papers.loaded.name
    book, sheet, kept = (folder / f"{name}{ending}" for ending in (".xlsx", ".md", ".json"))
    book.write_bytes(workbook(papers))
    sheet.write_text(build_sheet(papers), encoding="utf-8", newline="\n")
    kept.write_text(record(papers), encoding="utf-8", newline="\n")
    return [book, sheet, kept]
