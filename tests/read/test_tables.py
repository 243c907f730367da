"""Faults of a catalogue: each named with its file, row and column, all of them together, none of them a crash."""

import csv
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest

from bom.data import folder
from bom.errors import Fault, InputError
from bom.read.catalogue import read_catalogue
from bom.read.families import CURVES, FAMILIES, SPANS, Column

Told = Callable[[], list[Fault]]
MARGINS = "settings/margins.csv"


@pytest.fixture
def shelf(tmp_path: Path, project: Path) -> Path:
    return Path(shutil.copytree(project / "catalog", tmp_path / "catalog"))


@pytest.fixture
def told(shelf: Path) -> Told:
    def read() -> list[Fault]:
        with pytest.raises(InputError) as caught:
            read_catalogue(shelf)
        return list(caught.value.faults)

    return read


def change(path: Path, line: int, **cells: str) -> None:
    """Write other cells into one line of a table, the heading being line 1."""
    with path.open(encoding="utf-8", newline="") as handle:
        rows = list(csv.reader(handle))
    for column, text in cells.items():
        rows[line - 1][rows[0].index(column)] = text
    with path.open("w", encoding="utf-8", newline="") as handle:
        csv.writer(handle, lineterminator="\n").writerows(rows)


def cut(path: Path, line: int) -> str:
    """Take one line out of a table and give its first cell."""
    lines = path.read_text(encoding="utf-8").splitlines()
    gone = lines.pop(line - 1)
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    return gone.split(",")[0]


def append(path: Path, text: str) -> None:
    path.write_text(f"{path.read_text(encoding='utf-8')}{text}\n", encoding="utf-8")


@pytest.mark.parametrize(
    ("table", "column", "text", "accepted"),
    [
        ("parts/cable.csv", "area_mm2", "0", "Write 0.05 to 120, or leave it blank when it is not known."),
        ("parts/cable.csv", "conductor_max_c", "300", "Write -40 to 250, or leave it blank when it is not known."),
        ("parts/converter.csv", "input_max_v", "-90", "Write 0 to 2000, or leave it blank when it is not known."),
        ("parts/fuse_holder.csv", "stud_m", "80", "Write 2 to 24, or leave it blank when it is not known."),
        ("parts/horn.csv", "current_a", "inf", "Write a plain number in a with a decimal point"),
        ("curves/connector_amps.csv", "area_mm2", "1600", "Write 0.05 to 120."),
        ("curves/converter_derating.csv", "fraction", "75", "Write 0 to 1."),
        ("offers/offers.csv", "pack_size", "0", "Write 0.001 to 1000000."),
        ("offers/offers.csv", "minimum_packs", "", "This cell may not be blank."),
        ("offers/offers.csv", "tax_percent", "-19", "Write 0 to 100."),
        ("offers/price_breaks.csv", "from_packs", "", "This cell may not be blank."),
        ("offers/price_breaks.csv", "from_packs", "0", "Write 1 to 1000000."),
        ("offers/price_breaks.csv", "pack_price", "0", "Write 0.001 to 1000000."),
        ("offers/offers.csv", "currency", "euro", "Write a three-letter code, like EUR."),
        ("offers/offers.csv", "price_date", "24.08.2026", "Write a date as year-month-day, like 2026-11-20."),
        ("curves/breaking_points.csv", "part_id", "CT-9999", "No part table holds this id."),
        ("parts/signal_connector.csv", "contact_part", "CP-9999", "Name a part of contact.csv."),
        ("parts/signal_connector.csv", "seal_part", "SE-9999", "Name a part of seal.csv."),
        ("parts/signal_connector.csv", "wire_max_mm2", "4", "Its contact CP-0101 takes 0.5 to 1 mm²."),
        ("parts/relay.csv", "coil_v", "0", "Write 1 to 500, or leave it blank when it is not known."),
        ("parts/main_fuse.csv", "time_band", "no such band", "Name a curve of fuse_time_bands.csv."),
        ("parts/main_fuse.csv", "rerating", "no such curve", "Name a curve of fuse_rerating.csv."),
        ("parts/cable.csv", "conductor_mm", "30", "Write at most outside_mm, which is"),
        ("parts/converter.csv", "input_min_v", "1000", "Write at most input_max_v, which is"),
        (MARGINS, "low", "", "This cell may not be blank."),
        (MARGINS, "high", "", "This cell may not be blank."),
    ],
)
def test_a_cell_outside_its_column(table: str, column: str, text: str, accepted: str, shelf: Path, told: Told) -> None:
    change(shelf / table, 2, **{column: text})
    [fault] = told()
    assert (fault.file, fault.line, fault.place, fault.found) == (str(shelf / table), 2, column, text)
    assert fault.accepted.startswith(accepted)


