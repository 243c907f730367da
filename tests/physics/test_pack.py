import dataclasses

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

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


# Derived: a source behind its resistance (Thevenin). Whatever the wire, the short draws no more than the highest
# fault says and, from the weakest pack, no less than the lowest says.
@given(
    rest_v=st.floats(30.0, 100.0),
    cells_ohm=st.floats(0.002, 0.2),
    wire_ohm=st.floats(0.0, 0.1),
    factor=st.floats(1.0, 10.0),
)
def test_every_short_lies_between_the_two(rest_v, cells_ohm, wire_ohm, factor):
    full_v = rest_v * 1.4
    highest = highest_fault_a(full_charge_v=full_v, pack_resistance_ohm=cells_ohm)
    lowest = lowest_fault_a(
        lowest_rest_v=rest_v, pack_resistance_ohm=cells_ohm, wire_resistance_ohm=wire_ohm, cold_aged_factor=factor
    )
    for volts in (rest_v, full_v):
        for ohms in (cells_ohm, factor * cells_ohm):
            fault = volts / (ohms + wire_ohm)
            assert lowest * (1 - 1e-9) <= fault <= highest


# Derived: cells wired two ways to the same ohms and volts are one pack.
@given(series=st.integers(1, 100), parallel=st.integers(1, 100), cell_mohm=st.floats(0.1, 50.0))
def test_twice_the_string_beside_itself_is_the_same_pack(series, parallel, cell_mohm):
    once = pack_resistance_ohm(series=series, parallel=parallel, cell_resistance_mohm=cell_mohm)
    twice = pack_resistance_ohm(series=2 * series, parallel=2 * parallel, cell_resistance_mohm=cell_mohm)
    assert twice == pytest.approx(once)


def test_faults_of_a_column_of_packs():
    cells_ohm = np.array([0.01, 0.02, np.nan])
    lowest = lowest_fault_a(
        lowest_rest_v=60.0, pack_resistance_ohm=cells_ohm, wire_resistance_ohm=0.01, cold_aged_factor=3.0
    )
    assert lowest[:2] == pytest.approx([60 / 0.04, 60 / 0.07])
    assert np.isnan(lowest[2])
