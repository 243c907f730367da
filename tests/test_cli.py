"""The command line: exit codes, what is printed where, what is written and what is not."""

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

import bom.session
from bom.cli import main
from bom.physics.ranges import check_range

JOB = Path("templates") / "jobs" / "street-72.toml"


@pytest.fixture
def shelf(tmp_path: Path, project: Path) -> Path:
    """Copy the catalogue, so that a test may spoil it."""
    return Path(shutil.copytree(project / "catalog", tmp_path / "catalog"))


@pytest.fixture
def job(tmp_path: Path, project: Path) -> Path:
    return Path(shutil.copy(project / JOB, tmp_path / "bike.toml"))


def run(project: Path, *arguments: str, cwd: Path | None = None) -> subprocess.CompletedProcess[str]:
    paths = os.pathsep.join([str(project), os.environ.get("PYTHONPATH", "")])
    return subprocess.run(
        [sys.executable, *arguments],
        cwd=cwd or project,
        env={**os.environ, "PYTHONPATH": paths, "PYTHONIOENCODING": "utf-8"},
        capture_output=True,
        encoding="utf-8",
        check=False,
    )


def edit(path: Path, old: str, new: str) -> int:
    """Replace a text that stands once, and give its line."""
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1
    path.write_text(text.replace(old, new), encoding="utf-8")
    return text[: text.index(old)].count("\n") + 1


def test_a_sound_job_checked_as_a_program(project: Path) -> None:
    done = run(project, "-m", "bom", "check", str(JOB))
    assert (done.returncode, done.stderr) == (0, "")
    assert "0 fail, 0 can't be told" in done.stdout
    assert "Cure: " in done.stdout


