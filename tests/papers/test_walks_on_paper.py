"""The walks on paper: sheets, build sheet and record say what the circuit says."""

import json
from collections import Counter
from math import isfinite
from pathlib import Path
from typing import Any

import pytest
from openpyxl import Workbook, load_workbook

from bom.circuit.fault import End
from bom.circuit.live import DRIVE
from bom.circuit.opens import Opened
from bom.circuit.waking import Stuck
from bom.judge.parked_drain import empty_days, parked_days, parked_drain_a
from bom.papers.circuit_view import MOST_ROWS, circuit_view
from bom.papers.closing_rows import Walked, dark_words, waits, walked_in
from bom.papers.open_rows import OpenRow, open_rows
from bom.papers.papers import write_papers
from bom.papers.short_rows import short_rows
from bom.papers.state_rows import state_rows, wire_amps
from bom.session import Session


@pytest.fixture(scope="session")
def framed_papers(framed: Session, tmp_path_factory: pytest.TempPathFactory) -> list[Path]:
    return write_papers(framed, tmp_path_factory.mktemp("framed"))


@pytest.fixture(scope="session")
def book(written: list[Path]) -> Workbook:
    return load_workbook(written[0], data_only=True)


@pytest.fixture(scope="session")
def text(written: list[Path]) -> str:
    return written[1].read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def kept(written: list[Path]) -> Any:
    return json.loads(written[2].read_text(encoding="utf-8"))


def rows_of(book: Workbook, title: str) -> list[tuple[Any, ...]]:
    """Give the rows of a sheet's first table, to the first empty line."""
    out = []
    for row in book[title].iter_rows(min_row=4, values_only=True):
        if row[0] is None:
            break
        out.append(row)
    return out


def test_every_state_and_every_wire_has_its_row(papers: Session, book: Workbook) -> None:
    walks = papers.build.walks
    states = rows_of(book, "States")
    assert [row[0] for row in states] == [standing.state.name for standing in walks.states]
    for row, standing in zip(states, walks.states, strict=True):
        assert row[2] == pytest.approx(standing.volts("pack plus", "pack minus"), abs=0.051)
        assert (row[13] == "nothing") == (not standing.collapsed)
    wires = rows_of(book, "Wire amps")
    singles = [name for name, strand in walks.bike.strands.items() if strand.wire.count == 1]
    assert [row[1] for row in wires] == singles


def test_a_wire_is_shown_in_its_worst_state(papers: Session) -> None:
    for wire in wire_amps(papers.build):
        for standing in papers.build.walks.states:
            assert standing.amps(wire.wire) <= wire.amps + 1e-6


def test_volts_fall_along_the_way(sound: Session) -> None:
    """Trade: nothing in a loom raises the volts; while the pack feeds, each point along the way stands lower."""
    riding = [row for row in state_rows(sound.build) if row.pack_a > 1.0]
    assert len(riding) >= 4
    for row in riding:
        assert row.pack_v > row.bus_v
        assert row.pack_v > row.input_v
        assert row.rail_v > row.load_v


def test_each_short_stands_in_one_row(papers: Session, book: Workbook) -> None:
    faults, rows = papers.build.walks.faults, rows_of(book, "Shorts")
    assert sum(row[3] for row in rows) == len(faults)
    counts = Counter(row[0] for row in rows for _ in range(row[3]))
    assert counts == Counter(fault.end.word for fault in faults)
    assert len(rows) <= 30


def test_shorts_stand_worst_first_with_their_worst_figures(papers: Session) -> None:
    rows = short_rows(papers.build)
    assert [row.end for row in rows] == sorted((row.end for row in rows), reverse=True)
    by_point = {(fault.point, fault.to): fault for fault in papers.build.walks.faults}
    for row in rows:
        for point in row.points:
            fault = by_point[point, row.to]
            assert fault.end == row.end
            assert row.low_a <= fault.low_a
            assert row.high_a >= fault.high_a - 1e-3
            assert row.latest_s >= fault.latest_s
            over = [hot.end_c - hot.limit_c for hot in (fault.wire, fault.stub) if hot]
            assert not over or (row.hot and row.hot.end_c - row.hot.limit_c >= max(over) - 1e-3)


def test_a_fuse_that_opens_is_named_with_its_seconds(papers: Session, book: Workbook) -> None:
    for row in rows_of(book, "Shorts"):
        if row[0] in (End.CLEARED.word, End.LATE.word, End.STUB.word):
            assert row[7] in papers.build.filled
            assert isinstance(row[9], int | float)
        if row[0] == End.UNFUSED.word:
            assert (row[7], row[9]) == ("none", "never")


def test_shorts_to_the_frame_show_their_way(framed: Session, framed_papers: list[Path]) -> None:
    """Trade: where lamps return through the frame, a short to it comes home by the frame's bond."""
    rows = rows_of(load_workbook(framed_papers[0]), "Shorts")
    onto_frame = [row for row in rows if row[2] == "the frame"]
    flowing = [row for row in onto_frame if row[0] != End.NO_CURRENT.word]
    assert len(flowing) >= 5
    for row in flowing:
        assert "frame bond" in row[14]
    assert [row[14] for row in onto_frame if row[0] == End.NO_CURRENT.word] == ["–"]
    assert all(row[14] == "–" for row in rows if row[2] == "its return")


