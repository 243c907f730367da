import dataclasses

import pytest

from bom.physics.pack import (
    CHEMISTRIES,
    cell_resistance_span_mohm,
    highest_fault_a,
    lowest_fault_a,
    pack_resistance_ohm,
)


def test_series_adds_and_parallel_divides():
    # Worked: 20 x 1.5 mohm / 3
    assert pack_resistance_ohm(series=20, parallel=3, cell_resistance_mohm=1.5) == pytest.approx(0.010)


def test_the_chemistry_table_cannot_be_changed():
    with pytest.raises(TypeError):
        CHEMISTRIES["NMC"] = CHEMISTRIES["LFP"]
    with pytest.raises(dataclasses.FrozenInstanceError):
        CHEMISTRIES["NMC"].full_v = 4.3


def test_volts_fall_from_full_to_empty():
    for cell in CHEMISTRIES.values():
        assert cell.full_v > cell.nominal_v > cell.empty_v > 0.0


def test_the_lowest_fault_lies_below_the_highest():
    highest = highest_fault_a(full_charge_v=84.0, pack_resistance_ohm=0.02)
    lowest = lowest_fault_a(lowest_rest_v=60.0, pack_resistance_ohm=0.02, wire_resistance_ohm=0.0, cold_aged_factor=1.0)
    assert lowest < highest


def test_the_span_has_its_low_end_first():
    low, high = cell_resistance_span_mohm(capacity_ah=100.0)
    assert low < high
