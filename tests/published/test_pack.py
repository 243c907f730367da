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
    assert (cell.full_v, cell.nominal_v) == (float(row["value"]), float(row["nominal_v"]))
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
    for name, printed in (("full_v", "value"), ("nominal_v", "nominal_v"), ("empty_v", "empty_v")):
        assert agrees(getattr(cell, name) * series, row[printed])
    full_v = float(row["value"])
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


# Published: DC resistance of real cells at 25 C, new. The span must hold every one of them. Makers' 1 kHz figures
# are lower by 1.3 to 2.5 times (from memory) and are not in the table.
def test_real_cells_lie_in_the_span(cell_resistance_row):
    low, high = cell_resistance_span_mohm(capacity_ah=float(cell_resistance_row["capacity_ah"]))
    assert low <= float(cell_resistance_row["value"]) <= high


# Published: IEC 61660-1:1997, quasi-steady 0.95 E / (R + wire) one second into the short, and first peak
# E / (0.9 R + wire), E = 1.05 U for the battery above; read second-hand on a public page. Worked: 0.95 x 126 /
# 25.098 mohm = 4769.3 A. The peak, which a fuse must break, is the higher; the steady one is what opens it.
def test_steady_short_of_the_same_battery(agrees):
    steady_a = lowest_fault_a(
        lowest_rest_v=0.95 * 126.0, pack_resistance_ohm=0.0186, wire_resistance_ohm=0.006498, cold_aged_factor=1.0
    )
    assert agrees(steady_a, "4769.3")
    assert steady_a < 5422.0


# Worked: 20 cells of LFP of 0.6 mohm feed 4932 A through 4 mohm of wire, more than any strip or blade fuse of
# ISO 8820 breaks (1000 A at 58 V, 2000 A at 58 V; read second-hand on a public page), and 2500 A of a 70 V one.
def test_what_fuses_an_lfp_pack_asks_for():
    cells_ohm = pack_resistance_ohm(series=20, parallel=1, cell_resistance_mohm=0.6)
    fault_a = highest_fault_a(full_charge_v=73.0, pack_resistance_ohm=cells_ohm + 0.004 / 0.9)
    assert all(fault_a > breaks_a for breaks_a in (1000.0, 2000.0, 2500.0))


# The span is no wider than its two outermost cells ask for: 20 Ah of 1.0 mohm, 314 Ah of 0.6 mohm.
def test_the_span_fits_its_outermost_cells():
    low, _ = cell_resistance_span_mohm(capacity_ah=20.0)
    _, high = cell_resistance_span_mohm(capacity_ah=314.0)
    assert low == pytest.approx(1.0, rel=0.01)
    assert high == pytest.approx(0.6, rel=0.01)
