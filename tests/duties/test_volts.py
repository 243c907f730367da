"""Volts, resistance and fault amps of the pack, each worked by hand."""

from collections.abc import Callable

import pytest

from bom.duties.circuits import Facts
from bom.duties.volts import pack_facts
from bom.read.job import JobFile
from bom.read.margins import Margins

Edited = Callable[..., JobFile]
FactsOf = Callable[..., Facts]

PLAIN = {"controller.regen": None, "controller.over_voltage": None, "pack.bms.low_cut": None}


# Cells x volts of one cell: full, nominal, empty (common practice of cell makers; lead-acid and NMC-HV from memory).
@pytest.mark.parametrize(
    ("chemistry", "series", "full_v", "nominal_v", "empty_v"),
    [
        ("NMC", 13, 54.6, 46.8, 39.0),
        ("NMC", 14, 58.8, 50.4, 42.0),
        ("NMC", 16, 67.2, 57.6, 48.0),
        ("NMC", 20, 84.0, 72.0, 60.0),
        ("NMC", 21, 88.2, 75.6, 63.0),
        ("NMC", 24, 100.8, 86.4, 72.0),
        ("NCA", 20, 84.0, 72.0, 60.0),
        ("LMO", 20, 84.0, 74.0, 60.0),
        ("NMC-HV", 20, 87.0, 74.0, 60.0),
        ("LFP", 16, 58.4, 51.2, 40.0),
        ("LFP", 24, 87.6, 76.8, 60.0),
        ("LFP", 29, 105.85, 92.8, 72.5),
        ("LTO", 30, 85.5, 72.0, 54.0),
        ("lead-acid", 36, 88.2, 72.0, 63.0),
    ],
)
def test_cells_times_volts(
    chemistry: str, series: int, full_v: float, nominal_v: float, empty_v: float, edited: Edited, facts_of: FactsOf
) -> None:
    pack = facts_of(edited("street-72", PLAIN | {"pack.chemistry": chemistry, "pack.series": series})).pack
    assert pack.full_charge_v.low == pack.full_charge_v.high == pytest.approx(full_v, abs=1e-9)
    assert pack.nominal_v.low == pytest.approx(nominal_v, abs=1e-9)
    assert pack.lowest_rest_v.low == pytest.approx(empty_v, abs=1e-9)
    assert pack.highest_bus_v.high == pack.full_charge_v.high


def test_measured_full_charge_stands_over_cells_times_volts(edited: Edited, facts_of: FactsOf) -> None:
    assert facts_of(edited("street-72", PLAIN | {"pack.full_charge": "83.2 V"})).pack.full_charge_v.high == 83.2


def test_low_cut_stands_over_empty_cells(edited: Edited, facts_of: FactsOf) -> None:
    assert facts_of(edited()).pack.lowest_rest_v.low == 62.0


@pytest.mark.parametrize(
    ("edits", "low_v", "high_v"),
    [
        ({}, 88.0, 88.0),  # regeneration goes to the over-voltage limit
        ({"controller.regen": None}, 84.0, 84.0),  # without it full charge is the highest
        ({"controller.over_voltage": "83 V"}, 84.0, 84.0),
        ({"controller.over_voltage": None}, 84.0, 105.0),  # 84 x 1.25, an estimate; what it survives limits nothing
        ({"controller.regen": None, "motor.back_emf": "90 V"}, 90.0, 90.0),
    ],
)
def test_highest_bus_volts(
    edits: dict[str, object], low_v: float, high_v: float, edited: Edited, facts_of: FactsOf
) -> None:
    bus = facts_of(edited("street-72", edits)).pack.highest_bus_v
    assert (bus.low, bus.high) == (low_v, high_v)
    assert bool(bus.datum) == (low_v != high_v)


def test_a_charger_that_ends_higher_raises_the_bus(edited: Edited, margins: Margins) -> None:
    bus = pack_facts(edited("street-72", {"controller.regen": None}), margins, 84.4).highest_bus_v
    assert bus.high == 84.4


def test_sag_and_faults_of_the_street_pack(edited: Edited, facts_of: FactsOf) -> None:
    """38 mohm: 62 - 160 x 0.038; 84 / (0.9 x 0.038); 62 / (3 x 0.038 + 0.01 x 62 / 105)."""
    pack = facts_of(edited()).pack
    assert pack.lowest_sag_v.low == pytest.approx(55.92)
    assert pack.fault_high_a.high == pytest.approx(2456.14, abs=0.01)
    assert pack.fault_low_a.low == pytest.approx(517.08, abs=0.01)


def test_resistance_of_cells_in_series_and_side_by_side(edited: Edited, facts_of: FactsOf) -> None:
    """13 x 28 mohm / 8 = 45.5 mohm."""
    assert facts_of(edited("moped-48")).pack.resistance_ohm.low == pytest.approx(0.0455)


def test_resistance_that_nobody_measured_is_a_span(edited: Edited, facts_of: FactsOf) -> None:
    """42 Ah over 14 is 3 Ah a cell: 20 / 3 to 190 / 3 mohm (cells of seven builds), x 20 / 14."""
    span = facts_of(edited("street-72", {"pack.pack_resistance": None})).pack.resistance_ohm
    assert span.low == pytest.approx(0.00952, abs=1e-5)
    assert span.high == pytest.approx(0.09048, abs=1e-5)
    assert span.datum
