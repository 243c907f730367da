"""Published: voltage classes, isolation floors, and volts between motor leads."""

import pytest

from bom.physics.isolation import floor_ohm, is_above_low_voltage
from bom.physics.phase import greatest_line_rms_v, line_rms_v


# Published: UN R136 paragraph 2, above 60 V DC, strictly; from memory. Packs at full charge.
@pytest.mark.parametrize(
    ("pack", "voltage_v", "above"),
    [
        ("14s NMC", 58.8, False),
        ("15s NMC", 63.0, True),
        ("16s LFP", 58.4, False),
        ("17s LFP", 62.05, True),
        ("21s LTO", 59.85, False),
        ("four 12 V lead-acid", 58.8, False),
        ("exactly", 60.0, False),
        ("just above", 60.01, True),
    ],
)
def test_voltage_class(pack, voltage_v, above):
    assert is_above_low_voltage(voltage_v=voltage_v) == above


# Published: UN R136 5.1.3.1 (100 ohm/V) and 5.1.3.2 (500 ohm/V); read second-hand on a public page.
@pytest.mark.parametrize(
    ("voltage_v", "dc_kohm", "combined_kohm"),
    [(84.0, 8.4, 42.0), (117.6, 11.76, 58.8), (150.0, 15.0, 75.0)],
)
def test_isolation_floor(voltage_v, dc_kohm, combined_kohm):
    assert floor_ohm(working_voltage_v=voltage_v, combined_bus=False) == pytest.approx(dc_kohm * 1000)
    assert floor_ohm(working_voltage_v=voltage_v) == pytest.approx(combined_kohm * 1000)


# Worked: 30 V AC rms (UN R136, from memory) is reached between sine-driven leads at 30 x sqrt(2) V of bus.
def test_bus_at_which_motor_leads_reach_30_v(agrees):
    assert agrees(line_rms_v(bus_v=42.43), "30.00")


# Worked: sqrt(2 / 3) x 58.8 V, against the 25 V AC class of 60 V DC cable (SAE J1127 MAY2000 clause 1, read
# second-hand on a public page).
def test_low_voltage_pack_on_motor_leads(agrees):
    assert agrees(greatest_line_rms_v(bus_v=58.8), "48.01")
