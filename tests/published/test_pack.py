"""Published: cells, packs and what they feed into a short."""

import pytest

from bom.physics.isolation import floor_ohm, is_above_low_voltage
from bom.physics.pack import (
    CHEMISTRIES,
    cell_resistance_span_mohm,
    highest_fault_a,
    lowest_fault_a,
    pack_resistance_ohm,
)


# Trade: volts of one cell, full / nominal / empty, as cell makers mark them. Three rows of the table are not
# followed: LTO ending at 2.70 V (2.85 V is the higher, so the safer for parts) and sodium and nickel cells,
# whose makers differ too much for a default.
def test_cell_volts(cells_row):
    row = cells_row
    if row["chemistry"] in ("LTO-2.7", "Na-ion layered", "NiMH per cell"):
        assert row["chemistry"] not in CHEMISTRIES
        return
    cell = CHEMISTRIES[row["chemistry"]]
    assert (cell.full_v, cell.nominal_v) == (float(row["full_v"]), float(row["nominal_v"]))
    # Lead-acid stops at 1.80 V by use and at 1.75 V by its makers' tables (10.5 V a block): the lower counts.
    assert cell.empty_v == (1.75 if row["chemistry"] == "lead-acid" else float(row["empty_v"]))
    most = int(row["most_series_at_60_v"])
    assert not is_above_low_voltage(voltage_v=cell.full_v * most)
    assert is_above_low_voltage(voltage_v=cell.full_v * (most + 1))


# Published: pack volts by cells in series, their class, and the isolation floors of UN R136 5.1.3. Nominal
# names (48 V, 72 V) say nothing of the class: full charge does.
def test_pack_volts(agrees, pack_volts_row):
    row = pack_volts_row
    cell, series = CHEMISTRIES[row["chemistry"]], int(row["series"])
    for name in ("nominal_v", "full_v", "empty_v"):
        assert agrees(getattr(cell, name) * series, row[name])
    full_v = float(row["full_v"])
    assert is_above_low_voltage(voltage_v=full_v) == (row["above_60_v"] == "yes")
    if row["dc_floor_ohm"]:
        assert agrees(floor_ohm(working_voltage_v=full_v, combined_bus=False), row["dc_floor_ohm"])
        assert agrees(floor_ohm(working_voltage_v=full_v), row["combined_floor_ohm"])


def test_every_chemistry_says_where_its_figures_come_from():
    assert all(cell.source for cell in CHEMISTRIES.values())


# Published: IEC 61660-1:1997 as worked in a public engineering course note: 60-cell lead-acid, 120 V, battery
# 18.6 mohm, connectors 1.498 mohm, cable 5 mohm, first peak 5422 A; read second-hand on a public page. Ours
# has no wire, so the wire's ohms go in undivided by 0.9.
def test_first_peak_of_a_lead_acid_battery(agrees):
    resistance_ohm = 0.0186 + (0.001498 + 0.005) / 0.9
    assert agrees(highest_fault_a(full_charge_v=1.05 * 120, pack_resistance_ohm=resistance_ohm), "5422")


# Worked: the same formula for 20 cells of 3.65 V and 0.6 mohm with 4 mohm of wire: 73 / (10.8m + 4m).
def test_first_peak_of_an_lfp_pack(agrees):
    cells_ohm = pack_resistance_ohm(series=20, parallel=1, cell_resistance_mohm=0.6)
    full_charge_v = 20 * CHEMISTRIES["LFP"].full_v
    fault_a = highest_fault_a(full_charge_v=full_charge_v, pack_resistance_ohm=cells_ohm + 0.004 / 0.9)
    assert agrees(fault_a, "4932.43")


# Worked: 20 x 2.5 V over 5 x 12 mohm + 40 mohm = 50 / 0.1.
def test_least_fault_of_a_cold_old_pack(agrees):
    fault_a = lowest_fault_a(
        lowest_rest_v=50.0, pack_resistance_ohm=0.012, wire_resistance_ohm=0.04, cold_aged_factor=5.0
    )
    assert agrees(fault_a, "500.0")


# Published: DC resistance of real cells, (capacity Ah, mohm); the first six read second-hand on public pages,
# the rest from memory. The span must hold every one of them.
@pytest.mark.parametrize(
    ("capacity_ah", "resistance_mohm"),
    [
        (3.0, 40.0),
        (1.8, 30.0),
        (25.9, 2.0),
        (60.0, 0.8),
        (20.0, 1.0),
        (200.0, 0.2),
        (2.5, 15.0),
        (3.5, 50.0),
        (280.0, 0.3),
        (314.0, 0.6),
        (60.0, 0.7),
    ],
)
def test_real_cells_lie_in_the_span(capacity_ah, resistance_mohm):
    low, high = cell_resistance_span_mohm(capacity_ah=capacity_ah)
    assert low <= resistance_mohm <= high


# The span is no wider than its two outermost cells ask for: 20 Ah of 1.0 mohm, 314 Ah of 0.6 mohm.
def test_the_span_fits_its_outermost_cells():
    low, _ = cell_resistance_span_mohm(capacity_ah=20.0)
    _, high = cell_resistance_span_mohm(capacity_ah=314.0)
    assert low == pytest.approx(1.0, rel=0.01)
    assert high == pytest.approx(0.6, rel=0.01)
