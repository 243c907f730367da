"""`donorbill why`: which finding is meant, and what is told of it."""

import json
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from bom.check.origins import where
from bom.check.why import accounts, matching, told_otherwise
from bom.check.why_text import as_text
from bom.check.why_tree import as_data
from bom.cli import main
from bom.duties.envelope import own_duty
from bom.session import Session
from bom.trace import KINDS, Origin, Step

Sessions = Callable[[str], Session]
Capture = pytest.CaptureFixture[str]


@pytest.fixture
def street(session_of: Sessions) -> Session:
    return session_of("street-72")


@pytest.fixture
def job(tmp_path: Path, project: Path) -> Path:
    return Path(shutil.copy(project / "templates" / "jobs" / "street-72.toml", tmp_path / "bike.toml"))


@pytest.mark.parametrize(
    ("text", "keys"),
    [
        ("fuse-breaks-the-fault @ main fuse", ["fuse-breaks-the-fault @ main fuse"]),  # not the holder's too
        ("  FUSE-breaks-the-fault  @ main fuse ", ["fuse-breaks-the-fault @ main fuse"]),
        ("main fuse (fuse-breaks-the-fault)", ["fuse-breaks-the-fault @ main fuse"]),  # as `check` prints it
        ("parked-pack", ["parked-pack-lasts @ parked bike"]),
        ("greatest fuse of nobody", []),
        ("", []),
    ],
)
def test_a_text_names_findings(street: Session, text: str, keys: list[str]) -> None:
    assert matching(street.build, text) == keys


def test_a_place_names_what_is_asked_of_it_alone(street: Session) -> None:
    keys = matching(street.build, "main fuse")
    assert len(keys) > 1
    assert all(key.endswith(" @ main fuse") for key in keys)


def test_a_rating_names_its_finding(street: Session) -> None:
    assert matching(street.build, "main fuse: dc breaking amps") == ["fuse-breaks-the-fault @ main fuse"]


