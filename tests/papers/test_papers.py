"""What holds of all session together."""

import re
from pathlib import Path

from bom.papers.papers import write_papers
from bom.session import Session

NO_FIGURE = re.compile(r"(?<![\w-])(nan|inf|-inf|NaN|Infinity|None)(?![\w-])")


def test_they_are_named_after_the_job(papers: Session, written: list[Path]) -> None:
    name = papers.loaded.name
    assert [path.name for path in written] == [f"{name}.xlsx", f"{name}.md", f"{name}.json"]


def test_a_second_run_gives_the_same_bytes(papers: Session, written: list[Path], tmp_path: Path) -> None:
    again = write_papers(papers, tmp_path / "made" / "on the way")
    assert [path.read_bytes() for path in again] == [path.read_bytes() for path in written]


def test_no_figure_without_a_value_is_printed(written: list[Path]) -> None:
    for path in written[1:]:
        assert not NO_FIGURE.findall(path.read_text(encoding="utf-8")), path.name


def test_text_ends_lines_the_same_way_on_every_machine(written: list[Path]) -> None:
    for path in written[1:]:
        content = path.read_bytes()
        assert b"\r" not in content
        assert content.endswith(b"\n")
        assert not content.endswith(b"\n\n")