@pytest.mark.parametrize("starter", ["street-72", "frame-return-105"])
@pytest.mark.parametrize("command", ["check", "donor"])
def test_a_terminal_of_100_columns_holds_every_line(
    command: str, starter: str, project: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    main([command, str(project / "templates" / "jobs" / f"{starter}.toml")])
    lines = capsys.readouterr().out.splitlines()
    assert max(len(line) for line in lines if str(project) not in line) <= 100
    assert "\xa0" not in "".join(lines)


def test_check_says_the_outcome_first_and_the_donor_in_brief(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Whoever sees only the top or only the end of it reads the outcome; of the donor what does not simply stay."""
    job = project / "templates" / "jobs" / "street-72.toml"
    assert main(["check", str(job)]) == 0
    text = capsys.readouterr().out
    lines = text.splitlines()
    assert lines[0].startswith("0 fail, 0 can't be told")
    assert lines[0] == next(line for line in reversed(lines) if "can't be told" in line)
    assert f"Donor: 14 stay, 1 stays if, 2 go. See: donorbill donor {job}" in " ".join(text.split())
    brief = [line for line in lines if line.startswith(("  goes", "  stays", "  test first"))]
    assert [line.split(":")[0].split(maxsplit=1)[0] for line in brief] == ["stays", "goes", "goes"]
    assert "ignition lock" not in text


def test_json_is_all_of_stdout(project: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["check", str(project / "templates" / "jobs" / "frame-return-105.toml"), "--json"])
    printed = capsys.readouterr()
    found = json.loads(printed.out)
    assert code == 1
    assert printed.err == ""
    assert found["sound"] is False
    assert found["counts"]["fail"] == sum(f["verdict"] == "fail" for f in found["findings"] + found["open_places"])
    assert {f["subject"] for f in found["findings"] if f["verdict"] == "fail"} == {"key switch"}


def test_json_of_everything_lists_what_passes(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(job), "--json", "--all"]) == 0
    assert "pass" in {finding["verdict"] for finding in json.loads(capsys.readouterr().out)["findings"]}


def test_an_unknown_key_is_named_with_its_line_and_the_nearest(
    job: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    line = edit(job, "parallel = 14", "paralel = 14")
    assert main(["build", str(job)]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert f"line {line}" in printed.err
    assert "paralel" in printed.err
    assert '"parallel"' in printed.err.replace("pack.parallel", "parallel")
    assert "Nothing was written" in printed.err
    assert [path.name for path in tmp_path.iterdir()] == ["bike.toml"]


def test_every_fault_of_job_and_catalogue_is_reported_at_once(
    job: Path, shelf: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(job, 'capacity = "42 Ah"', 'capacity = "42"')
    converter, fuse = shelf / "parts" / "converter.csv", shelf / "parts" / "main_fuse.csv"
    edit(
        converter,
        '"12 V converter, 36-90 V in, 10 A, isolated",36,90',
        '"12 V converter, 36-90 V in, 10 A, isolated",36,90V',
    )
    line = edit(fuse, "MF-0104,", "MF-0104,spare,")
    row = next(n for n, text in enumerate(converter.read_text(encoding="utf-8").splitlines(), 1) if "90V" in text)
    assert main(["check", str(job), "--catalog", str(shelf)]) == 2
    told = capsys.readouterr().err
    assert "42" in told
    assert f"converter.csv line {row}, input_max_v" in told
    assert f"main_fuse.csv line {line}" in told
    assert "Nothing was written" in told


def test_a_word_that_is_no_choice_and_a_missing_table(
    job: Path, shelf: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    edit(
        shelf / "parts" / "shunt.csv", 'SH-0901,"shunt, 200 A, markings worn",200,,8,unknown', "SH-0901,x,200,,8,maybe"
    )
    (shelf / "parts" / "horn.csv").unlink()
    assert main(["check", str(job), "--catalog", str(shelf)]) == 2
    told = capsys.readouterr().err
    assert 'shunt.csv line 11, evidence: found "maybe"' in told
    assert "horn.csv" in told


@pytest.mark.parametrize(
    ("pin", "told"),
    [('"main fuze" = "MF-0309"', "main fuze"), ('"main fuse" = "MF-9999"', "MF-9999")],
)
def test_a_bad_pin(pin: str, told: str, job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job.write_text(f"{job.read_text(encoding='utf-8')}\n[pins]\n{pin}\n", encoding="utf-8")
    assert main(["check", str(job)]) == 2
    printed = capsys.readouterr()
    assert told in printed.err
    assert printed.out == ""


@pytest.mark.parametrize(
    ("place", "part", "told"),
    [
        ("main fuze", "MF-0309", "No place of this bike has this name."),
        ("main fuse", "CT-0301", "The catalogue holds no main fuse of this id."),
    ],
)
def test_a_bad_received_part(place: str, part: str, told: str, job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = job.read_text(encoding="utf-8")
    job.write_text(f'{text}\n[[received]]\nplace = "{place}"\npart = "{part}"\n', encoding="utf-8")
    assert main(["check", str(job)]) == 2
    assert told in capsys.readouterr().err


def test_a_job_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["check", str(tmp_path / "none.toml")]) == 2
    assert "No such file" in capsys.readouterr().err


def test_a_margin_out_of_its_range(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job.write_text(f"{job.read_text(encoding='utf-8')}\n[margins]\nfuse_loading = 2\n", encoding="utf-8")
    assert main(["check", str(job)]) == 2
    assert "margins.fuse_loading" in capsys.readouterr().err


def test_new_writes_a_starter_that_reads_and_never_overwrites(
    tmp_path: Path, project: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["new", "mine", "--like", "moped-48"]) == 0
    written = (tmp_path / "mine.toml").read_text(encoding="utf-8")
    assert written == (project / "templates" / "jobs" / "moped-48.toml").read_text(encoding="utf-8")
    (tmp_path / "mine.toml").write_text("my own work", encoding="utf-8")
    assert main(["new", "mine"]) == 2
    assert (tmp_path / "mine.toml").read_text(encoding="utf-8") == "my own work"
    assert "left alone" in capsys.readouterr().err


def test_new_in_a_folder_that_is_not_there(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    assert main(["new", "bikes/mine"]) == 2
    assert "There is no folder bikes." in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_figure_that_no_formula_takes(
    job: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def refuse(*_: object) -> None:
        check_range("area_mm2", 130.0, low=0.05, high=120.0)

    monkeypatch.setattr("bom.session.run", refuse)
    assert main(["check", str(job)]) == 2
    told = capsys.readouterr().err
    assert "A figure lies outside what a formula takes: area_mm2 = 130" in told
    assert "fault of its own" not in told


def test_build_writes_its_papers_where_told(job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "papers"
    assert main(["build", str(job), "--out", str(out)]) == 0
    named = [Path(line) for line in capsys.readouterr().out.splitlines() if line.startswith(str(out))]
    assert named
    assert all(path.is_file() and path.stat().st_size for path in named)


def test_build_of_an_unsound_job_is_good_unless_strict(
    job: Path, tmp_path: Path, project: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Converted once, and no papers written: only the exit code is looked at."""
    job.write_text(f'{job.read_text(encoding="utf-8")}\n[pins]\n"main fuse" = "MF-0205"\n', encoding="utf-8")
    session = bom.session.run(job, project / "catalog", lambda text: None)
    monkeypatch.setattr("bom.session.run", lambda *_: session)
    monkeypatch.setattr("bom.papers.papers.write_papers", lambda *_: [])
    arguments = ["build", str(job), "--out", str(tmp_path / "papers")]
    assert main(arguments) == 0
    assert main([*arguments, "--strict"]) == 1


def test_rules_are_listed_and_one_is_explained(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules"]) == 0
    assert capsys.readouterr().out.startswith("FIRE  ")
    assert main(["rules", "holds", "dc", "vollts"]) == 0
    assert "80.0 V offered, at least 84.0 V needed" in capsys.readouterr().out


def test_a_rule_that_is_not_there_names_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rules", "holder-volts"]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert 'No rule is named by "holder-volts". The nearest:' in printed.err
    assert "cable-holds-the-volts" in printed.err


def test_no_command_is_said_and_not_guessed(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main([])
    assert stopped.value.code == 2
    assert "COMMAND" in capsys.readouterr().err


def imported(project: Path, *arguments: str) -> set[str]:
    told = run(project, "-X", "importtime", "-m", "bom", *arguments).stderr
    return {line.rsplit("|", 1)[-1].strip().split(".")[0] for line in told.splitlines() if "|" in line}


def test_check_loads_nothing_that_only_papers_need(project: Path) -> None:
    loaded = imported(project, "check", str(JOB))
    assert "numpy" in loaded
    assert not loaded & {"openpyxl", "jinja2"}


def test_help_is_quick(project: Path) -> None:
    loaded = imported(project, "--help")
    assert "argparse" in loaded
    assert not loaded & {"numpy", "pydantic", "pint", "highspy", "openpyxl", "jinja2"}


def test_a_pipe_of_another_encoding_gets_utf8(project: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "bom", "check", str(JOB), "--all"],
        cwd=project,
        env={**os.environ, "PYTHONPATH": str(project), "PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii"},
        capture_output=True,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, b"")
    assert "°C" in done.stdout.decode("utf-8")