def test_a_pack_apart_from_the_frame_sends_nothing_there(framed: Session) -> None:
    """Trade: one short of an isolated pack to the frame carries nothing."""
    [row] = [row for row in short_rows(framed.build) if row.end == End.NO_CURRENT]
    assert {"pack plus", "controller plus", "main fuse out"} <= set(row.points)


def test_each_wire_is_opened_once_on_paper(sound: Session, tmp_path: Path) -> None:
    book = load_workbook(write_papers(sound, tmp_path)[0])
    *rows, last = rows_of(book, "Open wires")
    opens = sound.build.walks.opens
    harmless = [opened.wire for opened in opens if opened.harmless]
    assert last[0] == len(harmless)
    for wire in harmless:
        assert wire in last[2]
    assert sorted(row[1] for row in rows) == sorted(opened.wire for opened in opens if not opened.harmless)
    volts = [row[5] for row in rows if isinstance(row[5], int | float)]
    assert volts == sorted(volts, reverse=True)


def test_a_lost_key_input_stops_the_drive(sound: Session) -> None:
    """Trade: a controller without volts at its key input does not drive."""
    lost = {opened.wire: opened.dark for opened in sound.build.walks.opens}
    assert DRIVE in lost["key input wire"]
    assert DRIVE in lost["controller lead"]
    assert "meter" in lost["meter plus"]


def test_what_lost_its_minus_floats_at_pack_volts(sound: Session) -> None:
    """Trade: a minus that is lost is pulled up to nearly the volts of the plus."""
    lost = {opened.wire: opened for opened in sound.build.walks.opens}
    least = sound.build.facts.pack.lowest_rest_v.low * 0.8
    for wire, floats in (
        ("return to minus post", "controller minus"),
        ("converter return", "converter minus"),
        ("meter minus", "meter minus"),
    ):
        assert lost[wire].floats == floats
        assert lost[wire].floats_v > least


def test_wires_are_not_told_of_in_a_state_that_can_not_be_sustained(hostile: Session, tmp_path: Path) -> None:
    assert not walked_in(hostile.build).stands
    assert open_rows(hostile.build) == []
    paths = write_papers(hostile, tmp_path)
    assert "Not told: the bike can't sustain" in paths[1].read_text(encoding="utf-8")
    assert "Not told" in str(load_workbook(paths[0])["Open wires"]["A2"].value)


def test_a_lost_traction_minus_is_told_with_its_cure(hostile: Session, sound: Session, tmp_path: Path) -> None:
    """Trade: a converter that joins pack and 12 V minus lets the motor's amps home through the throttle's ground."""
    text = write_papers(hostile, tmp_path)[1].read_text(encoding="utf-8")
    worst = max(hostile.build.walks.strays, key=lambda stray: stray.amps)
    assert worst.amps > worst.may_a
    assert "Do: an isolated converter" in text
    assert f"{worst.wire} off" in text
    assert "finds no thin way home" in str(circuit_view(sound.build)["stray"])


def test_the_waking_order_stands_in_both_papers(papers: Session, book: Workbook, text: str) -> None:
    waking = papers.build.walks.waking
    assert waking is not None
    steps = [f"{number}. {step.what}" for number, step in enumerate(waking.steps, start=1)]
    column = [row[0] for row in book["Closing"].iter_rows(values_only=True)]
    start = column.index(steps[0])
    assert column[start : start + len(steps)] == steps
    part = text.split("## Waking order")[1].split("### What rushes in", maxsplit=1)[0]
    for number, step in enumerate(waking.steps, start=1):
        assert f"| ☐ | {number} | {step.what} | **{step.volts:.1f} V** | {step.at} | |" in part


def test_the_drain_is_told_in_days(sound: Session, tmp_path: Path) -> None:
    """Worked: the part that may go is the margin's share of the whole, and so are the days."""
    build = sound.build
    drain_a, unknown = parked_drain_a(build.walks.bike.view)
    assert unknown == ""
    whole = sound.loaded.job.pack.capacity / drain_a / 24  # Ah / A = h
    assert empty_days(build.facts, drain_a) == pytest.approx(whole)
    assert parked_days(build.facts, drain_a) == pytest.approx(build.facts.margins.drain_fraction * whole)
    sheet = load_workbook(write_papers(sound, tmp_path)[0])["Closing"]
    column = {row[0]: row[1] for row in sheet.iter_rows(values_only=True)}
    assert column["together"] == pytest.approx(drain_a * 1000, rel=1e-3)
    assert column["from full until the cells are at their least"] == f"{whole:.0f} days"