@pytest.mark.parametrize(
    "table", ["curves/breaking_points.csv", "curves/connector_amps.csv", "offers/price_breaks.csv"]
)
def test_two_rows_for_one_figure(table: str, shelf: Path, told: Told) -> None:
    first = (shelf / table).read_text(encoding="utf-8").splitlines()[1]
    append(shelf / table, first)
    [fault] = told()
    assert "line 2: keep one of them" in fault.accepted


def test_a_misspelt_supplier_is_one_fault_with_the_nearest(shelf: Path, told: Told) -> None:
    change(shelf / "offers" / "suppliers.csv", 2, supplier="northbench")
    [fault] = told()
    assert fault.found == "north-bench"
    assert 'The nearest is "northbench". The same in' in fault.accepted


def test_every_column_of_numbers_has_a_span() -> None:
    tables: list[tuple[Column, ...]] = [*(family.columns for family in FAMILIES), *CURVES.values()]
    for column in (column for columns in tables for column in columns if column.kind == "number"):
        assert (column.low, column.high) in SPANS.values(), column.name


def test_faults_of_several_tables_come_together(shelf: Path, told: Told) -> None:
    change(shelf / "parts" / "cable.csv", 3, area_mm2="200")
    change(shelf / "offers" / "price_breaks.csv", 4, from_packs="")
    change(shelf / MARGINS, 5, value="9")
    cut(shelf / MARGINS, 8)
    assert sorted((Path(fault.file).name, fault.line) for fault in told()) == [
        ("cable.csv", 3),
        ("margins.csv", 0),
        ("margins.csv", 5),
        ("price_breaks.csv", 4),
    ]


def test_a_table_saved_in_another_encoding(shelf: Path, told: Told) -> None:
    """A spreadsheet saves "ü" as one byte of Windows-1252 (byte 0xFC), which is no UTF-8."""
    path = shelf / "parts" / "horn.csv"
    lines = path.read_text(encoding="utf-8").splitlines()
    lines[2] = lines[2].replace("horn", "h\u00fcrn", 1)
    path.write_bytes("\n".join(lines).encode("cp1252"))
    [fault] = told()
    assert (fault.file, fault.line, fault.accepted) == (str(path), 3, "Save the table as CSV UTF-8.")


def test_a_table_with_a_cell_beyond_all_length(shelf: Path, told: Told) -> None:
    path = shelf / "parts" / "horn.csv"
    append(path, f'HR-9999,"{"x" * (csv.field_size_limit() + 1)}')
    [fault] = told()
    assert fault.file == str(path)
    assert "Close every quote" in fault.accepted


@pytest.mark.parametrize("table", ["parts/lamp.csv", "offers/suppliers.csv", "offers/offers.csv"])
def test_a_row_of_the_wrong_length_is_one_fault(table: str, shelf: Path, told: Told) -> None:
    """What the row is called stays known: its offers and prices are not called strangers."""
    path = shelf / table
    lines = path.read_text(encoding="utf-8").splitlines()
    lines[1] += ",surplus"
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
    [fault] = told()
    assert (fault.file, fault.line) == (str(path), 2)
    assert "cells" in fault.found


