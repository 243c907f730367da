"""The build sheet: renders as Markdown, keeps names plain, and hides nothing that fails."""

import html
import re
from pathlib import Path

import pytest
from markdown_it import MarkdownIt

from bom.check.cause_words import cause_lines
from bom.data import folder
from bom.judge.verdict import Verdict
from bom.papers.bench_words import number
from bom.papers.build_sheet import build_sheet, plain
from bom.session import Session, run

CELL_EDGE = re.compile(r"(?<!\\)\|")


@pytest.fixture(scope="session")
def text(written: list[Path]) -> str:
    return written[1].read_text(encoding="utf-8")


def rendered(text: str) -> str:
    return MarkdownIt("commonmark").enable("table").render(text)


def words_of(text: str) -> str:
    """What a reader sees: rendered, without tags."""
    return " ".join(html.unescape(re.sub(r"<[^>]+>", " ", rendered(text))).split())


def test_every_row_of_a_table_has_as_many_cells(text: str) -> None:
    count = 0
    for line in text.splitlines():
        cells = len(CELL_EDGE.findall(line)) if line.startswith("|") else 0
        assert not (count and cells) or cells == count, line
        count = cells


def test_every_table_is_read_as_one(text: str) -> None:
    tables = sum(1 for line in text.splitlines() if re.fullmatch(r"\|(-+\|)+", line))
    assert tables > 8
    assert rendered(text).count("<table>") == tables
    assert "|---" not in words_of(text)


def test_steps_and_wires_have_boxes(papers: Session, text: str) -> None:
    assert text.count("- [ ] ") > 25
    assert text.count("| ☐ | **W") == len(papers.build.loom.wires)


def test_each_cause_is_told_with_all_its_comparisons(papers: Session, text: str) -> None:
    part = words_of(text.split("## Settle these first")[1].split("## Volts", maxsplit=1)[0])
    for cause in papers.build.causes:
        assert " ".join(cause.title.split()) in part
        for line in cause_lines(cause):
            assert " ".join(line.text.split()) in part
            assert " ".join(line.cure.split()) in part
    for hole in papers.build.holes:
        assert " ".join(hole.sentence.split()) in part


def test_the_hostile_job_has_something_to_settle(hostile: Session) -> None:
    assert hostile.build.count(Verdict.FAIL) > 3
    assert hostile.build.count(Verdict.CANT_TELL) > 0


def test_names_from_the_job_read_as_they_are_written(hostile: Session) -> None:
    from bom.papers.build_sheet import build_sheet

    text = build_sheet(hostile)
    assert "<h1>=1+1 &amp; | *stars* `ticks` &lt;b&gt;</h1>" in rendered(text)
    assert "<b>" not in rendered(text)


@pytest.mark.parametrize("text", [
    "a|b", "*a*", "_a_", "`a`", "[a](b)", "<i>", "- a", "+ a", "# a", "1. a", "1) a", "> a", "a\\b", "~~a~~", "&amp;",
    "![a](b)", "= a", "---", "12. Aug",
])  # fmt: skip
def test_text_is_made_plain(text: str) -> None:
    made = str(plain(text))
    assert words_of(made) == text
    assert len(CELL_EDGE.findall(made)) == 0


@pytest.mark.parametrize("text", ["a\nb", "a\r\nb", "a\tb", "  a   b  ", "a\u2028b"])
def test_text_stays_on_its_line(text: str) -> None:
    assert plain(text) == "a b"


def test_cautions_stand_above_60_v(sound: Session, text: str) -> None:
    seen = words_of(text)
    assert "If it carries pack minus it can kill." in seen
    assert "It claims no compliance." in seen
    assert "Local rules, the inspector and licensed practice stand over it." in seen
    assert "Above 60 V DC: a high-voltage circuit." in seen


def test_the_isolation_floor_is_that_of_the_standard(sound: Session) -> None:
    """UN R136 5.1.3.2: 500 ohm a volt where the drive is joined to the bus; read second-hand on a public page."""
    from bom.papers.build_sheet import build_sheet

    assert sound.loaded.job.controller.over_voltage == 88.0
    assert "at least 44 kohm" in build_sheet(sound)  # 88 V x 500 ohm


def test_precharge_time_is_that_of_its_resistor(sound: Session) -> None:
    """Worked: three time constants reach 95 % (1 - e^-3 = 0.950), so t = 3.00 R C."""
    from bom.papers.bench import bench

    figures = bench(sound)
    worked = 2.996 * figures.precharge_ohm * 2.2e-3
    assert figures.fill_s == pytest.approx(worked, rel=0.001)


def test_days_to_lose_a_fifth_are_hours_of_the_drain(sound: Session) -> None:
    """Worked: 20 % of 42 Ah is 8.4 Ah; over 30 days of 24 h that is 11.7 mA."""
    from bom.papers.bench import bench

    figures = bench(sound)
    assert figures.drain_limit_a == pytest.approx(0.0117, abs=0.00005)
    assert figures.drain_days == pytest.approx(8.4 / figures.drain_a / 24)


def test_the_fall_to_60_v_is_that_of_circuit_theory(sound: Session) -> None:
    """Worked: 10 kohm x 2.2 mF = 22 s; ln(88 / 60) = 0.383; 8.43 s."""
    from bom.papers.bench import bench

    assert bench(sound).bleed_s == pytest.approx(8.43, abs=0.005)


def test_polarised_parts_are_named_with_their_way_round(sound: Session) -> None:
    polarised = [
        entry.part_id
        for entry in sound.build.filled.values()
        if "polarised" in entry.part.words and entry.part.word("polarised")[0] == "yes"
    ]
    assert polarised
    for part_id in polarised:
        assert re.search(rf"\\?\({part_id}\\?\) is polarised: its plus mark towards the pack", build_sheet(sound))


@pytest.mark.parametrize(
    ("value", "digits", "printed"),
    [(383.0, 2, "380 s"), (1500.0, 3, "1500 s"), (8.43, 2, "8.4 s"), (0.14, 3, "0.14 s")],
)
def test_a_figure_on_the_bench_has_no_exponent(value: float, digits: int, printed: str) -> None:
    """Worked: 100 mF through 10 kohm from 88 V to 60 V take 1000 s x ln(88 / 60) = 383 s; nobody reads 3.8e+02."""
    assert number(value, "s", digits) == printed


def test_a_telltale_on_diodes_is_tried_on_both_sides(tmp_path: Path) -> None:
    """Trade: a diode's ring marks its cathode, where amps leave it."""
    starter = (folder("templates") / "jobs" / "street-72.toml").read_text(encoding="utf-8")
    rear = 'name = "rear indicators"\n'
    path = tmp_path / "diodes.toml"
    path.write_text(starter.replace(rear, rear + 'telltale = "through two diodes"\n'), encoding="utf-8")
    session = run(path, folder("catalog"), lambda _: None)
    [row] = [line for line in build_sheet(session).splitlines() if "rear indicators, left, then right" in line]
    assert "ring end to the telltale" in row