def test_days_are_not_told_where_a_figure_lacks(hostile: Session, tmp_path: Path) -> None:
    paths = write_papers(hostile, tmp_path)
    column = {row[0]: row[1:] for row in load_workbook(paths[0])["Closing"].iter_rows(values_only=True)}
    days, why = column["from full until the cells are at their least"][:2]
    assert days == "not known"
    assert why.startswith("at most ")
    parked = json.loads(paths[2].read_text(encoding="utf-8"))["parked"]
    assert (parked["days"], parked["days_to_least"]) == (None, None)
    assert parked["not_known"]


def test_every_rush_and_figure_has_its_row(papers: Session, book: Workbook) -> None:
    walks = papers.build.walks
    assert [row[0] for row in rows_of(book, "Closing")] == [rush.what for rush in walks.rushes]
    assert [row[0] for row in rows_of(book, "Motor side")] == [figure.what for figure in walks.motor]
    for row, figure in zip(rows_of(book, "Motor side"), walks.motor, strict=True):
        assert (row[1] == "not known") == (not isfinite(figure.value))


def test_the_build_sheet_names_what_ends_badly_and_counts_the_rest(papers: Session, text: str) -> None:
    part = text.split("## Shorts, worst first")[1].split("## If a wire comes off", maxsplit=1)[0]
    faults = papers.build.walks.faults
    table = [line for line in part.splitlines() if line.startswith("| ")][1:]
    assert 0 < len(table) <= MOST_ROWS
    for end in {fault.end for fault in faults}:
        count = sum(1 for fault in faults if fault.end == end)
        if end in (End.NO_CURRENT, End.CLEARED):
            assert f"{count} times {end.word}" in part
        else:
            assert any(f"**{end.word}**" in line for line in table)
    opens = text.split("## If a wire comes off")[1].split("## Torque", maxsplit=1)[0]
    assert opens.count("| ☐ |") <= MOST_ROWS


@pytest.mark.parametrize(("loads", "dark", "words"), [
    ({"horn", "lamp"}, ("horn", "lamp", "meter", DRIVE), "the drive, everything on 12 V, meter"),
    ({"horn", "lamp"}, ("lamp",), "lamp"),
    ({"lamp"}, ("lamp",), "lamp"),
    ({"horn", "lamp"}, (), ""),
])  # fmt: skip
def test_what_goes_dark_is_named(loads: set[str], dark: tuple[str, ...], words: str) -> None:
    assert dark_words(dark, loads) == words


def test_one_load_alone_shares_a_line_with_its_like() -> None:
    def row(dark: str, volts: float) -> OpenRow:
        opened = Opened(f"wire from the {dark}", (dark,), (), f"{dark} minus", volts, "", 0.0, 0.0)
        return OpenRow("W01", opened, dark, "", stops=False)

    assert row("horn", 13.5).alike == row("lamp", 13.6).alike
    assert row("horn", 13.5).alike != row("lamp", 61.0).alike
    assert row("horn", 13.5).alike != row("meter", 13.5).alike


def test_a_walk_that_is_not_told_says_why() -> None:
    assert "no state of this bike rides" in Walked("", False).told
    assert Walked("riding", True).told == 'Walked in the state "riding".'


@pytest.mark.parametrize(("volts", "waits_for", "words"), [
    (0.0, "load relay", "deadlock: it is fed through its own contact; it needs 9.0 V"),
    (0.0, "converter", "it waits for the converter; it needs 9.0 V"),
    (0.0, "", "nothing feeds it; it needs 9.0 V"),
    (8.2, "", "its volts are too low; it needs 9.0 V"),
])  # fmt: skip
def test_why_a_coil_stays_out_is_told(volts: float, waits_for: str, words: str) -> None:
    assert waits(Stuck("load relay", volts, 9.0, waits_for)) == words


def test_the_record_keeps_the_walks(papers: Session, kept: Any) -> None:
    walks = papers.build.walks
    assert kept["format"] == 2
    assert [entry["name"] for entry in kept["states"]] == [standing.state.name for standing in walks.states]
    assert [(e["point"], e["to"], e["end"]) for e in kept["shorts"]] == [
        (fault.point, fault.to, fault.end.word) for fault in walks.faults
    ]
    for entry, fault in zip(kept["shorts"], walks.faults, strict=True):
        assert (entry["latest_s"] is None) == (not isfinite(fault.latest_s))
        assert (entry["wire"] is None) == (fault.wire is None)
    assert [entry["wire"] for entry in kept["opens"]] == [opened.wire for opened in walks.opens]
    assert len(kept["stray_returns"]) == len(walks.strays)
    assert len(kept["rushes"]) == len(walks.rushes)
    assert [entry["what"] for entry in kept["motor"]] == [figure.what for figure in walks.motor]
    assert walks.waking is not None
    assert [entry["what"] for entry in kept["waking"]["steps"]] == [step.what for step in walks.waking.steps]


def test_state_wires_keep_the_sense_of_their_amps(sound: Session, tmp_path: Path) -> None:
    """Trade: while charging the pack's lead runs the other way than while riding."""
    kept = json.loads(write_papers(sound, tmp_path)[2].read_text(encoding="utf-8"))
    amps = {state["name"]: state["wires"]["pack lead"]["amps"] for state in kept["states"]}
    assert amps["riding by night"] > 0 > amps["charging"]