def test_a_missing_table_is_one_fault(shelf: Path, told: Told) -> None:
    (shelf / "parts" / "lamp.csv").unlink()
    [fault] = told()
    assert fault.file.endswith("lamp.csv")


def test_names_that_lead_nowhere(shelf: Path, told: Told) -> None:
    change(shelf / "offers" / "offers.csv", 2, part_id="XX-0000", supplier="nobody")
    append(shelf / "offers" / "price_breaks.csv", "OF-none,1,5")
    assert {(fault.place, fault.found, fault.accepted) for fault in told()} == {
        ("part_id", "XX-0000", "No part table holds this id."),
        ("supplier", "nobody", "Name a supplier of suppliers.csv."),
        ("offer_id", "OF-none", "No offer has this id."),
    }


def test_a_curve_with_two_rows_for_one_figure(shelf: Path, told: Told) -> None:
    path = shelf / "curves" / "fuse_time_bands.csv"
    lines = path.read_text(encoding="utf-8").splitlines()
    append(path, lines[1])
    [fault] = told()
    assert (fault.file, fault.line, fault.place) == (str(path), len(lines) + 1, "multiple")
    assert "keep one of them" in fault.accepted


def test_margins_that_are_missing_twice_or_misspelt(shelf: Path, told: Told) -> None:
    path = shelf / MARGINS
    lines = path.read_text(encoding="utf-8").splitlines()
    change(path, 8, name="fuse_loadng")
    append(path, lines[1])
    gone = cut(path, 3)
    found = {(fault.line, fault.place, fault.found): fault.accepted for fault in told()}
    missing = "This margin is missing: copy its row from the shipped table."
    assert found == {
        (0, gone, ""): missing,
        (0, "fuse_loading", ""): missing,
        (7, "name", "fuse_loadng"): 'No margin has this name. The nearest is "fuse_loading".',
        (len(lines), "name", lines[1].split(",")[0]): "Write each margin once.",
    }


def test_a_margin_outside_its_own_limits(shelf: Path, told: Told) -> None:
    change(shelf / MARGINS, 2, low="1", high="3", value="3.5")
    change(shelf / MARGINS, 3, low="2", high="1")
    assert [(fault.line, fault.place, fault.found, fault.accepted) for fault in told()] == [
        (2, "value", "3.5", "Write 1 to 3, the limits of this row."),
        (3, "low", "2", "Write a low of at most the high, 1."),
    ]


def test_the_shipped_catalogue_reads_from_any_line_ending(shelf: Path) -> None:
    path = shelf / "parts" / "horn.csv"
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes().replace(b"\n", b"\r\n"))
    assert read_catalogue(shelf).families["horn"].ids == read_catalogue(folder("catalog")).families["horn"].ids


STATES = "settings/states.csv"


@pytest.mark.parametrize(
    ("cells", "column", "accepted"),
    [
        ({"on": "always; ridng"}, "on", 'charging. The nearest is "riding".'),
        ({"on": ""}, "on", "This cell may not be blank."),
        ({"cells": "ful"}, "cells", 'The nearest is "full".'),
        ({"air_c": "hot"}, "air_c", "Write a plain number in °C with a decimal point"),
        ({"contactor": "open"}, "contactor", 'Write closed: traction "continuous" runs through the contactor.'),
    ],
)
def test_a_slip_in_a_state_is_one_fault(
    cells: dict[str, str], column: str, accepted: str, shelf: Path, told: Told
) -> None:
    change(shelf / STATES, 4, **cells)
    [fault] = told()
    assert (fault.line, fault.place) == (4, column)
    assert accepted in fault.accepted


def test_a_misspelt_heading_of_the_states_is_not_told_again_in_every_row(shelf: Path, told: Told) -> None:
    path = shelf / STATES
    path.write_text(path.read_text(encoding="utf-8").replace("state,on,", "state,onn,"), encoding="utf-8")
    assert {(fault.line, fault.place) for fault in told()} == {(1, "on"), (1, "onn")}