def test_one_finding_is_told_answer_first(job: Path, capsys: Capture) -> None:
    assert main(["why", str(job), "fuse-breaks-the-fault @ main fuse"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0] == "PASS  main fuse: DC breaking amps"
    text = job.read_text(encoding="utf-8").splitlines()
    series, ohm = (next(n for n, line in enumerate(text, 1) if line.startswith(key)) for key in ("series", "pack_res"))
    told = "\n".join(lines)
    # Worked: 20 x 4.20 V = 84 V; 84 V / (0.9 x 38 mohm) = 2456 A.
    assert "= U_full ÷ (k × R)" in told
    assert "2.456 kA" in told
    assert f"n = 20  cells in series  [bike.toml:{series} pack.series]" in told
    assert f"[bike.toml:{ohm} pack.pack_resistance]" in told
    assert lines[-1].startswith("cure ")


def test_the_readme_shows_what_is_printed(project: Path, capsys: Capture) -> None:
    block = (project / "README.md").read_text(encoding="utf-8").partition("### Where a figure")[2].split("```")[1]
    starter = project / "templates" / "jobs" / "street-72.toml"
    assert main(["why", str(starter), "fuse-breaks-the-fault @ main fuse"]) == 0
    assert capsys.readouterr().out.startswith(block.strip())


def test_what_was_told_once_is_not_told_again(session_of: Sessions) -> None:
    session = session_of("street-72")
    key = "charger-ends-at-full-charge @ charger"
    told = [as_data(account, session, "12 V") for account in accounts(session.build, key)]
    text = as_text(told)
    # The charger is compared with full charge three times; its cells are told once, the rule's words once.
    assert text.count("n = 20  cells in series") == 1
    assert text.count("84 V  20 NMC cells x 4.20 V  [as above]") == 2
    assert text.count("\ncure ") == 1


def test_several_findings_are_listed_and_none_is_told(job: Path, capsys: Capture) -> None:
    assert main(["why", str(job), "main fuse"]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    assert "fuse-holds-the-load @ main fuse" in printed.err


def test_a_word_that_names_hundreds_lists_some(job: Path, capsys: Capture) -> None:
    assert main(["why", str(job), "wire"]) == 2
    lines = capsys.readouterr().err.splitlines()
    assert len(lines) == 42
    assert lines[-1].endswith(" more")


def test_an_unknown_finding_is_answered_with_the_nearest(job: Path, capsys: Capture) -> None:
    assert main(["why", str(job), "fuse-braks-the-falt @ main fuze"]) == 2
    assert "fuse-breaks-the-fault @ main fuse" in capsys.readouterr().err


def test_a_margin_of_the_job_names_its_line_and_what_it_replaces(job: Path, capsys: Capture) -> None:
    text = job.read_text(encoding="utf-8")
    assert "[margins]" not in text
    job.write_text(f"{text}\n[margins]\ncharger_over_fraction = 0.004\n", encoding="utf-8")
    assert main(["why", str(job), "charger-ends-at-full-charge"]) == 0
    line = text.count("\n") + 3
    told = " ".join(capsys.readouterr().out.split())
    assert f"bike.toml:{line} margins.charger_over_fraction, in place of 0.005 in margins.csv" in told


def test_a_default_is_told_as_one(job: Path, capsys: Capture) -> None:
    text = job.read_text(encoding="utf-8")
    job.write_text("\n".join(line for line in text.splitlines() if not line.startswith("peak_time")), encoding="utf-8")
    assert main(["why", str(job), "fuse-rides-the-burst"]) == 0
    told = " ".join(capsys.readouterr().out.split())
    assert "not said in bike.toml: controller.peak_time, so the default: length of the burst" in told


def test_json_holds_the_same_tree(job: Path, capsys: Capture) -> None:
    assert main(["why", str(job), "fuse-breaks-the-fault @ main fuse", "--json"]) == 0
    (told,) = json.loads(capsys.readouterr().out)
    assert told["verdict"] == "pass"
    assert told["rule"]["cure"]
    needed: dict[str, Any] = told["needed"]
    # Worked: 84 V / (0.9 x 38 mohm) = 2456.14 A.
    assert needed["low"] == pytest.approx(2456.14, abs=0.005)
    assert (needed["unit"], needed["agrees"]) == ("A", True)
    full, _, ohm = needed["inputs"]
    assert [entry["name"] for entry in full["inputs"]] == ["n", "U_cell"]
    assert (ohm["origin"]["kind"], ohm["origin"]["file"]) == ("job", "bike.toml")
    assert told["offered"]["origin"]["kind"] == "catalogue"


def test_the_other_arrangement_can_be_asked(job: Path, capsys: Capture) -> None:
    assert main(["why", str(job), "key-stops-the-bike", "--json"]) == 0
    (one,) = json.loads(capsys.readouterr().out)
    assert main(["why", str(job), "key-stops-the-bike", "--json", "--key", "pack volts"]) == 0
    (other,) = json.loads(capsys.readouterr().out)
    assert {one["arrangement"], other["arrangement"]} == {"12 V", "pack volts"}


def test_places_that_share_a_duty_tell_their_own_runs(session_of: Sessions) -> None:
    """Two wires that ask the same are judged once, yet each was measured at its own key of the job."""
    told = {}
    for session in map(session_of, ("street-72", "moped-48", "frame-return-105")):
        build = session.build
        for wire in build.loom.wires:
            found = own_duty(build.loom, build.facts, wire.name).length_m.origin()
            keys = {found.name} if isinstance(found, Origin) else {e.origin().name for e in found.inputs.values()}  # type: ignore[union-attr]
            told.setdefault((session.loaded.name, id(build.duties[wire.name])), set()).add(tuple(sorted(keys)))
    assert any(len(keys) > 1 for keys in told.values())


def test_every_duty_of_every_place_has_a_trace(session_of: Sessions) -> None:
    """Also those that no finding compares: a paper may ask for them."""
    for build in session_of("moped-48").builds:
        for place in build.loom.places:
            for name, span in own_duty(build.loom, build.facts, place.name).needs.items():
                assert isinstance(span.origin(), Origin | Step), f"{place.name}: {name}"


def test_a_finding_answered_otherwise_stops_the_program(street: Session, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bom.check.why._asked", lambda build, rule, subject: [])
    with pytest.raises(RuntimeError, match="answered otherwise"):
        accounts(street.build, "parked-pack-lasts @ parked bike")


def test_every_kind_of_origin_can_be_printed(street: Session) -> None:
    """A kind that needs no looking up is printed by its name, as a solved state will be."""
    solved = where(Origin("solved state", "riding by night", "headlamp plus", "volts at the lamp"), street)
    assert solved.words == "solved state riding by night of headlamp plus; volts at the lamp"
    assert "solved state" in KINDS


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("regulator", "The donor's regulator: goes. nothing is left to regulate"),
        ("Ignition coils (donor's ignition)", "The donor's ignition coils: goes."),  # as `check` prints it
        ("buffer-charges", "The rule buffer-charges has nothing to ask of this bike."),
        ("greatest fuse of nobody", ""),
    ],
)
def test_what_is_no_finding_is_told_otherwise(street: Session, text: str, told: str) -> None:
    assert told_otherwise(street.build, text).startswith(told)
    assert bool(told_otherwise(street.build, text)) == bool(told)


def test_an_open_place_is_told_as_check_prints_it(job: Path, capsys: Capture) -> None:
    text = job.read_text(encoding="utf-8").replace('charge_current = "10 A"', 'charge_current = "45 A"')
    job.write_text(text, encoding="utf-8")
    main(["check", str(job)])
    printed = " ".join(capsys.readouterr().out.split())
    assert "no charger chosen: nothing in the catalogue passes" in printed
    assert main(["why", str(job), "no charger chosen"]) == 2
    told = capsys.readouterr().err
    assert told.startswith("No charger chosen, so that no rule is asked of it. No charger passes.")
    assert told.strip().partition("asked of it. ")[2] in printed


def test_no_file_name_is_broken_at_its_hyphen(tmp_path: Path, project: Path, capsys: Capture) -> None:
    job = tmp_path / f"{'a-' * 20}bike.toml"
    shutil.copy(project / "templates" / "jobs" / "street-72.toml", job)
    assert main(["why", str(job), "parked-pack-lasts"]) == 0
    told = capsys.readouterr().out
    assert told.count(job.name) == told.count("a-a-bike.toml") > 1
