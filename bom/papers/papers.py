"""Writing all papers of one run into one folder."""

from pathlib import Path

from bom.session import Session


def write_papers(session: Session, folder: Path) -> list[Path]:
    """Write workbook, build sheet and record, named after the job; give their paths.

    The same input gives the same bytes. Raises OSError where the folder can't be written.
    """
    from bom.papers.build_sheet import build_sheet
    from bom.papers.record import record
    from bom.papers.workbook import workbook

    folder.mkdir(parents=True, exist_ok=True)
    name = session.loaded.name
    book, sheet, kept = (folder / f"{name}{ending}" for ending in (".xlsx", ".md", ".json"))
    book.write_bytes(workbook(session))
    sheet.write_text(build_sheet(session), encoding="utf-8", newline="\n")
    kept.write_text(record(session), encoding="utf-8", newline="\n")
    return [book, sheet, kept]
